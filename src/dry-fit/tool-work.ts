import type { Act, WorkEdge } from '../build/index.ts';
import { pocketShape, SINK_DEGREES } from '../materials/index.ts';
import { type Ticks, type Traced, toMm } from '../measure/index.ts';
import type { Point, Shape } from '../solid/index.ts';
import { clipped, type VirtualPiece, type Way } from './virtual-piece.ts';

/** Reads a length off a card. */
export type ReadCard = (length: Traced) => Ticks;

type ActOf<K extends Act['act']> = Extract<Act, { act: K }>;

/** What a tool made of a piece, or why it could not. */
export type Worked = { readonly piece: VirtualPiece } | { readonly fault: string };

/** How far a tool runs out beyond the wood, mm: enough to cut clean through. */
const BEYOND = 5;

/** A tilted saw cut across an end: a wedge falls off with all that lies beyond the line. */
export function bevelled(piece: VirtualPiece, act: ActOf<'bevel'>, read: ReadCard): Worked {
  if (act.edge !== 'start' && act.edge !== 'end')
    return { fault: 'a bevel along the grain can’t be cut this way' };
  const at = read(act.at);
  const [length] = piece.size;
  if (at < 0 || at > length) return { fault: 'the mark lies off the wood' };
  const shorter = act.edge === 'start' ? clipped(piece, 0, at, length) : clipped(piece, 0, 0, at);
  return { piece: sloped(shorter, act.edge, act.angle, act.fullFace) };
}

/** A piece without what lies beyond a slope that begins at the edge of its full face. */
export function sloped(
  piece: VirtualPiece,
  edge: WorkEdge,
  angle: number,
  fullFace: 'show' | 'under',
): VirtualPiece {
  const [l, w, t] = piece.size.map(toMm) as [number, number, number];
  const ends = edge === 'start' || edge === 'end';
  const low = edge === 'start' || edge === 'near';
  const slope = t * Math.tan((angle * Math.PI) / 180);
  const [fullZ, shortZ] = fullFace === 'show' ? [t, 0] : [0, t];
  const end = low ? 0 : ends ? l : w;
  const inward = low ? slope : -slope;
  const outward = low ? -BEYOND : BEYOND;
  // The blade's side of the slope: from the full face's corner to where it leaves the other face.
  const beyondFull = (fullZ - shortZ) * (BEYOND / t);
  const corners: [number, number][] = [
    [end, fullZ],
    [end + inward, shortZ],
    [end + inward * (1 + BEYOND / t), shortZ - beyondFull],
    [end + outward, shortZ - beyondFull],
    [end + outward, fullZ],
  ];
  const points = corners.flatMap(([a, z]): Point[] =>
    [-BEYOND, (ends ? w : l) + BEYOND].map((b) => (ends ? [a, b, z] : [b, a, z])),
  );
  return { ...piece, cuts: [...piece.cuts, { kind: 'hull', points }] };
}

/** A straight bit along an edge. */
export function rabbeted(piece: VirtualPiece, act: ActOf<'rabbet'>, read: ReadCard): Worked {
  const [l, w, t] = piece.size.map(toMm) as [number, number, number];
  const width = toMm(read(act.width));
  const depth = toMm(read(act.depth));
  const ends = act.edge === 'start' || act.edge === 'end';
  if (width <= 0 || depth <= 0 || depth >= t || width >= (ends ? l : w))
    return { fault: 'the bit is set wider or deeper than the wood' };
  const run: [number, number] = [
    act.from === undefined ? -BEYOND : toMm(read(act.from)),
    (ends ? w : l) + (act.before === undefined ? BEYOND : -toMm(read(act.before))),
  ];
  if (run[0] >= run[1]) return { fault: 'the rabbet stops before it begins' };
  const across = lowOrHigh(act.edge === 'start' || act.edge === 'near', width, ends ? l : w);
  const through = lowOrHigh(act.face === 'under', depth, t);
  const [x, y] = ends ? [across, run] : [run, across];
  const cut: Shape = { kind: 'box', min: [x[0], y[0], through[0]], max: [x[1], y[1], through[1]] };
  return { piece: { ...piece, cuts: [...piece.cuts, cut] } };
}

