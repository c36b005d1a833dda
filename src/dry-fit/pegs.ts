import type { PieceDirection } from '../build/index.ts';
import type { Point } from '../solid/index.ts';
import { type Assembly, frameOf, fromMember, type Member } from './assembly.ts';
import type { DryFitFault } from './report.ts';
import type { Way } from './virtual-piece.ts';

/** What a card says of the dowels or biscuits between two parts, and what those measure. */
export interface PegCard {
  readonly part: string;
  readonly mate: string;
  readonly kind: string;
  readonly acrossMm: number;
  readonly thickMm: number;
  readonly count: number;
}

/** How far the holes of two parts may lie from each other, mm: the part goes where they lead (common practice). */
const OFF_LINE = 1.5;
/** How far one of a row may be off the others, mm, before the joint binds: along its slot a biscuit has more play, across it none (from memory). */
const APART = { dowel: 0.4, biscuit: 2 } as const;
const ACROSS = APART.dowel;
/** How much wider than what goes in a hole may be, mm (from memory). */
const LOOSE = 0.4;
/** How much deeper both holes together may be than what goes in is long, mm: deeper, and it slips away into one. */
const DEEPER = 5;

type Fault = Omit<DryFitFault, 'operation'>;

/** A hole or slot as it stands in the assembly. */
export interface Mouth {
  readonly way: Way;
  readonly at: Point;
  readonly into: Point;
  /** Of a slot. */
  readonly square?: Point;
}

/** Puts dowels or biscuits into the holes that two parts turn to each other, and tells what goes wrong. */
export function pegged(
  assembly: Assembly,
  card: PegCard,
  filled: ReadonlySet<Way>,
): { readonly fills: readonly Way[]; readonly way?: PieceDirection; readonly faults: readonly Fault[] } {
  const [part, mate] = [card.part, card.mate].map((mark) => assembly.members.find((m) => m.mark === mark));
  if (!part || !mate) {
    const on = part ? card.mate : card.part;
    return { fills: [], faults: [{ code: 'workpiece-missing', on, sentence: `${on} is not there.` }] };
  }
  const kind = card.kind === 'biscuit' ? 'biscuit' : 'dowel';
  const faults: Fault[] = [];
  const fault = (code: Fault['code'], sentence: string) => faults.push({ code, on: card.part, sentence });
  const there = mouthsOf(mate, kind, filled);
  const pairs: { readonly own: Mouth; readonly other: Mouth; readonly off: Point }[] = [];
  for (const own of mouthsOf(part, kind, filled)) {
    const i = there.findIndex((m) => faces(own, m) && beside(own, m) <= OFF_LINE + APART[kind]);
    if (i < 0) continue;
    const [other] = there.splice(i, 1);
    pairs.push({ own, other: other!, off: minus(own.at, other!.at) });
  }
  const words = `${card.part} and ${card.mate}`;
  if (pairs.length !== card.count)
    fault(
      'no-peg',
      `${card.count} ${kind}s are to go between ${words}, but holes for ${pairs.length} meet there.`,
    );
  const mean = [0, 1, 2].map((k) => pairs.reduce((sum, p) => sum + p.off[k]!, 0) / pairs.length);
  for (const { own, other, off } of pairs) {
    const [a, b] = [own.way, other.way];
    const stray = off.map((x, k) => x - mean[k]!);
    const across = Math.abs(own.square?.reduce((sum, c, k) => sum + c * stray[k]!, 0) ?? 0);
    if (Math.hypot(...stray) > APART[kind] || across > ACROSS)
      fault('peg-binds', `The ${kind}s between ${words} are further apart in one than in the other.`);
    for (const { diameter } of [a, b])
      if (diameter < card.thickMm - 0.1 || diameter > card.thickMm + LOOSE)
        fault(
          'peg-binds',
          `A ${kind} of ${card.thickMm} mm is to go into a hole of ${round(diameter)} mm in ${words}.`,
        );
    const spare = (a.depth ?? 0) + (b.depth ?? 0) - card.acrossMm;
    if (spare < 0)
      fault(
        'peg-binds',
        `The holes of ${words} are ${round(-spare)} mm too shallow for a ${kind}: the joint stays open.`,
      );
    if (spare > DEEPER)
      fault(
        'peg-binds',
        `The holes of ${words} are ${round(spare)} mm deeper than a ${kind} is long: it slips into one.`,
      );
  }
  const [first] = pairs;
  const way = first && directionOf(first.own.into);
  return {
    fills: pairs.flatMap(({ own, other }) => [own.way, other.way]),
    ...(way === undefined ? {} : { way }),
    faults: [...new Map(faults.map((f) => [f.sentence, f])).values()],
  };
}

/** The mark of a part whose biscuits or splines in one mitre are in while those of another have not come: glue must not set then. */
export function openCorner(assembly: Assembly, filled: ReadonlySet<Way>): string | undefined {
  return assembly.members.find(({ piece }) => {
    const sloping = piece.ways.filter(
      (w) => (w.kind === 'biscuit' || w.kind === 'spline') && directionOf(w.along) === undefined,
    );
    return sloping.some((w) => filled.has(w)) && sloping.some((w) => !filled.has(w));
  })?.mark;
}

/** Undefined in a mitre: there the corners are drawn together, and no part comes along an axis of the piece. */
function directionOf(into: Point): PieceDirection | undefined {
  const axis = into.findIndex((c) => Math.abs(c) > 0.999);
  if (axis < 0) return undefined;
  return `${into[axis]! > 0 ? '+' : '-'}${'xyz'[axis] as 'x' | 'y' | 'z'}`;
}

function mouthsOf(member: Member, kind: Way['kind'], filled: ReadonlySet<Way>): Mouth[] {
  const frame = frameOf(member);
  return member.piece.ways
    .filter((w) => w.kind === kind && !filled.has(w))
    .map((way) => ({
      way,
      at: fromMember(frame, way.at),
      into: fromMember(frame, way.along, true),
      ...(way.square ? { square: fromMember(frame, way.square, true) } : {}),
    }));
}

/** True for mouths that look at each other, on faces that touch. */
export function faces(a: Mouth, b: Mouth): boolean {
  const dot = a.into.reduce((sum, c, k) => sum + c * b.into[k]!, 0);
  const apart = minus(a.at, b.at).reduce((sum, c, k) => sum + c * a.into[k]!, 0);
  return dot < -0.999 && Math.abs(apart) <= OFF_LINE;
}

/** How far two mouths lie beside each other. */
export function beside(a: Mouth, b: Mouth): number {
  const d = minus(a.at, b.at);
  const along = d.reduce((sum, c, k) => sum + c * a.into[k]!, 0);
  return Math.hypot(...d.map((c, k) => c - along * a.into[k]!));
}

function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function round(x: number): number {
  return Math.round(x * 10) / 10;
}
