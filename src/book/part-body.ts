import { type Ledger, type Traced, toMm } from '../measure/index.ts';
import type { Bevel, Direction, Edge, Groove, Notch, Part, Rabbet, SetOut } from '../setting-out/index.ts';
import { axisOf } from '../setting-out/index.ts';
import type { Point } from '../solid/index.ts';
import { type Convex, clipped, convexBox, edgesOf } from './convex.ts';

/** A part as it is drawn, where it stands in the piece, in millimetres. */
export interface PartBody {
  readonly part: string;
  /** Convex bodies that together make the part and don't overlap: what is painted. */
  readonly cells: readonly Convex[];
  /** Convex bodies that together make the part and overlap where they can, so that no seam shows through. */
  readonly covers: readonly Convex[];
  readonly edges: readonly (readonly [Point, Point])[];
}

/** A plane of a part's own frame: what lies beyond it (normal . p > offset) is outside. */
interface Plane {
  readonly normal: Point;
  readonly offset: number;
}

const KEPT = new WeakMap<SetOut, readonly PartBody[]>();

/** The bodies of all parts, in the order of marks; worked out once for a setting-out. */
export function bodiesOf(setOut: SetOut): readonly PartBody[] {
  const bodies = KEPT.get(setOut) ?? setOut.parts.map((p) => partBody(setOut.ledger, p));
  KEPT.set(setOut, bodies);
  return bodies;
}

/**
 * A part with its rabbets, grooves, notches and bevels, and the rims of holes for cables and vents. Other holes and pockets are left out (they
 * would be specks at the size of a whole piece), and so are the rabbets of a part that is also bevelled.
 */
function partBody(ledger: Ledger, part: Part): PartBody {
  const mm = (t: Parameters<Ledger['ticks']>[0]) => toMm(ledger.ticks(t));
  const size: Point = [mm(part.length), mm(part.width), mm(part.thickness)];
  const whole = convexBox([0, 0, 0], size);
  const bevels = part.features.filter((f): f is Bevel => f.kind === 'bevel');
  const rabbets = part.features.filter(
    (f): f is Rabbet | Groove | Notch => f.kind === 'rabbet' || f.kind === 'groove' || f.kind === 'notch',
  );
  const origin = part.place.origin.map(mm) as unknown as Point;
  const stand = (local: Convex[], edges: (readonly [Point, Point])[], covers = local): PartBody => {
    const put = placer(origin, [part.place.length, part.place.width, part.place.thickness]);
    return {
      part: part.id,
      cells: local.map(put.body),
      covers: covers.map(put.body),
      edges: [...edges, ...rimsOf(part, size, mm)].map(([p, q]) => [put.point(p), put.point(q)] as const),
    };
  };
  if (bevels.length > 0) {
    let body = whole;
    for (const b of bevels) {
      const plane = bevelPlane(b, size);
      body = clipped(body, plane.normal, plane.offset) ?? body;
    }
    return stand([body], edgesOf(body));
  }
  if (rabbets.length === 0) return stand([whole], edgesOf(whole));
  const steps = rabbets.map((r) => rabbetPlanes(r, size, mm));
  const cells = pieces(whole, steps);
  // The largest bodies grow fast in number; with more channels, what is left under all of them closes the seams.
  const covers =
    steps.length > 2
      ? [...cells, ...pieces(core(rabbets, size, mm), notchesOf(steps))]
      : overlapping(whole, steps);
  return stand(cells, steppedEdges(size, steps), covers);
}

/** So many straight lines make a rim. */
const RIM = 20;

/** Rims of holes and slots that stay open, on both faces. */
function rimsOf(part: Part, size: Point, mm: (t: Traced) => number): (readonly [Point, Point])[] {
  return part.features.flatMap((f) => {
    if (
      f.kind === 'hole' &&
      (f.use === 'cable' || f.use === 'vent' || (f.use === 'row' && f.depth === undefined))
    )
      return rim(mm(f.at[0]), mm(f.at[1]), mm(f.diameter) / 2, [0, 0], size[2]);
    if (f.kind !== 'slot') return [];
    const half = (mm(f.length) - mm(f.width)) / 2;
    return rim(
      mm(f.at[0]),
      mm(f.at[1]),
      mm(f.width) / 2,
      f.run === 'length' ? [half, 0] : [0, half],
      size[2],
    );
  });
}

