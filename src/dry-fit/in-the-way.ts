import { toMm } from '../measure/index.ts';
import type { Frame, Point, Shape, Solids } from '../solid/index.ts';
import { type Assembly, frameOf, type Member, planesOf } from './assembly.ts';
import { type Box, boundsOf, overlap } from './shape-bounds.ts';
import { volumeOf } from './volume-of.ts';
import { woodLeft } from './wood-left.ts';

/** Two parts that would share wood, and by how much across the thinnest way. */
export interface Clash {
  readonly newcomer: string;
  readonly there: string;
  readonly depthMm: number;
}

/** How much parts may overlap before it counts, mm: what rounding on the cards makes, and a clamp takes up. */
const GIVE = 0.75;
/** So near to all of a thickness is all of it, mm. */
const WHOLE = 0.01;

/** Everything that a newcomer runs into. */
export function inTheWay(solids: Solids, there: Assembly, came: Assembly): readonly Clash[] {
  return came.members.flatMap((a) =>
    there.members.flatMap((b) => {
      const meeting = meetingOf(a, b);
      if (!meeting || !isTooMuch(solids, meeting)) return [];
      const depthMm = Math.round((leftIn(solids, meeting) / meeting.across) * 10) / 10;
      return [{ newcomer: a.mark, there: b.mark, depthMm }];
    }),
  );
}

/** Whether one member runs into another. */
export function runInto(solids: Solids, a: Member, b: Member): boolean {
  const meeting = meetingOf(a, b);
  return meeting !== undefined && isTooMuch(solids, meeting);
}

/** How much wood two members would share as they stand, mm³. */
export function sharedVolume(solids: Solids, a: Member, b: Member): number {
  const box = commonBox(a, b);
  if (box.min.some((low, k) => low >= box.max[k]!)) return 0;
  return leftIn(solids, { box, cuts: [a, b].flatMap((m) => cutsWithin(m, box)) });
}

/** The box that two members share, what is cut out of them there, and how large it is across the way that they run in, mm². */
interface Meeting {
  readonly box: Box;
  readonly cuts: readonly Shape[];
  readonly across: number;
}

/** Where the boxes of two members overlap by more than what counts for nothing. Mitres and rabbets may leave room there. */
function meetingOf(a: Member, b: Member): Meeting | undefined {
  const box = commonBox(a, b);
  const sides = box.max.map((far, k) => far - box.min[k]!);
  if (sides.some((side) => side <= 0)) return undefined;
  const across = wayIn(a, b, sides);
  if (sides[across]! <= GIVE) return undefined;
  const rest = sides.filter((_, k) => k !== across);
  return { box, cuts: [a, b].flatMap((m) => cutsWithin(m, box)), across: rest[0]! * rest[1]! };
}

/**
 * The axis along which two members run into each other: the thinnest way across what they share. Where tape, thinner than
 * what counts, goes into something with all its thickness, it is another way that tells.
 */
function wayIn(a: Member, b: Member, sides: readonly number[]): number {
  const isTape = (k: number) =>
    sides[k]! <= GIVE && [a, b].some((m) => sides[k]! >= thicknessAlong(m, k) - WHOLE);
  const ways = [0, 1, 2].filter((k) => !isTape(k));
  return (ways.length > 0 ? ways : [0, 1, 2]).reduce((least, k) => (sides[k]! < sides[least]! ? k : least));
}

function thicknessAlong(member: Member, axis: number): number {
  const planes = planesOf(member);
  const k = 'xyz'[axis] as 'x' | 'y' | 'z';
  return toMm(planes[`+${k}`] - planes[`-${k}`]);
}

function isTooMuch(solids: Solids, meeting: Meeting): boolean {
  const much = GIVE * meeting.across;
  const { least, most } = woodLeft(meeting.box, meeting.cuts);
  if (least > much) return true;
  if (most <= much) return false;
  // Where slopes meet, they leave nothing, whatever holes are in them.
  const slopes = meeting.cuts.filter((cut) => !isRound(cut));
  if (slopes.length < meeting.cuts.length && leftIn(solids, { ...meeting, cuts: slopes }) <= much)
    return false;
  return volumeOf(solids, woodOf(meeting)) > much;
}

function isRound(cut: Shape): boolean {
  return cut.kind === 'cylinder' || (cut.kind === 'moved' && isRound(cut.body));
}

/** The wood that is left in a box; the modeller is asked only where it is not all boxes. */
function leftIn(solids: Solids, { box, cuts }: Pick<Meeting, 'box' | 'cuts'>): number {
  const { least, most } = woodLeft(box, cuts);
  if (least === most) return most;
  return volumeOf(solids, woodOf({ box, cuts }));
}

function woodOf({ box, cuts }: Pick<Meeting, 'box' | 'cuts'>): Shape {
  return { kind: 'without', body: { kind: 'box', ...box }, cuts };
}

/** The box that two members' boxes share, mm; inside out where they are apart. */
function commonBox(a: Member, b: Member): Box {
  const [p, q] = [planesOf(a), planesOf(b)];
  const side = (of: (k: 'x' | 'y' | 'z') => number): Point => [toMm(of('x')), toMm(of('y')), toMm(of('z'))];
  return {
    min: side((k) => Math.max(p[`-${k}`], q[`-${k}`])),
    max: side((k) => Math.min(p[`+${k}`], q[`+${k}`])),
  };
}

/** What has been cut out of a member there, as it stands. */
function cutsWithin(member: Member, box: Box): readonly Shape[] {
  if (member.piece.cuts.length === 0) return [];
  const frame = frameOf(member);
  const own = inOwnFrame(frame, box);
  return member.piece.cuts
    .filter((cut) => overlap(boundsOf(cut), own))
    .map((body) => ({ kind: 'moved', body, frame }));
}

/** A box as a member has it in its own frame, which is turned by quarters. */
function inOwnFrame({ origin, x, y, z }: Frame, { min, max }: Box): Box {
  const along = (way: Point, p: Point) => way.reduce((sum, c, k) => sum + c * (p[k]! - origin[k]!), 0);
  const corner = (pick: (a: number, b: number) => number): Point => [
    pick(along(x, min), along(x, max)),
    pick(along(y, min), along(y, max)),
    pick(along(z, min), along(z, max)),
  ];
  return { min: corner(Math.min), max: corner(Math.max) };
}
