import { type Traced, toMm } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { liftCautions, liftedBy } from './lifting.ts';
import type { StageId } from './stages.ts';
import { capital, numberWord } from './words.ts';

/** Of what is tipped over an edge hands carry about a half: its weight hangs half way between them and the edge. */
const TIPPED = 0.5;

/** Stands a case upright, where it lies on its face. */
export function stand(
  bench: Bench,
  stage: StageId,
  name = 'case',
  words = 'the case',
  before: readonly string[] = [],
): void {
  const it = itOrThem(words);
  const lengths: Traced[] = [];
  const over =
    beamBeforeBase(bench, standingIn(bench, name), lengths) ??
    `over the lower edges of ${it === 'it' ? 'both' : 'all their'} sides`;
  turn(
    bench,
    { name, stage, lies: 'upright' },
    `Stand ${words} upright`,
    [
      ...before,
      `${tippedBy(bench, name, ', one at each end: tip')} ${it} ${over}, and let ${it} down slowly. Never drag ${it}: that racks the joints.`,
    ],
    lengths,
  );
}

/** `Tip`, or how many people do so together. */
function tippedBy(bench: Bench, name: string, tip: string): string {
  const people = liftedBy(bench, standingIn(bench, name), TIPPED);
  return people < 2 ? 'Tip' : `${capital(numberWord(people))} people${tip}`;
}

/** The thinnest beam that is worth laying before a base, mm: our own choice. */
const LEAST_BEAM = 15;

/**
 * What a case with its base on is tipped over: a beam as high as the base, where that stands back, or else the base’s weight
 * would hang on its own few screws. Undefined where nothing stands below the sides.
 */
function beamBeforeBase(bench: Bench, parts: readonly Part[], lengths: Traced[]): string | undefined {
  const l = bench.ledger;
  const sides = parts.filter((p) => p.mark.startsWith('A'));
  const [first, ...others] = sides.map((p) => planesOf(l, p).planes['-z']);
  if (first === undefined) return undefined;
  const foot = l.least('lower ends of the sides', first, ...others);
  const isBelow = (p: Part) => l.ticks(planesOf(l, p).planes['+z']) <= l.ticks(foot);
  const [below, case_] = [parts.filter(isBelow), parts.filter((p) => !isBelow(p))];
  const lowest = (of: readonly Part[], d: '-y' | '-z', reason: string) => {
    const [one, ...more] = of.map((p) => planesOf(l, p).planes[d]);
    return l.least(reason, one!, ...more);
  };
  if (below.length === 0) return undefined;
  const high = l.less('how high the base is', foot, lowest(below, '-z', 'lower side of the base'));
  const deep = l.less(
    'how far the base stands back',
    lowest(below, '-y', 'front of the base'),
    lowest(case_, '-y', 'front of the case'),
  );
  if (toMm(l.ticks(deep)) < LEAST_BEAM) return 'with as little weight on its base as you can';
  const at = lengths.length;
  lengths.push(bench.set('marking', high), bench.set('marking', deep, 'down'));
  return `over a beam {${at}} high and at most {${at + 1}} deep, laid against the lower ends of its sides before the base, which would not bear it`;
}

/** Cases that share their sides are turned together. */
function itOrThem(words: string): 'it' | 'them' {
  return words.startsWith('cases ') ? 'them' : 'it';
}

/** What stands in a case by now: its cards put it there, alone or with what it had been put together with before. */
function standingIn(bench: Bench, name: string): readonly Part[] {
  const marks = new Set<string>();
  const gather = (into: string): void => {
    for (const { does } of bench.operations)
      if (does.act === 'set' && does.into === into && !marks.has(does.workpiece)) {
        marks.add(does.workpiece);
        gather(does.workpiece);
      }
  };
  gather(name);
  return bench.setOut.parts.filter((p) => marks.has(p.mark));
}

/** Lays a case on its face, where it stands. What its top stands out in front must hang free of the floor. */
export function layOnFace(bench: Bench, name: string, words: string, overhang: Traced | undefined): void {
  const lengths = overhang === undefined ? [] : [bench.set('marking', overhang, 'up')];
  turn(
    bench,
    { name, stage: 'assemble', lies: 'on its face' },
    `Lay ${words} on ${itOrThem(words) === 'it' ? 'its face' : 'their faces'}`,
    [
      `${tippedBy(bench, name, ': tip')} ${itOrThem(words)} forward onto ${
        lengths.length > 0
          ? 'two beams with pads, under both sides from end to end and thicker than {0}, so that the top, which stands out so far, hangs free.'
          : 'pads on a flat floor or bench, front edges down, so that what comes now lies on it by its own weight.'
      }`,
    ],
    lengths,
  );
}

function turn(
  bench: Bench,
  { name, stage, lies }: { readonly name: string; readonly stage: StageId; readonly lies: Lies },
  title: string,
  lines: readonly string[],
  lengths: readonly Traced[] = [],
): void {
  if (bench.lies.get(name) === lies || !bench.isThere(name)) return;
  bench.lies.set(name, lies);
  const n = bench.operations.filter((o) => o.kind === 'move' && o.id.startsWith(`${name}/`)).length + 1;
  bench.do(
    {
      id: `${name}/turn-${n}`,
      kind: 'move',
      stage,
      title,
      does: { act: 'other', on: [name] },
      lines,
      lengths,
      cautions: liftCautions(bench, standingIn(bench, name), TIPPED),
    },
    [name],
  );
}

/** How a case lies while it is worked on. */
export type Lies = 'on its face' | 'upright';
