import { treeOf } from '../job/index.ts';
import { BASES } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Cleat, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { overlap, planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import { liftCautions } from './lifting.ts';
import type { Touch } from './operation.ts';
import { offset } from './seating.ts';
import { EACH_HOLDS, wallLines } from './wall-fixings.ts';
import { listWords } from './words.ts';

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
  const place = placeOnWall(bench, cleat, wall);
  const lengths: Traced[] = [place.below, place.aside, ...(place.under ? [place.under.by] : [])];
  const fixings = wallLines(bench, { boards: wall.thickness }, lengths);
  bench.do(
    {
      id: numbered(bench, 'home/set-up'),
      kind: 'anchor',
      stage: 'home',
      title: `Screw ${wall.mark} (${wall.name}) to the wall`,
      does: { act: 'other', on: [wall.mark, 'case'] },
      lines: [
        `Draw a level line {0} below where the upper ends of ${listWords(place.sides)} are to come${place.under ? `, {2} below the upper face of ${place.under.of}` : ''}: ${wall.mark} goes under it, its upper edge to the line, the slope above and falling towards the wall, so that its tip stands away from the wall.`,
        `Its left end comes {1} to the right of where the left face of ${place.sides[0]} is to come.`,
        ...fixings,
        `Bore through ${wall.mark} ${anchorsAt(bench, wall)}, each as wide as its maker asks, heads sunk level. ${EACH_HOLDS} Pull at it with your whole weight before anything is hung on it.`,
      ],
      lengths,
      cautions: [CAUTION.hang],
    },
    [wall.mark, 'case'],
  );
}

/** Where a wall strip goes, told from what will be seen: the sides between which it hangs, and the top over them. */
interface OnWall {
  /** Marks of the sides, from the left. */
  readonly sides: readonly string[];
  /** From the upper ends of the sides down to its upper edge. */
  readonly below: Traced;
  /** The same from the upper face of what hides the ends of the sides. */
  readonly under?: { readonly of: string; readonly by: Traced };
  /** From the left face of the left side to its left end. */
  readonly aside: Traced;
}

function placeOnWall(bench: Bench, { onCase }: Cleat, wall: Part): OnWall {
  const l = bench.ledger;
  const { parts } = bench.setOut;
  const planes = (p: Part) => planesOf(l, p).planes;
  const strip = parts.find((p) => p.id === onCase)!;
  const box = treeOf(bench.job).caseOf(strip.record)!.id;
  const own = bench.setOut.sides.find((s) => s.record === box)!;
  const sides = [own.left, own.right].map((id) => parts.find((p) => p.id === id)!);
  const [left] = sides as [Part, Part];
  const [mine, beside] = [planes(wall), planes(left)];
  const over = parts.find(
    (p) =>
      (p.role === 'top' || p.role === 'lid') &&
      l.ticks(planes(p)['-z']) === l.ticks(beside['+z']) &&
      overlap(l, p, left, 0) &&
      overlap(l, p, left, 1),
  );
  const down = (from: Traced) => bench.set('marking', l.less('down to the wall strip', from, mine['+z']));
  return {
    sides: sides.map((p) => p.mark),
    below: down(beside['+z']),
    ...(over ? { under: { of: over.mark, by: down(planes(over)['+z']) } } : {}),
    aside: bench.set('marking', l.less('in from the left face of the side', mine['-x'], beside['-x'])),
  };
}

/** Where the anchors of a wall strip go: in every stud, or as many as its length asks for. */
function anchorsAt({ job, ledger }: Bench, { length }: Part): string {
  if (treeOf(job).all('room')[0]?.wall === 'studs')
    return 'at every stud and near both ends, two anchors at least';
  const count = Math.max(2, Math.ceil(ledger.ticks(length) / BASES.anchorApart.value));
  return count === 2
    ? 'near both ends, two anchors in all'
    : `near both ends and evenly between, ${count} anchors in all`;
}

function hook(bench: Bench, cleat: Cleat, hung: Part, wall: Part): void {
  const l = bench.ledger;
  const beside = offset(bench, planesOf(l, wall), '-x', planesOf(l, hung));
  const spacer = bench.setOut.parts.find((p) => p.id === cleat.spacer);
  const into = l.times('so far up into it', wall.thickness, -1);
  const touches: readonly [Touch, Touch, Touch] = [
    beside,
    { side: '+y', of: hung.mark, face: '+y' },
    // The slopes lie on one another: the one hooks in as far as both strips are thick.
    { side: '+z', of: hung.mark, face: '-z', gap: into },
  ];
  const lift = bench.set('marking', cleat.lift, 'up');
  const [mine, theirs] = [wall, hung].map((p) => planesOf(l, p).planes);
  const free = bench.set('marking', l.less('free at its left end', mine!['-x'], theirs!['-x']));
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
        hooks: lift,
      },
      lines: [
        `Hold the case flat against the wall {0} higher than it will hang, and let it down: ${hung.mark} hooks over ${wall.mark}, {1} deep, and the slopes draw it to the wall, ${spacer ? `${hung.mark} and ${spacer.mark}` : `back edges of its sides and of ${hung.mark}`} on the plaster.`,
        `Move it sideways until ${wall.mark} is free {2} at its left end, and as much at its right.`,
        `${spacer ? `${spacer.mark} stands on the wall below as ${hung.mark} does above` : 'Its sides stand on the wall below as they do above'}, so that it hangs plumb; where the wall falls back there, put a slip behind both lower corners. Then pull at its front edge, and load it by degrees.`,
      ],
      lengths: [lift, wall.thickness, free],
      cautions: [...liftCautions(bench, bench.setOut.parts), CAUTION.hang],
    },
    [wall.mark, 'case'],
  );
}