/** A round rim, or one drawn out to both sides, as straight lines: fewer where it is small. */
function rim(
  x: number,
  y: number,
  radius: number,
  [outX, outY]: readonly [number, number],
  thickness: number,
): (readonly [Point, Point])[] {
  const lines = radius < 15 ? RIM / 2 : RIM;
  const on = (i: number, z: number): Point => {
    const angle = (2 * Math.PI * (i + 0.5)) / lines;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return [x + radius * c + Math.sign(c) * outX, y + radius * s + Math.sign(s) * outY, z];
  };
  return [0, thickness].flatMap((z) =>
    Array.from({ length: lines }, (_, i) => [on(i, z), on(i + 1, z)] as const),
  );
}

/** The slanting plane of a bevel. */
function bevelPlane(b: Bevel, [length, width, thickness]: Point): Plane {
  const edge = outward(b.edge);
  const angle = (b.angle * Math.PI) / 180;
  const up = b.fullFace === 'show' ? -1 : 1;
  const normal: [number, number, number] = [0, 0, up * Math.sin(angle)];
  normal[edge.axis] = edge.sign * Math.cos(angle);
  const at: [number, number, number] = [0, 0, b.fullFace === 'show' ? thickness : 0];
  at[edge.axis] = edge.sign > 0 ? [length, width][edge.axis]! : 0;
  return { normal, offset: normal[0] * at[0] + normal[1] * at[1] + normal[2] * at[2] };
}

/** A rabbet as the planes that bound it within the part; the rabbet is what lies beyond all of them. */
function rabbetPlanes(r: Rabbet | Groove | Notch, size: Point, mm: (t: Rabbet['width']) => number): Plane[] {
  const plane = (axis: 0 | 1 | 2, sign: 1 | -1, at: number): Plane => {
    const normal: [number, number, number] = [0, 0, 0];
    normal[axis] = sign;
    return { normal, offset: sign * at };
  };
  if (r.kind === 'notch')
    return [
      r.end === 'end' ? plane(0, 1, size[0] - mm(r.length)) : plane(0, -1, mm(r.length)),
      r.edge === 'far' ? plane(1, 1, size[1] - mm(r.width)) : plane(1, -1, mm(r.width)),
    ];
  const edge = outward(r.edge);
  const run = (1 - edge.axis) as 0 | 1;
  const inset = r.kind === 'groove' ? mm(r.inset) : 0;
  const inward = inset + mm(r.width);
  const planes = [
    plane(edge.axis, edge.sign, edge.sign > 0 ? size[edge.axis] - inward : inward),
    r.face === 'show' ? plane(2, 1, size[2] - mm(r.depth)) : plane(2, -1, mm(r.depth)),
  ];
  if (r.kind === 'groove')
    planes.push(edge.sign > 0 ? plane(edge.axis, -1, size[edge.axis] - inset) : plane(edge.axis, 1, inset));
  if (mm(r.from) > 0) planes.push(plane(run, 1, mm(r.from)));
  if (mm(r.to) < size[run]) planes.push(plane(run, -1, mm(r.to)));
  return planes;
}

/** The slab between the floors of all channels, from face to face. */
function core(
  channels: readonly (Rabbet | Groove | Notch)[],
  size: Point,
  mm: (t: Rabbet['width']) => number,
): Convex {
  const deepest = (face: Rabbet['face']) =>
    Math.max(0, ...channels.map((c) => (c.kind !== 'notch' && c.face === face ? mm(c.depth) : 0)));
  return convexBox([0, 0, deepest('under')], [size[0], size[1], size[2] - deepest('show')]);
}

/** Of the steps, those that go right through. */
function notchesOf(steps: readonly (readonly Plane[])[]): readonly (readonly Plane[])[] {
  return steps.filter((planes) => planes.every((p) => p.normal[2] === 0));
}

