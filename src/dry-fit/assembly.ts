import type { PieceDirection, Touch, Turn } from '../build/index.ts';
import { toMm } from '../measure/index.ts';
import type { Frame, Point } from '../solid/index.ts';
import type { ReadCard } from './tool-work.ts';
import { clipped, type VirtualPiece } from './virtual-piece.ts';

/** The name of the assembly that is the finished piece. */
export const PIECE = 'case';

/** A piece in an assembly: which way it is turned, and where its own corner lies, in ticks. */
export interface Member {
  readonly mark: string;
  readonly piece: VirtualPiece;
  readonly turn: Turn;
  readonly origin: readonly [number, number, number];
  /** Of a box that was put together by itself and set beside others. */
  readonly box?: SetBox;
}

/** A box that was set: the how manieth it was, and the boxes that it was set against; 0 stands for what belongs to none. */
export interface SetBox {
  readonly nth: number;
  readonly beside: readonly number[];
}

/** Pieces that hang together, in one frame: x to the right, y to the back, z up. */
export interface Assembly {
  readonly members: readonly Member[];
}

/** A plane's place along its axis, and the sign of the way it looks. */
type Planes = Readonly<Record<PieceDirection, number>>;

// A member never changes, and where it lies is asked for at every touch, screw and tool.
const PLANES = new WeakMap<Member, Planes>();
const FRAMES = new WeakMap<Member, Frame>();

/** The six outer planes of a member, in ticks. */
export function planesOf(member: Member): Planes {
  const known = PLANES.get(member);
  if (known) return known;
  const planes: Record<PieceDirection, number> = { '+x': 0, '-x': 0, '+y': 0, '-y': 0, '+z': 0, '-z': 0 };
  axesOf(member.turn).forEach((d, local) => {
    const { axis, sign } = axisOf(d);
    const near = member.origin[axis]!;
    const far = near + sign * member.piece.size[local as 0 | 1 | 2];
    planes[`+${AXES[axis]}`] = Math.max(near, far);
    planes[`-${AXES[axis]}`] = Math.min(near, far);
  });
  PLANES.set(member, planes);
  return planes;
}

/** The frame of a member in the assembly, in mm. */
export function frameOf(member: Member): Frame {
  const known = FRAMES.get(member);
  if (known) return known;
  const [x, y, z] = axesOf(member.turn).map(unit) as [Point, Point, Point];
  const frame: Frame = { origin: member.origin.map(toMm) as unknown as Point, x, y, z };
  FRAMES.set(member, frame);
  return frame;
}

/** What an assembly looks like when it is brought to another by three touches; undefined when one names nothing there. */
export function seated(
  newcomers: Assembly,
  own: string,
  there: Assembly,
  touches: readonly [Touch, Touch, Touch],
  read: ReadCard,
): Assembly | string {
  const by: [number, number, number] = [0, 0, 0];
  const settled = new Set<number>();
  for (const touch of touches) {
    const mine = newcomers.members.find((m) => m.mark === (touch.part ?? own));
    if (!mine) return `${touch.part ?? own} is not among what is being set`;
    const { axis, sign } = axisOf(touch.face);
    if (axisOf(touch.side).axis !== axis || settled.has(axis)) return 'its three touches don’t fix its place';
    settled.add(axis);
    const planes: number[] = [];
    for (const of of touch.of === 'bench' ? [] : [touch.of, ...(touch.or ?? [])]) {
      const other = there.members.find((m) => m.mark === of);
      if (!other) return `${of} is not there yet`;
      planes.push(planesOf(other)[touch.face]);
    }
    const plane = planes.length === 0 ? 0 : sign * Math.max(...planes.map((p) => sign * p));
    const gap = touch.gap === undefined ? 0 : read(touch.gap);
    by[axis] = plane + sign * gap - planesOf(mine)[touch.side];
  }
  return {
    members: newcomers.members.map((m) => ({
      ...m,
      origin: [m.origin[0] + by[0], m.origin[1] + by[1], m.origin[2] + by[2]] as const,
    })),
  };
}

/** Takes off what stands beyond a member's planes on the named sides. */
export function trimmedLevel(
  assembly: Assembly,
  to: string,
  sides: readonly PieceDirection[],
  strips?: readonly string[],
): Assembly | string {
  const host = assembly.members.find((m) => m.mark === to);
  if (!host) return `${to} is not there`;
  const stays = strips ? assembly.members.filter((m) => !strips.includes(m.mark)) : [host];
  const limit = (side: PieceDirection) => {
    const planes = stays.map((m) => planesOf(m)[side]);
    return axisOf(side).sign > 0 ? Math.max(...planes) : Math.min(...planes);
  };
  return {
    members: assembly.members.map((m) =>
      stays.includes(m) || (strips && !strips.includes(m.mark))
        ? m
        : sides.reduce((cut, side) => trimmed(cut, side, limit(side)), m),
    ),
  };
}

function trimmed(member: Member, side: PieceDirection, limit: number): Member {
  const { axis, sign } = axisOf(side);
  const own = planesOf(member)[side];
  const over = (own - limit) * sign;
  if (over <= 0) return member;
  const local = axesOf(member.turn).findIndex((d) => axisOf(d).axis === axis) as 0 | 1 | 2;
  const size = member.piece.size[local];
  if (over >= size) return member;
  const runsOutward = axisOf(axesOf(member.turn)[local]).sign === sign;
  const piece = runsOutward
    ? clipped(member.piece, local, 0, size - over)
    : clipped(member.piece, local, over, size);
  const origin = [...member.origin] as [number, number, number];
  // The frame begins at the end that was cut, when the piece runs inward from there.
  if (!runsOutward) origin[axis] = limit;
  return { ...member, piece, origin };
}

/** Length, width and thickness as directions of the assembly; the third makes the frame right-handed. */
export function axesOf(turn: Turn): readonly [PieceDirection, PieceDirection, PieceDirection] {
  const a = axisOf(turn.length);
  const b = axisOf(turn.width);
  const axis = 3 - a.axis - b.axis;
  const sign = a.sign * b.sign * ((a.axis + 1) % 3 === b.axis ? 1 : -1);
  return [turn.length, turn.width, `${sign > 0 ? '+' : '-'}${AXES[axis]!}` as PieceDirection];
}

const AXES = ['x', 'y', 'z'] as const;

interface Signed {
  readonly axis: 0 | 1 | 2;
  readonly sign: 1 | -1;
}

const SIGNED: Readonly<Record<PieceDirection, Signed>> = {
  '+x': { axis: 0, sign: 1 },
  '-x': { axis: 0, sign: -1 },
  '+y': { axis: 1, sign: 1 },
  '-y': { axis: 1, sign: -1 },
  '+z': { axis: 2, sign: 1 },
  '-z': { axis: 2, sign: -1 },
};

export function axisOf(d: PieceDirection): Signed {
  return SIGNED[d];
}

function unit(d: PieceDirection): Point {
  const { axis, sign } = axisOf(d);
  return [0, 1, 2].map((i) => (i === axis ? sign : 0)) as unknown as Point;
}

/** A point or vector of a member's own frame (mm) in the assembly. */
export function fromMember(frame: Frame, p: Point, vector = false): Point {
  const along = (i: 0 | 1 | 2) =>
    (vector ? 0 : frame.origin[i]) + frame.x[i] * p[0] + frame.y[i] * p[1] + frame.z[i] * p[2];
  return [along(0), along(1), along(2)];
}