/** A straight bit run beside an edge, once or more, at one depth. */
export function grooved(piece: VirtualPiece, act: ActOf<'groove'>, read: ReadCard): Worked {
  const [l, w, t] = piece.size.map(toMm) as [number, number, number];
  const [bit, depth] = [toMm(read(act.bit)), toMm(read(act.depth))];
  const ends = act.edge === 'start' || act.edge === 'end';
  const [whole, along] = ends ? [l, w] : [w, l];
  if (depth <= 0 || depth >= t) return { fault: 'the bit is set deeper than the wood' };
  const run: [number, number] = [-BEYOND, along + BEYOND];
  for (const stop of [act.stop, act.otherStop]) {
    if (!stop) continue;
    const at = toMm(read(stop.at));
    if (at <= 0 || at >= along) return { fault: 'the channel stops off the wood' };
    if (stop.from === 'near' || stop.from === 'start') run[0] = at;
    else run[1] = along - at;
  }
  if (run[0] >= run[1]) return { fault: 'the channel stops before it begins' };
  const through = lowOrHigh(act.face === 'under', depth, t);
  const cuts: Shape[] = [];
  for (const fence of act.channels.flat()) {
    const at = toMm(read(fence));
    if (at < 0 || at + bit > whole) return { fault: 'the fence leads the bit off the wood' };
    const low = act.edge === 'start' || act.edge === 'near';
    const across: [number, number] = low ? [at, at + bit] : [whole - at - bit, whole - at];
    const [x, y] = ends ? [across, run] : [run, across];
    cuts.push({ kind: 'box', min: [x[0], y[0], through[0]], max: [x[1], y[1], through[1]] });
  }
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts] } };
}

/** A corner sawn out right through. */
export function notched(piece: VirtualPiece, act: ActOf<'notch'>, read: ReadCard): Worked {
  const [l, w, t] = piece.size.map(toMm) as [number, number, number];
  const [length, width] = [toMm(read(act.length)), toMm(read(act.width))];
  if (length <= 0 || width <= 0 || length >= l || width >= w) return { fault: 'the notch lies off the wood' };
  const x = lowOrHigh(act.end === 'start', length, l);
  const y = lowOrHigh(act.edge === 'near', width, w);
  const cut: Shape = { kind: 'box', min: [x[0], y[0], -BEYOND], max: [x[1], y[1], t + BEYOND] };
  return { piece: { ...piece, cuts: [...piece.cuts, cut] } };
}

function lowOrHigh(low: boolean, depth: number, whole: number): [number, number] {
  return low ? [-BEYOND, depth] : [whole - depth, whole + BEYOND];
}

/** The pocket jig: a wide bore down to the head's seat, a narrow one on to the edge. */
export function pocketed(piece: VirtualPiece, act: ActOf<'pocket'>, read: ReadCard): Worked {
  const shape = pocketShape(toMm(read(act.collar)));
  const ends = act.edge === 'start' || act.edge === 'end';
  const [l, w, t] = piece.size.map(toMm) as [number, number, number];
  const [edgeLength, across] = ends ? [w, l] : [l, w];
  const lean = (shape.degrees * Math.PI) / 180;
  // Inward from the edge, and up out of the face that is bored.
  const inward = act.edge === 'start' || act.edge === 'near' ? 1 : -1;
  const up = act.face === 'show' ? 1 : -1;
  const point = (along: number, inside: number, height: number): Point =>
    ends ? [inside, along, height] : [along, inside, height];
  const cuts: Shape[] = [];
  const ways: Way[] = [];
  for (const a of act.along) {
    const fromLow = act.from === 'near' || act.from === 'start';
    const along = fromLow ? toMm(read(a)) : edgeLength - toMm(read(a));
    if (along < shape.boreRadius || along > edgeLength - shape.boreRadius)
      return { fault: 'a pocket lies off the wood' };
    const edge = inward > 0 ? 0 : across;
    // The jig sets half its collar's thickness from the face that lies in it, the one not bored.
    const exitZ = act.face === 'show' ? shape.middle : t - shape.middle;
    const on = (distance: number): Point =>
      point(along, edge + inward * distance * Math.cos(lean), exitZ + up * distance * Math.sin(lean));
    cuts.push(
      { kind: 'cylinder', from: on(shape.seat), to: on(shape.out + BEYOND), radius: shape.boreRadius },
      { kind: 'cylinder', from: on(-BEYOND), to: on(shape.seat), radius: shape.shankRadius },
    );
    ways.push({
      kind: 'pocket',
      side: act.edge,
      at: on(0),
      along: ends
        ? [-inward * Math.cos(lean), 0, -up * Math.sin(lean)]
        : [0, -inward * Math.cos(lean), -up * Math.sin(lean)],
      seat: shape.seat,
      diameter: 2 * shape.shankRadius,
    });
  }
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts], ways: [...piece.ways, ...ways] } };
}

