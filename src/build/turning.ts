import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import type { StageId } from './operation.ts';

/** Stands a case upright, where it lies on its face. */
export function stand(
  bench: Bench,
  stage: StageId,
  name = 'case',
  words = 'the case',
  before: readonly string[] = [],
): void {
  turn(bench, { name, stage, lies: 'upright' }, `Stand ${words} upright`, [
    ...before,
    'Two people, one at each end: tip it over the lower edges of both sides, and let it down slowly. Never drag it: that racks the joints.',
  ]);
}

/** Lays a case on its face, where it stands. What its top stands out in front must hang free of the floor. */
export function layOnFace(bench: Bench, name: string, words: string, overhang: Traced | undefined): void {
  const lengths = overhang === undefined ? [] : [bench.set('marking', overhang, 'up')];
  turn(
    bench,
    { name, stage: 'assemble', lies: 'on its face' },
    `Lay ${words} on its face`,
    [
      lengths.length > 0
        ? 'Two people: tip it forward onto two beams with pads, under both sides from end to end and thicker than {0}, so that the top, which stands out so far, hangs free.'
        : 'Two people: tip it forward onto pads on a flat floor or bench, front edges down, so that what comes now lies on it by its own weight.',
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
      cautions: [CAUTION.lift],
    },
    [name],
  );
}

/** How a case lies while it is worked on. */
export type Lies = 'on its face' | 'upright';
