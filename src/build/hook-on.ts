import type { Traced } from '../measure/index.ts';
import type { Cleat, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import { liftCautions } from './lifting.ts';
import type { Touch } from './operation.ts';
import { offset } from './seating.ts';
import { wallLines } from './wall-fixings.ts';

/** Screws the lower strip of each cleat to the wall and hooks the case over it. */
export function hookOn(bench: Bench, cleats: readonly Cleat[]): void {
  const part = (id: string) => bench.setOut.parts.find((p) => p.id === id)!;
  for (const cleat of cleats) toTheWall(bench, cleat, part(cleat.onWall));
  for (const cleat of cleats) hook(bench, cleat, part(cleat.onCase), part(cleat.onWall));
}

/** The name of a card, the first of several being the one that others follow. */
const numbered = (bench: Bench, id: string) =>
  bench.operations.some((o) => o.id === id) ? `${id}-${bench.operations.length}` : id;

function toTheWall(bench: Bench, cleat: Cleat, wall: Part): void {
  const hung = bench.setOut.joints.filter((j) => j.part === cleat.onCase || j.mate === cleat.onCase);
  const side = bench.setOut.parts.find(
    (p) => p.hand !== 'none' && hung.some((j) => j.part === p.id || j.mate === p.id),
  );
  const below = bench.set('marking', cleat.below);
  const lengths: Traced[] = [below];
  const fixings = wallLines(bench, { boards: wall.thickness }, lengths);
  bench.do(
    {
      id: numbered(bench, 'home/set-up'),
      kind: 'anchor',
      stage: 'home',
      title: `Screw ${wall.mark} (${wall.name}) to the wall`,
      does: { act: 'other', on: [wall.mark, 'case'] },
      lines: [
        `Draw a level line {0} below where the upper ends of ${side?.mark ?? 'the sides'} are to come: ${wall.mark} goes under it, its upper edge to the line, the slope above and falling towards the wall, so that its tip stands away from the wall.`,
        ...fixings,
        `Bore through ${wall.mark} at every stud and near both ends, two anchors at least, each as wide as its maker asks, heads sunk level. Pull at it with your whole weight before anything is hung on it.`,
      ],
      lengths,
      cautions: [CAUTION.hang],
    },
    [wall.mark, 'case'],
  );
}

function hook(bench: Bench, cleat: Cleat, hung: Part, wall: Part): void {
  const l = bench.ledger;
  const beside = offset(bench, planesOf(l, wall), '-x', planesOf(l, hung));
  const into = l.times('so far up into it', wall.thickness, -1);
  const touches: readonly [Touch, Touch, Touch] = [
    beside,
    { side: '+y', of: hung.mark, face: '+y' },
    // The slopes lie on one another: the one hooks in as far as both strips are thick.
    { side: '+z', of: hung.mark, face: '-z', gap: into },
  ];
  const lift = bench.set('marking', cleat.lift, 'up');
  const free = l.times('the same, as a distance', beside.gap ?? into, -1);
  bench.do(
    {
      id: `${wall.mark}/hook`,
      kind: 'assemble',
      stage: 'home',
      title: `Hook the case over ${wall.mark}`,
      does: {
        act: 'set',
        workpiece: wall.mark,
        into: 'case',
        turn: { length: wall.place.length, width: wall.place.width },
        touches,
        glue: false,
      },
      lines: [
        `Hold the case flat against the wall {0} higher than it will hang, and let it down: ${hung.mark} hooks over ${wall.mark}, {1} deep, and the slopes draw it to the wall, back edges of its sides and of ${hung.mark} on the plaster.`,
        `Move it sideways until ${wall.mark} is free {2} at its left end, and as much at its right.`,
        'Its sides stand on the wall below as they do above, so that it hangs plumb; where the wall falls back there, a slip behind both lower corners is its spacer. Then pull at its front edge, and load it by degrees.',
      ],
      lengths: [lift, wall.thickness, free],
      cautions: [...liftCautions(bench, bench.setOut.parts), CAUTION.hang],
    },
    [wall.mark, 'case'],
  );
}