/** The body less every rabbet, in pieces that don't overlap. */
function pieces(whole: Convex, rabbets: readonly (readonly Plane[])[]): Convex[] {
  let cells = [whole];
  for (const planes of rabbets) {
    cells = cells.flatMap((cell) => {
      const kept: Convex[] = [];
      let rest: Convex | undefined = cell;
      for (const p of planes) {
        if (!rest) break;
        const inside = clipped(rest, p.normal, p.offset);
        if (inside) kept.push(inside);
        rest = clipped(rest, [-p.normal[0], -p.normal[1], -p.normal[2]], -p.offset);
      }
      return kept;
    });
  }
  return cells;
}

/** The body less every rabbet, as the largest convex bodies that fit. */
function overlapping(whole: Convex, rabbets: readonly (readonly Plane[])[]): Convex[] {
  let covers = [whole];
  for (const planes of rabbets)
    covers = covers.flatMap((c) => planes.flatMap((p) => clipped(c, p.normal, p.offset) ?? []));
  return covers;
}

/**
 * The edges of a stepped block: on the grid of all its planes, a grid line is an edge where the four cells round
 * it are filled by one, by three, or by two that face each other across it.
 */
function steppedEdges(size: Point, rabbets: readonly (readonly Plane[])[]): (readonly [Point, Point])[] {
  const grid = ([0, 1, 2] as const).map((axis) => {
    const marks = new Set([0, size[axis]]);
    for (const p of rabbets.flat()) if (p.normal[axis] !== 0) marks.add(Math.abs(p.offset));
    return [...marks].sort((a, b) => a - b);
  });
  const centre = (axis: number, i: number) => ((grid[axis]![i] ?? -1) + (grid[axis]![i + 1] ?? -1)) / 2;
  const filled = (at: readonly number[]): boolean => {
    if (at.some((i, axis) => i < 0 || i >= grid[axis]!.length - 1)) return false;
    const c = at.map((i, axis) => centre(axis, i)) as unknown as Point;
    return !rabbets.some((planes) =>
      planes.every((p) => p.normal[0] * c[0] + p.normal[1] * c[1] + p.normal[2] * c[2] > p.offset),
    );
  };
  const edges: (readonly [Point, Point])[] = [];
  for (const axis of [0, 1, 2]) {
    const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
    grid[u!]!.forEach((a, i) => {
      grid[v!]!.forEach((b, j) => {
        let from: number | undefined;
        for (let k = 0; k < grid[axis]!.length; k++) {
          const around = (di: number, dj: number) => {
            const at = [0, 0, 0];
            at[axis] = k;
            at[u!] = i - di;
            at[v!] = j - dj;
            return filled(at);
          };
          const [p, q, r, s] = [around(0, 0), around(1, 0), around(1, 1), around(0, 1)];
          const count = [p, q, r, s].filter(Boolean).length;
          const edge = count === 1 || count === 3 || (count === 2 && p === r);
          const here = grid[axis]![k]!;
          if (edge) from ??= here;
          else if (from !== undefined) {
            const end = (t: number) => {
              const point: [number, number, number] = [0, 0, 0];
              point[axis] = t;
              point[u!] = a;
              point[v!] = b;
              return point;
            };
            edges.push([end(from), end(here)]);
            from = undefined;
          }
        }
      });
    });
  }
  return edges;
}

function outward(edge: Edge): { axis: 0 | 1; sign: 1 | -1 } {
  if (edge === 'start') return { axis: 0, sign: -1 };
  if (edge === 'end') return { axis: 0, sign: 1 };
  return edge === 'near' ? { axis: 1, sign: -1 } : { axis: 1, sign: 1 };
}

/** Carries a part's own coordinates into the piece. */
function placer(origin: Point, directions: readonly Direction[]) {
  const turn = (p: Point): Point => {
    const out: [number, number, number] = [0, 0, 0];
    directions.forEach((d, i) => {
      const { axis, sign } = axisOf(d);
      out[axis] = p[i as 0 | 1 | 2] * sign;
    });
    return out;
  };
  const point = (p: Point): Point => {
    const t = turn(p);
    return [t[0] + origin[0], t[1] + origin[1], t[2] + origin[2]];
  };
  const body = (c: Convex): Convex => ({
    faces: c.faces.map((f) => {
      const normal = turn(f.normal);
      const corners = f.corners.map(point);
      const q = corners[0]!;
      return { normal, offset: normal[0] * q[0] + normal[1] * q[1] + normal[2] * q[2], corners };
    }),
  });
  return { point, body };
}
