import { toMm } from '../measure/index.ts';
import type { Point } from '../solid/index.ts';
import { driverMeets } from './access/driver.ts';
import { type Assembly, frameOf, fromMember, type Member, planesOf } from './assembly.ts';
import type { DryFitFault } from './report.ts';
import type { Way } from './virtual-piece.ts';

/** A screw that has been driven, in the assembly's frame, mm. */
export interface DrivenScrew {
  readonly parts: readonly [string, string];
  readonly head: Point;
  readonly tip: Point;
  readonly radius: number;
  /** The holes it goes through or into. */
  readonly fills: readonly Way[];
}

/** What a card says of a joint's screws. */
export interface ScrewCard {
  readonly part: string;
  readonly mate: string;
  readonly by: 'pockets' | 'holes';
  /** What lies between, which they pass through holes of its own. */
  readonly over?: string;
  /** Set where other screws pass holes beside its own. */
  readonly only?: 'countersunk';
  readonly side: string;
  readonly lengthMm: number;
  readonly diameterMm: number;
  readonly count: number;
}

/**
 * Least wood before the far face, and between screws, mm. Setting out leaves 3 mm before the face (common practice);
 * what is rounded on the cards may use up one of them.
 */
export const FAR_FACE = 2;
const WALL = 1;
/** How far a hole may be off its pilot: what marking out with a rule leaves (common practice). */
export const OFF_PILOT = 1.5;
/** How much wider than its hole's nominal size a screw's thread may be, mm: pocket bits are made for several gauges. */
const THREAD = 0.5;

/** What stands round a joint when its screws are driven, and the card by which each came. */
export interface Around {
  readonly members: readonly Member[];
  readonly cameBy: (mark: string) => string | undefined;
}

/** Drives the screws of one joint through the holes that were really bored, and tells what goes wrong. */
export function driveScrews(
  assembly: Assembly,
  card: ScrewCard,
  driven: readonly DrivenScrew[],
  around: Around = { members: assembly.members, cameBy: () => undefined },
): { readonly screws: readonly DrivenScrew[]; readonly faults: readonly Omit<DryFitFault, 'operation'>[] } {
  const faults: Omit<DryFitFault, 'operation'>[] = [];
  const part = assembly.members.find((m) => m.mark === card.part);
  const mate = assembly.members.find((m) => m.mark === card.mate);
  if (!part || !mate) {
    const on = part ? card.mate : card.part;
    return {
      screws: [],
      faults: [{ code: 'workpiece-missing', on, sentence: `${on} is not there to be screwed.` }],
    };
  }
  const frame = frameOf(part);
  const screws: DrivenScrew[] = [];
  for (const way of part.piece.ways) {
    if (
      way.kind !== (card.by === 'pockets' ? 'pocket' : 'hole') ||
      way.side !== card.side ||
      way.depth !== undefined ||
      (card.only === 'countersunk' && !way.sunk)
    )
      continue;
    const at = fromMember(frame, way.at);
    const along = fromMember(frame, way.along, true);
    const go = (from: number): Point => [
      at[0] + along[0] * from,
      at[1] + along[1] * from,
      at[2] + along[2] * from,
    ];
    const head = go(-way.seat);
    const tip = go(card.lengthMm - way.seat);
    // A hole beside this mate leads to the part that its screw ends in: a panel in a dado lies close to others' screws.
    const elsewhere = (m: Member) => m !== mate && m !== part && inside(m, tip, 0);
    if (card.by === 'holes' && !inside(mate, tip, 0) && assembly.members.some(elsewhere)) continue;
    // Only those that point at this mate: a back has holes for several.
    if (!inside(mate, tip, -card.diameterMm)) {
      if (card.by === 'holes') continue;
      faults.push({
        code: inLine(mate, at, along) ? 'screw-comes-through' : 'screw-misses',
        on: card.part,
        sentence: `A screw from ${card.part} ${inLine(mate, at, along) ? `comes out of the far side of ${card.mate}` : `does not meet ${card.mate}`}.`,
      });
      continue;
    }
    if (!inside(mate, tip, FAR_FACE - 1e-6))
      faults.push({
        code: 'screw-comes-through',
        on: card.part,
        sentence: `A screw from ${card.part} ends less than ${FAR_FACE} mm under the far face of ${card.mate}.`,
      });
    if (way.diameter < card.diameterMm - THREAD)
      faults.push({
        code: 'no-hole',
        on: card.part,
        sentence: `A screw is thicker than its hole in ${card.part}.`,
      });
    const pilot = card.by === 'holes' ? pilotOf(mate, at, along, card.diameterMm) : undefined;
    const over = assembly.members.find((m) => m.mark === card.over);
    const passed = over && passedHole(over, at, along, card.diameterMm);
    if (card.over !== undefined && !passed)
      faults.push({
        code: 'no-hole',
        on: card.over,
        sentence: `A screw from ${card.part} into ${card.mate} finds no hole to pass ${card.over} by.`,
      });
    const screw: DrivenScrew = {
      parts: [card.part, card.mate],
      head,
      tip,
      radius: card.diameterMm / 2,
      fills: [way, ...(pilot ? [pilot] : []), ...(passed ? [passed] : [])],
    };
    if (card.by === 'holes' && !pilot)
      faults.push({
        code: 'no-hole',
        on: card.mate,
        sentence: `A screw through ${card.part} finds no pilot hole in ${card.mate}.`,
      });
    const meets = driverMeets(around.members, part, head, along);
    if (meets !== undefined)
      faults.push({
        code: 'in-the-way',
        on: card.part,
        sentence: `No driver gets behind a screw from ${card.part} into ${card.mate}: ${standsThere(meets, card, around)}`,
      });
    if (driven.some((d) => meet(d, screw)) || screws.some((d) => meet(d, screw)))
      faults.push({ code: 'screws-meet', on: card.mate, sentence: `Two screws meet inside ${card.mate}.` });
    screws.push(screw);
  }
  if (screws.length !== card.count && faults.length === 0)
    faults.push({
      code: 'no-hole',
      on: card.part,
      sentence: `${card.count} screws are to go from ${card.part} into ${card.mate}, but ${screws.length} holes lead there.`,
    });
  return { screws, faults };
}

