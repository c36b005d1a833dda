import { type Ticks, toMm } from '../measure/index.ts';
import {
  type Axis,
  axisOf,
  type Fastener,
  type Groove,
  type Part,
  type Rabbet,
  type SetOut,
} from '../setting-out/index.ts';
import type { Point } from '../solid/index.ts';
import { placed, type StandingBox, standingBox } from './standing-boxes.ts';

/** A stretch along a screw, in mm from the underside of its head. */
export type Stretch = readonly [from: number, to: number];

/** A screw as it stands when driven home: worked out from where its head is, how it leans and how long it is. */
export interface DrivenScrew {
  readonly fastener: Fastener;
  readonly head: Point;
  readonly tip: Point;
  /** Unit vector, the way it is driven. */
  readonly way: Point;
  /** The axis square to the joint, the sign it is driven along it, and the cosine of its lean to it. */
  readonly axis: Axis;
  readonly sign: 1 | -1;
  readonly cosine: number;
  readonly lengthMm: number;
  readonly radiusMm: number;
}

/** Drives a screw: where its tip comes is geometry, whatever setting-out wrote down about it. */
export function drive(setOut: SetOut, fastener: Fastener): DrivenScrew {
  const mm = (t: Fastener['length']) => toMm(setOut.ledger.ticks(t));
  const lean = fastener.lean?.degrees ?? 0;
  const [sine, cosine] = [twelve(Math.sin((lean * Math.PI) / 180)), twelve(Math.cos((lean * Math.PI) / 180))];
  const { axis, sign } = axisOf(fastener.direction);
  const way: [number, number, number] = [0, 0, 0];
  way[axis] = sign * cosine;
  if (fastener.lean) {
    const aside = axisOf(fastener.lean.toward);
    way[aside.axis] += aside.sign * sine;
  }
  const head: Point = [mm(fastener.head[0]), mm(fastener.head[1]), mm(fastener.head[2])];
  const lengthMm = mm(fastener.length);
  return {
    fastener,
    head,
    tip: along({ head, way }, lengthMm),
    way,
    axis,
    sign,
    cosine,
    lengthMm,
    radiusMm: mm(fastener.diameter) / 2,
  };
}

/** The point of a screw's axis so far from its head. */
export function along({ head, way }: Pick<DrivenScrew, 'head' | 'way'>, distance: number): Point {
  return [head[0] + way[0] * distance, head[1] + way[1] * distance, head[2] + way[2] * distance];
}

/** A part's wood as screws meet it: its box, less its rabbets and grooves. Mitred ends count as square; screws keep clear of them. */
export interface Wood {
  readonly part: Part;
  readonly box: StandingBox;
  readonly gone: readonly StandingBox[];
}

/** The wood of every part, by id. */
export function woodOf(setOut: SetOut): ReadonlyMap<string, Wood> {
  return new Map(
    setOut.parts.map((part) => [
      part.id,
      {
        part,
        box: standingBox(setOut, part),
        gone: part.features.flatMap((f) =>
          f.kind === 'rabbet' || f.kind === 'groove' ? [channelBox(setOut, part, f)] : [],
        ),
      },
    ]),
  );
}

/** Where a screw's axis runs in wood, out to `reach`. */
export function inWood(
  screw: Pick<DrivenScrew, 'head' | 'way'>,
  { box, gone }: Wood,
  reach: number,
): readonly Stretch[] {
  const whole = inBox(screw, box, reach);
  if (!whole) return [];
  let wood: Stretch[] = [whole];
  for (const rabbet of gone) {
    const out = inBox(screw, rabbet, reach);
    if (!out) continue;
    wood = wood.flatMap(([a, b]): Stretch[] => [
      [a, Math.min(b, out[0])],
      [Math.max(a, out[1]), b],
    ]);
  }
  return wood.filter(([a, b]) => b - a > 0.01);
}

/** The stretch of a screw's axis inside a box, up to `reach`. */
function inBox(
  { head, way }: Pick<DrivenScrew, 'head' | 'way'>,
  box: StandingBox,
  reach: number,
): Stretch | undefined {
  let [from, to] = [0, reach];
  for (const a of [0, 1, 2] as const) {
    if (way[a] === 0) {
      if (head[a] < box.min[a] || head[a] > box.max[a]) return undefined;
      continue;
    }
    const [p, q] = [(box.min[a] - head[a]) / way[a], (box.max[a] - head[a]) / way[a]];
    from = Math.max(from, Math.min(p, q));
    to = Math.min(to, Math.max(p, q));
  }
  return to > from ? [from, to] : undefined;
}

/** What a rabbet or a groove takes away, as it stands. */
function channelBox(setOut: SetOut, part: Part, r: Rabbet | Groove): StandingBox {
  const l = setOut.ledger;
  const size = [l.ticks(part.length), l.ticks(part.width), l.ticks(part.thickness)] as const;
  const min: [number, number, number] = [0, 0, 0];
  const max: [number, number, number] = [...size];
  const cut = (own: 0 | 1 | 2, atEnd: boolean, by: Ticks, inset = 0) => {
    [min[own], max[own]] = atEnd ? [size[own] - inset - by, size[own] - inset] : [inset, inset + by];
  };
  const across = r.edge === 'start' || r.edge === 'end' ? 0 : 1;
  cut(
    across,
    r.edge === 'end' || r.edge === 'far',
    l.ticks(r.width),
    r.kind === 'groove' ? l.ticks(r.inset) : 0,
  );
  cut(2, r.face === 'show', l.ticks(r.depth));
  min[1 - across] = l.ticks(r.from);
  max[1 - across] = l.ticks(r.to);
  return placed(setOut, part, min, max);
}

function twelve(x: number): number {
  return Math.round(x * 1e12) / 1e12;
}
