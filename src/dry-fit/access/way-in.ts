import type { PieceDirection } from '../../build/index.ts';
import { fromMm } from '../../measure/index.ts';
import type { Solids } from '../../solid/index.ts';
import { axisOf, type Member } from '../assembly.ts';
import { inTheWay, runInto } from '../in-the-way.ts';
import { boxOf } from './round-bar.ts';

/** Why something can't come straight to its place: from where least is in its way, and what that is. */
export interface NoWayIn {
  readonly from: PieceDirection;
  readonly blockers: readonly string[];
}

const FROM: readonly PieceDirection[] = ['-y', '+y', '+z', '+x', '-x', '-z'];

/** Boxes may overlap by so much and still pass, mm: what rounding on cards leaves, and a push takes up. */
const PASSES = 0.75;

/** Shares of the way past a part at which the wood itself is looked at. */
const LOOKS = [0.02, 0.2, 0.4, 0.6, 0.8, 0.98];

/**
 * Whether what stands at its place now could have come there in a straight line from outside, past what stands there
 * already; undefined where it could. Where boxes are clear of one another that is enough; else the wood is looked at.
 */
export function noWayIn(
  solids: Solids,
  there: readonly Member[],
  came: readonly Member[],
  from: readonly PieceDirection[] = FROM,
): NoWayIn | undefined {
  const met = from
    .map((d) => ({ d, near: nearWay(there, came, d) }))
    .sort((a, b) => a.near.length - b.near.length);
  let least: NoWayIn | undefined;
  for (const { d, near } of met) {
    const blockers = near.filter(([a, b]) => isBlocked(solids, a, b, d)).map(([, b]) => b.mark);
    if (blockers.length === 0) return undefined;
    if (!least || blockers.length < least.blockers.length)
      least = { from: d, blockers: [...new Set(blockers)] };
  }
  return least;
}

/**
 * The same for what comes straight to so far below its place, in ticks, and is then hooked up into it; or lies lower there while what
 * hooks over it comes down.
 */
export function noWayToHook(
  solids: Solids,
  there: readonly Member[],
  came: readonly Member[],
  lift: number,
): NoWayIn | undefined {
  const lowered = (by: number) =>
    came.map((m) => ({ ...m, origin: [m.origin[0], m.origin[1], m.origin[2] - by] as const }));
  const met = LOOKS.flatMap((share) =>
    inTheWay(solids, { members: there }, { members: lowered(Math.round(lift * share)) }),
  );
  if (met.length > 0) return { from: '-z', blockers: [...new Set(met.map((c) => c.there))] };
  return noWayIn(solids, there, lowered(lift));
}

/** Those that come and those that stand there whose boxes would meet on the way. */
function nearWay(
  there: readonly Member[],
  came: readonly Member[],
  d: PieceDirection,
): readonly (readonly [came: Member, there: Member])[] {
  const { axis, sign } = axisOf(d);
  const boxes = there.map((b) => [b, boxOf(b)] as const);
  return came.flatMap((a) => {
    const own = boxOf(a);
    return boxes.flatMap(([b, box]) => {
      const beside = [0, 1, 2].some(
        (k) =>
          k !== axis && Math.min(own.max[k]!, box.max[k]!) - Math.max(own.min[k]!, box.min[k]!) <= PASSES,
      );
      const ahead = sign > 0 ? box.max[axis]! - own.min[axis]! : own.max[axis]! - box.min[axis]!;
      return beside || ahead <= PASSES ? [] : [[a, b] as const];
    });
  });
}

/** Whether the wood of a part that comes meets that of one there, somewhere on the way past it. */
function isBlocked(solids: Solids, a: Member, b: Member, d: PieceDirection): boolean {
  const { axis, sign } = axisOf(d);
  const [own, box] = [boxOf(a), boxOf(b)];
  const [first, last] =
    sign > 0
      ? [box.min[axis]! - own.max[axis]!, box.max[axis]! - own.min[axis]!]
      : [own.min[axis]! - box.max[axis]!, own.max[axis]! - box.min[axis]!];
  const begins = Math.max(0, first);
  return LOOKS.some((share) => {
    const by = Math.round(fromMm(begins + (last - begins) * share)) * sign;
    const origin = [...a.origin] as [number, number, number];
    origin[axis] += by;
    return runInto(solids, { ...a, origin }, b);
  });
}

const WORDS: Record<PieceDirection, string> = {
  '+x': 'from the right',
  '-x': 'from the left',
  '+y': 'from behind',
  '-y': 'from the front',
  '+z': 'from above',
  '-z': 'from below',
};

/**
 * Before which of those that stand there, in the order they came, the newcomer must come: the last without which, and without all
 * behind it, there is a way. Undefined where there is none even with nothing there.
 */
export function mustComeBefore(
  there: readonly Member[],
  isBlocked: (there: readonly Member[]) => boolean,
): string | undefined {
  for (let n = there.length - 1; n >= 0; n--) if (!isBlocked(there.slice(0, n))) return there[n]!.mark;
  return undefined;
}

/** Says what stands in the way, and before which card the newcomer must come. */
export function wayInSentence(what: string, { from, blockers }: NoWayIn, card: string | undefined): string {
  const stand = blockers.length === 1 ? 'stands' : 'stand';
  const before = card === undefined ? '' : ` It must come before “${card}”.`;
  return `${what} has no straight way to its place: ${WORDS[from]}, where least is before it, ${blockers.join(' and ')} ${stand} in the way.${before}`;
}