/** What stands in a driver's way, and which card must come later for it. */
function standsThere(mark: string, card: Pick<ScrewCard, 'part' | 'mate'>, around: Around): string {
  if (mark === card.part || mark === card.mate)
    return `${mark} itself leaves no room for one, in any order of work.`;
  const by = around.cameBy(mark);
  return `${mark} stands there.${by === undefined ? '' : ` It must be driven before “${by}”.`}`;
}

/** True when a point lies inside a member's box by at least `margin` mm. */
export function inside(member: Member, p: Point, margin: number): boolean {
  const planes = planesOf(member);
  return (['x', 'y', 'z'] as const).every(
    (a, i) => p[i]! >= toMm(planes[`-${a}`]) + margin && p[i]! <= toMm(planes[`+${a}`]) - margin,
  );
}

/** True when the way, gone on with, passes through the member. */
function inLine(member: Member, at: Point, along: Point): boolean {
  for (let d = 0; d < 200; d += 2)
    if (inside(member, [at[0] + along[0] * d, at[1] + along[1] * d, at[2] + along[2] * d], 0)) return true;
  return false;
}

/** The blind hole in the mate that a screw along this way would find: narrower than the screw, and in its line. */
function pilotOf(mate: Member, at: Point, along: Point, screwMm: number): Way | undefined {
  return inScrewLine(mate, at, along, (w) => w.depth !== undefined && w.diameter < screwMm);
}

/** The plain hole right through what lies between, wide enough for the screw, and in its line. */
function passedHole(over: Member, at: Point, along: Point, screwMm: number): Way | undefined {
  return inScrewLine(
    over,
    at,
    along,
    (w) => w.depth === undefined && !w.sunk && w.diameter >= screwMm - THREAD,
  );
}

function inScrewLine(member: Member, at: Point, along: Point, suits: (way: Way) => boolean): Way | undefined {
  const frame = frameOf(member);
  return member.piece.ways.find((w) => {
    if (w.kind !== 'hole' || !suits(w)) return false;
    const mouth = fromMember(frame, w.at);
    const into = fromMember(frame, w.along, true);
    const turn = into[0] * along[0] + into[1] * along[1] + into[2] * along[2];
    // One right through may have been bored from either face.
    const same = (w.depth === undefined ? Math.abs(turn) : turn) > 0.999;
    // How far the pilot's mouth lies beside the screw's axis.
    const d = [mouth[0] - at[0], mouth[1] - at[1], mouth[2] - at[2]];
    const on = d[0]! * along[0] + d[1]! * along[1] + d[2]! * along[2];
    const beside = Math.hypot(d[0]! - on * along[0], d[1]! - on * along[1], d[2]! - on * along[2]);
    return same && beside <= OFF_PILOT;
  });
}

export function meet(a: DrivenScrew, b: DrivenScrew): boolean {
  if (!a.parts.some((p) => b.parts.includes(p))) return false;
  const near = a.radius + b.radius + WALL;
  return !areApart(a, b, near) && distance(a.head, a.tip, b.head, b.tip) < near;
}

/** True where the boxes round two screws' axes are further apart than so much. */
function areApart(a: DrivenScrew, b: DrivenScrew, much: number): boolean {
  for (let k = 0; k < 3; k++)
    if (
      Math.min(a.head[k]!, a.tip[k]!) - Math.max(b.head[k]!, b.tip[k]!) >= much ||
      Math.min(b.head[k]!, b.tip[k]!) - Math.max(a.head[k]!, a.tip[k]!) >= much
    )
      return true;
  return false;
}

/** Least distance between two segments, by sampling one and projecting on the other: screws are short. */
function distance(a0: Point, a1: Point, b0: Point, b1: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 64; i++) {
    const s = i / 64;
    const p: Point = [a0[0] + (a1[0] - a0[0]) * s, a0[1] + (a1[1] - a0[1]) * s, a0[2] + (a1[2] - a0[2]) * s];
    least = Math.min(least, toSegment(p, b0, b1));
  }
  return least;
}

function toSegment(p: Point, a: Point, b: Point): number {
  const v = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const w = [p[0] - a[0], p[1] - a[1], p[2] - a[2]] as const;
  const t = Math.min(
    1,
    Math.max(0, (v[0] * w[0] + v[1] * w[1] + v[2] * w[2]) / (v[0] ** 2 + v[1] ** 2 + v[2] ** 2)),
  );
  return Math.hypot(w[0] - t * v[0], w[1] - t * v[1], w[2] - t * v[2]);
}