/** A twist bit square to a side, and a countersink or a hole for a plug at its mouth. */
export function drilled(piece: VirtualPiece, act: ActOf<'drill'>, read: ReadCard): Worked {
  const size = piece.size.map(toMm) as [number, number, number];
  const radius = toMm(read(act.diameter)) / 2;
  const across = (from: number) => (act.acrossFrom === 'far' ? size[1] - from : from);
  const cuts: Shape[] = [];
  const ways: Way[] = [];
  const faceHalved = act.side === 'show' || act.side === 'under' ? act.middle : undefined;
  const places = (run: 'length' | 'width', whole: number, t: Traced | 'middle') => {
    if (t === 'middle') return [whole / 2];
    const off = toMm(read(t));
    return faceHalved?.includes(run) ? [whole / 2 - off, whole / 2 + off] : [off];
  };
  const mouths = act.at.flatMap(([first, second]) =>
    places('length', size[0], first).flatMap((a) =>
      places('width', size[1], second).map((b) => mouthOf(size, act.side, act.from, a, across(b))),
    ),
  );
  for (const mouth of mouths) {
    const into = INTO[act.side];
    const axis = into.findIndex((c) => c !== 0);
    const through = size[axis]!;
    const depth = act.depth === undefined ? undefined : toMm(read(act.depth));
    const inside = [0, 1, 2].every(
      (i) => i === axis || (mouth[i]! - radius > 0 && mouth[i]! + radius < size[i]!),
    );
    if (!inside) return { fault: 'a hole lies off the wood' };
    if (depth !== undefined && depth >= through)
      return { fault: 'a hole that should be blind comes out behind' };
    const on = (d: number): Point => [mouth[0] + into[0] * d, mouth[1] + into[1] * d, mouth[2] + into[2] * d];
    cuts.push({ kind: 'cylinder', from: on(-BEYOND), to: on(depth ?? through + BEYOND), radius });
    const wide = act.counterbore && {
      radius: toMm(read(act.counterbore.diameter)) / 2,
      depth: toMm(read(act.counterbore.depth)),
    };
    if (wide) {
      if (wide.depth >= (depth ?? through)) return { fault: 'the hole for a plug is as deep as the board' };
      if (wide.radius <= radius) return { fault: 'the hole for a plug is no wider than the screw’s' };
      cuts.push({ kind: 'cylinder', from: on(-BEYOND), to: on(wide.depth), radius: wide.radius });
    }
    if (act.countersink !== undefined) {
      const wide = toMm(read(act.countersink)) / 2;
      const sink = (wide - radius) / Math.tan(((SINK_DEGREES / 2) * Math.PI) / 180);
      cuts.push({ kind: 'cylinder', from: on(0), to: on(sink), radius: wide, toRadius: radius });
    }
    if (act.open) continue;
    ways.push({
      kind: act.dowels ? 'dowel' : 'hole',
      side: act.side,
      at: mouth,
      along: into,
      seat: wide ? -wide.depth : 0,
      ...(act.countersink === undefined ? {} : { sunk: true as const }),
      ...(wide ? { plugged: 2 * wide.radius } : {}),
      ...(depth === undefined ? {} : { depth }),
      diameter: 2 * radius,
    });
  }
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts], ways: [...piece.ways, ...ways] } };
}

