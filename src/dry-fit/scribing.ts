import type { Act } from '../build/index.ts';
import { type Assembly, axesOf, axisOf, type Member, planesOf } from './assembly.ts';
import type { ReadCard, Worked } from './tool-work.ts';
import { clipped, type VirtualPiece, type Way } from './virtual-piece.ts';

type Scribe = Extract<Act, { act: 'scribe' }>;

const NOTHING = 'nothing is there to scribe away, or nothing is left';

/** A loose piece sawn and planed to a line at its far edge or at an end, so that so much is left of it. */
export function scribed(piece: VirtualPiece, act: Scribe, read: ReadCard): Worked {
  const axis = act.edge === undefined ? 1 : 0;
  const leaves = read(act.leaves);
  const size = piece.size[axis];
  if (leaves <= 0 || leaves >= size) return { fault: NOTHING };
  return {
    piece: act.edge === 'start' ? clipped(piece, axis, size - leaves, size) : clipped(piece, axis, 0, leaves),
  };
}

/** What was scribed where it lies among others: how they are now, and which ways for screws in them are which. */
interface ScribedThere {
  readonly members: readonly Member[];
  readonly ways: ReadonlyMap<Way, Way>;
}

/** The same of a piece that hangs together with others, and of what is glued on with it: all are sawn along one plane. */
export function scribedThere(
  { members }: Assembly,
  act: Scribe,
  read: ReadCard,
): ScribedThere | { readonly fault: string } {
  const main = members.find((m) => m.mark === act.workpiece)!;
  const along = axesOf(main.turn)[act.edge === undefined ? 1 : 0]!;
  const towards = axisOf(along);
  // The way from the wood to the wall.
  const sign = act.edge === 'start' ? -towards.sign : towards.sign;
  const { axis } = towards;
  const reach = (m: Member) => {
    const planes = planesOf(m);
    const ends = [planes[`-${along[1] as 'x'}`], planes[`+${along[1] as 'x'}`]] as const;
    return sign > 0 ? { from: ends[0], wall: ends[1] } : { from: ends[1], wall: ends[0] };
  };
  const line = reach(main).from + sign * read(act.leaves);
  const ways = new Map<Way, Way>();
  const names = new Set([act.workpiece, ...(act.with ?? [])]);
  const cut = members.map((m) => {
    if (!names.has(m.mark)) return m;
    const off = sign * (reach(m).wall - line);
    const local = axesOf(m.turn).findIndex((d) => d[1] === along[1]) as 0 | 1 | 2;
    const size = m.piece.size[local];
    if (off <= 0 || off >= size) return undefined;
    const own = axisOf(axesOf(m.turn)[local]!).sign;
    const atEnd = own === sign;
    const piece = atEnd ? clipped(m.piece, local, 0, size - off) : clipped(m.piece, local, off, size);
    m.piece.ways.forEach((way, i) => {
      ways.set(way, piece.ways[i]!);
    });
    const origin = [...m.origin] as [number, number, number];
    if (!atEnd) origin[axis] = origin[axis]! + own * off;
    return { ...m, piece, origin };
  });
  if (cut.some((m) => m === undefined)) return { fault: NOTHING };
  return { members: cut as Member[], ways };
}
