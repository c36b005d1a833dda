import type { Act, WorkEdge } from '../build/index.ts';
import { toMm } from '../measure/index.ts';
import type { Point, Shape } from '../solid/index.ts';
import type { ReadCard, Worked } from './tool-work.ts';
import type { VirtualPiece, Way } from './virtual-piece.ts';

/** How far a tool runs out beyond the wood, mm: enough to cut clean through. */
const BEYOND = 5;

/** What one pass takes: so far down the slope from the inner arris, so wide, so deep square to the slope, mm. */
interface Pass {
  readonly down: number;
  readonly wide: number;
  readonly deep: number;
}

/** A groove cut square into the slope of a mitred end: passes of a bit led down the slope, or of a tilted blade. */
export function splineGrooved(
  piece: VirtualPiece,
  act: Extract<Act, { act: 'spline-groove' }>,
  read: ReadCard,
  kerf: number,
): Worked {
  const [length, width, thick] = piece.size.map(toMm) as [number, number, number];
  const passes = passesOf(act, read, kerf);
  const run: [number, number] = [0, width];
  for (const stop of [act.stop, act.otherStop]) {
    if (!stop) continue;
    const at = toMm(read(stop.at));
    if (at <= 0 || at >= width) return { fault: 'the groove stops off the wood' };
    if (isLow(stop.from)) run[0] = at;
    else run[1] = width - at;
  }
  if (run[0] >= run[1]) return { fault: 'the groove stops before it begins' };
  const [from, to] = [
    Math.min(...passes.map((p) => p.down)),
    Math.max(...passes.map((p) => p.down + p.wide)),
  ];
  const deep = Math.min(...passes.map((p) => p.deep));
  if (from <= 0 || deep <= 0) return { fault: 'the groove lies off the slope' };
  if (passes.some((p) => p.down + p.wide + p.deep >= thick * Math.SQRT2))
    return { fault: 'a groove in a mitre comes through the outer face' };
  const way = act.edge === 'start' ? 1 : -1;
  const out = act.slopeFrom === 'show' ? -1 : 1;
  const into: Point = [way * Math.SQRT1_2, 0, out * Math.SQRT1_2];
  const down: Point = [-way * Math.SQRT1_2, 0, out * Math.SQRT1_2];
  const arris: Point = [
    act.edge === 'start' ? thick : length - thick,
    0,
    act.slopeFrom === 'show' ? thick : 0,
  ];
  const on = (inward: number, far: number, along: number): Point => [
    arris[0] + into[0] * inward + down[0] * far,
    along,
    arris[2] + into[2] * inward + down[2] * far,
  ];
  const ends = [run[0] === 0 ? -BEYOND : run[0], run[1] === width ? width + BEYOND : run[1]];
  const cuts = passes.map(
    (p): Shape => ({
      kind: 'hull',
      points: ends.flatMap((along) =>
        [p.down, p.down + p.wide].flatMap((far) => [-BEYOND, p.deep].map((inward) => on(inward, far, along))),
      ),
    }),
  );
  const mouth: Way = {
    kind: 'spline',
    side: act.edge,
    at: on(0, (from + to) / 2, (run[0] + run[1]) / 2),
    along: into,
    seat: 0,
    depth: deep,
    diameter: to - from,
    run: run[1] - run[0],
  };
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts], ways: [...piece.ways, mouth] } };
}

function passesOf(
  { by }: Extract<Act, { act: 'spline-groove' }>,
  read: ReadCard,
  kerf: number,
): readonly Pass[] {
  if ('routed' in by) {
    const [wide, deep] = [toMm(read(by.bit)), toMm(read(by.depth))];
    return by.routed.map((t) => ({ down: toMm(read(t)), wide, deep }));
  }
  // A blade at 45 degrees comes through the plane of the inner face as far out as it then meets the slope down, times the root of two.
  return by.sawn.map(({ beyond, blade }) => {
    const down = toMm(read(beyond)) * Math.SQRT1_2;
    return { down, wide: kerf, deep: toMm(read(blade)) - down };
  });
}

function isLow(edge: WorkEdge): boolean {
  return edge === 'near' || edge === 'start';
}