/** A round cutter plunged square into a side: its disc lies flat in an edge, and stands along its run in a face. */
export function biscuitSlotted(piece: VirtualPiece, act: ActOf<'biscuit-slot'>, read: ReadCard): Worked {
  const size = piece.size.map(toMm) as [number, number, number];
  const [depth, radius, half] = [toMm(read(act.depth)), toMm(read(act.cutter)) / 2, toMm(read(act.kerf)) / 2];
  const into = INTO[act.side];
  const inward = into.findIndex((c) => c !== 0);
  // The disc's axis: through an edge's thickness; on a face, across the slot's run.
  const axis = inward === 2 ? (act.run === 'length' ? 1 : 0) : 2;
  const along = 3 - inward - axis;
  if (depth <= 0 || depth >= radius) return { fault: 'the cutter doesn’t reach that deep' };
  if (act.slopeFrom) return slottedOnSlope(piece, act, read, { depth, radius, half });
  if (depth >= size[inward]!) return { fault: 'a slot that should be blind comes out behind' };
  const chord = Math.sqrt(radius * radius - (radius - depth) * (radius - depth));
  const cuts: Shape[] = [];
  const ways: Way[] = [];
  for (const [first, second] of act.at) {
    const aside = toMm(read(second));
    const at = mouthOf(
      size,
      act.side,
      act.from,
      toMm(read(first)),
      act.acrossFrom === 'far' ? size[1] - aside : aside,
    );
    if (at[axis]! - half <= 0 || at[axis]! + half >= size[axis]!)
      return { fault: 'a slot lies off the wood' };
    if (at[along]! - chord < 0 || at[along]! + chord > size[along]!)
      return { fault: 'a slot runs out at the end' };
    const end = (off: number): Point =>
      at.map((x, i) => x + into[i]! * (depth - radius) + (i === axis ? off : 0)) as unknown as Point;
    cuts.push({ kind: 'cylinder', from: end(-half), to: end(half), radius });
    const square = [0, 1, 2].map((i) => (i === axis ? 1 : 0)) as unknown as Point;
    ways.push({
      kind: 'biscuit',
      side: act.side,
      at,
      along: into,
      seat: 0,
      depth,
      diameter: 2 * half,
      square,
    });
  }
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts], ways: [...piece.ways, ...ways] } };
}

/** A joiner whose fence lies on a mitred end's slope: a disc plunged in square to it, so far down from the inner arris. */
function slottedOnSlope(
  piece: VirtualPiece,
  act: ActOf<'biscuit-slot'>,
  read: ReadCard,
  { depth, radius, half }: { readonly depth: number; readonly radius: number; readonly half: number },
): Worked {
  const size = piece.size.map(toMm) as [number, number, number];
  const chord = Math.sqrt(radius * radius - (radius - depth) * (radius - depth));
  const slope = size[2] * Math.SQRT2;
  const way = act.side === 'start' ? 1 : -1;
  const out = act.slopeFrom === 'show' ? -1 : 1;
  const into: Point = [way * Math.SQRT1_2, 0, out * Math.SQRT1_2];
  const down: Point = [-way * Math.SQRT1_2, 0, out * Math.SQRT1_2];
  const cuts: Shape[] = [];
  const ways: Way[] = [];
  for (const [first, second] of act.at) {
    const far = toMm(read(second));
    if (far - half <= 0 || far + half >= slope) return { fault: 'a slot lies off the slope' };
    if (far + half + depth >= slope) return { fault: 'a slot in a mitre comes through the outer face' };
    const y = mouthOf(size, act.side, act.from, toMm(read(first)), 0)[1];
    if (y - chord < 0 || y + chord > size[1]) return { fault: 'a slot runs out at the end' };
    const arris: Point = [
      act.side === 'start' ? size[2] : size[0] - size[2],
      y,
      act.slopeFrom === 'show' ? size[2] : 0,
    ];
    const on = (inward: number, along: number): Point =>
      arris.map((x, i) => x + into[i]! * inward + down[i]! * (far + along)) as unknown as Point;
    cuts.push({ kind: 'cylinder', from: on(depth - radius, -half), to: on(depth - radius, half), radius });
    ways.push({
      kind: 'biscuit',
      side: act.side,
      at: on(0, 0),
      along: into,
      seat: 0,
      depth,
      diameter: 2 * half,
      square: down,
    });
  }
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts], ways: [...piece.ways, ...ways] } };
}

