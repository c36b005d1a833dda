import type { Point } from '../solid/index.ts';
import { type Hollow, SLIVER } from './hollows.ts';

/**
 * A hollow (a hole, a rabbet) is the drawn one when its middle is this near, its volume within this share, and its
 * sides within this much; the longest may differ as a part's length may.
 */
const HOLLOW_PLACE = 1.5;
const HOLLOW_SHARE = 0.2;
/** Channels that cross are one hollow: half a step on the width of one shifts its balance by this share of its length. */
const HOLLOW_BALANCE = 0.01;
/** With slopes at its ends, a groove of another depth shifts the balance of all by this share. */
const CUTS_BALANCE = 0.03;
const HOLLOW_SIDE = 0.6;

/** What found no partner, and of all pairs together how much wider and narrower the made ones are, mm³. */
export interface PairedHollows {
  readonly lacking: readonly Hollow[];
  readonly extra: readonly Hollow[];
  readonly wider: number;
  readonly narrower: number;
}

/**
 * Pairs the hollows of the made part with those of the drawn one. What finds no partner is a turned or mirrored
 * part, a missing hole, or a cut along the wrong edge; of pairs, how much wider or narrower the made ones are.
 * @param longest what the part's own sizes may be off by, mm
 */
export function pairHollows(
  made: readonly Hollow[],
  drawn: readonly Hollow[],
  longest: number,
): PairedHollows {
  const lacking: Hollow[] = [];
  const extra = [...made];
  let wider = 0;
  let narrower = 0;
  for (const h of drawn) {
    const i = extra.findIndex((m) => alike(m, h, longest) && sameCuts(m, h, longest));
    if (i < 0) {
      lacking.push(h);
      continue;
    }
    const [m] = extra.splice(i, 1);
    wider += Math.max(0, m!.volume - h.volume);
    narrower += Math.max(0, h.volume - m!.volume);
  }
  const counts = (h: Hollow) => h.volume > SLIVER;
  const left = { lacking: lacking.filter(counts), extra: extra.filter(counts) };
  return { ...(oneByOne(left, longest) ? { lacking: [], extra: [] } : left), wider, narrower };
}

/**
 * Cuts from both faces that meet in the middle of a board run into one another, or just don’t, by what each is rounded by. What
 * is nothing but straight cuts is held against the drawing cut by cut then.
 */
function oneByOne({ lacking, extra }: Pick<PairedHollows, 'lacking' | 'extra'>, longest: number): boolean {
  if (lacking.length === extra.length || ![...lacking, ...extra].every((h) => h.straight)) return false;
  const cuts = (of: readonly Hollow[]) => of.flatMap((h) => h.cuts ?? []);
  return paired(cuts(extra), cuts(lacking), longest);
}

function distance(p: Point, q: Point): number {
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
}

function alike(a: Hollow, b: Hollow, longest: number): boolean {
  const place = Math.max(HOLLOW_PLACE, longest);
  // Where each channel is told by itself, small differences of all of them add up in the whole.
  const told = a.cuts !== undefined && b.cuts !== undefined;
  const balance = (told ? CUTS_BALANCE : HOLLOW_BALANCE) * Math.max(...b.sides);
  return (
    liesAlike(a, b, longest, told ? HOLLOW_PLACE : HOLLOW_SIDE) &&
    distance(a.centre, b.centre) <= Math.max(place, balance) &&
    Math.abs(a.volume - b.volume) <= HOLLOW_SHARE * b.volume
  );
}

/** Whether two boxes lie in the same place, as large as one another. */
function liesAlike(
  a: Pick<Hollow, 'middle' | 'sides'>,
  b: Pick<Hollow, 'middle' | 'sides'>,
  longest: number,
  side = HOLLOW_SIDE,
): boolean {
  const most = Math.max(...b.sides);
  return (
    // What is cut at the far end of a part comes as far as the part is long.
    distance(a.middle, b.middle) <= Math.max(HOLLOW_PLACE, longest) &&
    a.sides.every(
      (s, i) => Math.abs(s - b.sides[i]!) <= (b.sides[i] === most ? Math.max(longest, side) : side),
    )
  );
}

/** Whether each single cut of a hollow is one of the other’s. */
function sameCuts(made: Hollow, drawn: Hollow, longest: number): boolean {
  // A slot may be a single body, or a channel with round ends.
  if (!made.cuts || !drawn.cuts) return true;
  return paired(made.cuts, drawn.cuts, longest);
}

type Cuts = NonNullable<Hollow['cuts']>;

/** Whether cuts can be paired, each with one that lies alike, and none is left. */
function paired(made: Cuts, drawn: Cuts, longest: number): boolean {
  const left = [...made];
  return (
    drawn.every((cut) => {
      const i = left.findIndex((m) => liesAlike(m, cut, longest));
      if (i >= 0) left.splice(i, 1);
      return i >= 0;
    }) && left.length === 0
  );
}
