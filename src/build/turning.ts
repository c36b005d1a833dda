import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { liftCautions, takesTwo } from './lifting.ts';
import type { StageId } from './stages.ts';

/** Stands a case upright, where it lies on its face. */
export function stand(
  bench: Bench,
  stage: StageId,
  name = 'case',
  words = 'the case',
  before: readonly string[] = [],
): void {
  const it = itOrThem(words);
  turn(bench, { name, stage, lies: 'upright' }, `Stand ${words} upright`, [
    ...before,
    `${takesTwo(bench, standingIn(bench, name)) ? 'Two people, one at each end: tip' : 'Tip'} ${it} over the lower edges of ${it === 'it' ? 'both' : 'all their'} sides, and let ${it} down slowly. Never drag ${it}: that racks the joints.`,
  ]);
}

/** Cases that share their sides are turned together. */
function itOrThem(words: string): 'it' | 'them' {
  return words.startsWith('cases ') ? 'them' : 'it';
}

/** What stands in a case by now: its cards put it there. */
function standingIn(bench: Bench, name: string): readonly Part[] {
  const set = bench.operations.flatMap(({ does }) =>
    does.act === 'set' && (does.into === name || name === 'case') ? [does.workpiece] : [],
  );
  return bench.setOut.parts.filter((p) => set.includes(p.mark));
}

/** Lays a case on its face, where it stands. What its top stands out in front must hang free of the floor. */
export function layOnFace(bench: Bench, name: string, words: string, overhang: Traced | undefined): void {
  const lengths = overhang === undefined ? [] : [bench.set('marking', overhang, 'up')];
  turn(
    bench,
    { name, stage: 'assemble', lies: 'on its face' },
    `Lay ${words} on ${itOrThem(words) === 'it' ? 'its face' : 'their faces'}`,
    [
      `${takesTwo(bench, standingIn(bench, name)) ? 'Two people: tip' : 'Tip'} ${itOrThem(words)} forward onto ${
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
      cautions: liftCautions(bench, standingIn(bench, name)),
    },
    [name],
  );
}

/** How a case lies while it is worked on. */
export type Lies = 'on its face' | 'upright';