/** A drill with a stop, guided by a strip of holes: the printed first hole, and on from it by the printed pitch. */
export function pinHoled(piece: VirtualPiece, act: ActOf<'pin-holes'>, read: ReadCard): Worked {
  const size = piece.size.map(toMm) as [number, number, number];
  const radius = toMm(read(act.diameter)) / 2;
  const depth = toMm(read(act.depth));
  if (depth >= size[2]) return { fault: 'a hole that should be blind comes out behind' };
  const into = INTO[act.side];
  const cuts: Shape[] = [];
  const ways: Way[] = [];
  for (const row of act.rows)
    for (let n = 1; n <= row.count; n++) {
      if (row.leftOut.includes(n)) continue;
      const along = toMm(read(row.first)) + (row.pitch === undefined ? 0 : toMm(read(row.pitch)) * (n - 1));
      for (const line of row.lines) {
        const across =
          (row.acrossFrom ?? act.acrossFrom) === 'far' ? size[1] - toMm(read(line)) : toMm(read(line));
        const at = mouthOf(size, act.side, act.from, along, across);
        if ([0, 1].some((i) => at[i]! - radius <= 0 || at[i]! + radius >= size[i]!))
          return { fault: 'a hole lies off the wood' };
        const on = (d: number): Point => [at[0], at[1], at[2] + into[2] * d];
        cuts.push({ kind: 'cylinder', from: on(-BEYOND), to: on(depth), radius });
        ways.push({ kind: 'pin', side: act.side, at, along: into, seat: 0, depth, diameter: 2 * radius });
      }
    }
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts], ways: [...piece.ways, ...ways] } };
}

/** A straight bit plunged right through and run from end to end, along every line. */
export function slotted(piece: VirtualPiece, act: ActOf<'slot'>, read: ReadCard): Worked {
  const [l, w, t] = piece.size.map(toMm) as [number, number, number];
  const radius = toMm(read(act.bit)) / 2;
  const lengthwise = act.run === 'length';
  const along = (x: number) => (act.from === 'end' ? l - x : x);
  const cuts: Shape[] = [];
  const ways: Way[] = [];
  for (const line of act.beside) {
    const aside = toMm(read(line));
    const [p, q] = act.ends.map((e) => {
      const at = toMm(read(e));
      return lengthwise ? ([along(at), aside] as const) : ([along(aside), at] as const);
    }) as [readonly [number, number], readonly [number, number]];
    const [low, high] = [0, 1].map((k) => [Math.min(p[k]!, q[k]!), Math.max(p[k]!, q[k]!)] as const);
    const [x, y] = [low!, high!];
    if (x[0] - radius <= 0 || x[1] + radius >= l || y[0] - radius <= 0 || y[1] + radius >= w)
      return { fault: 'a slot lies off the wood' };
    const end = ([ax, ay]: readonly [number, number]): Shape => ({
      kind: 'cylinder',
      from: [ax, ay, -BEYOND],
      to: [ax, ay, t + BEYOND],
      radius,
    });
    const [besideX, besideY] = lengthwise ? [0, radius] : [radius, 0];
    cuts.push(
      {
        kind: 'box',
        min: [x[0] - besideX, y[0] - besideY, -BEYOND],
        max: [x[1] + besideX, y[1] + besideY, t + BEYOND],
      },
      end(p),
      end(q),
    );
    // A screw is to stand in the middle of it, with as much room before as behind.
    if (act.screws)
      ways.push({
        kind: 'hole',
        side: act.face,
        at: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2, act.face === 'show' ? t : 0],
        along: INTO[act.face],
        seat: 0,
        diameter: 2 * radius,
      });
  }
  return { piece: { ...piece, cuts: [...piece.cuts, ...cuts], ways: [...piece.ways, ...ways] } };
}

/** Into the wood from each side. */
const INTO: Record<ActOf<'drill'>['side'], Point> = {
  start: [1, 0, 0],
  end: [-1, 0, 0],
  near: [0, 1, 0],
  far: [0, -1, 0],
  under: [0, 0, 1],
  show: [0, 0, -1],
};

function mouthOf(
  size: readonly [number, number, number],
  side: ActOf<'drill'>['side'],
  from: WorkEdge,
  first: number,
  second: number,
): Point {
  const [l, w, t] = size;
  const counted = (whole: number) => (from === 'end' || from === 'far' ? whole - first : first);
  switch (side) {
    case 'show':
      return [counted(l), second, t];
    case 'under':
      return [counted(l), second, 0];
    case 'near':
      return [counted(l), 0, second];
    case 'far':
      return [counted(l), w, second];
    case 'start':
      return [0, counted(w), second];
    case 'end':
      return [l, counted(w), second];
  }
}
