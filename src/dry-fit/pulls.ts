import type { Act } from '../build/index.ts';
import { toMm } from '../measure/index.ts';
import type { Point } from '../solid/index.ts';
import { type Assembly, frameOf, fromMember, type Member } from './assembly.ts';
import type { DryFitFault } from './report.ts';
import { type DrivenScrew, meet, OFF_PILOT } from './screws.ts';
import type { ReadCard } from './tool-work.ts';
import type { Way } from './virtual-piece.ts';

/** What a card says of a bought pull. */
export interface PullCard {
  readonly part: string;
  readonly behind?: string | undefined;
  readonly lengthMm: number;
  readonly diameterMm: number;
  readonly count: number;
  readonly holesMm?: number | undefined;
  readonly deepMm: number;
}

/** The same from its act. */
export function pullCard(act: Extract<Act, { act: 'pull' }>, read: ReadCard): PullCard {
  const mm = (t: (typeof act)['length']) => toMm(read(t));
  return {
    part: act.workpiece,
    behind: act.behind,
    lengthMm: mm(act.length),
    diameterMm: mm(act.diameter),
    count: act.count,
    holesMm: act.holes === undefined ? undefined : mm(act.holes),
    deepMm: mm(act.deep),
  };
}

type Fault = Omit<DryFitFault, 'operation'>;

/** What the holes of a pull may be off from those in the wood, mm: their own play and a step of the rule. */
const OFF = 1;

/** A hole right through a board as it stands, mm. */
interface Through {
  readonly mouth: Point;
  readonly along: Point;
  readonly way: Way;
}

/**
 * Puts a pull before a front, its screws through the holes that were really bored: as many as it has, as far apart, in line
 * with those of the board behind, and screws that hold in its thread without touching its end.
 */
export function screwOnPull(
  assembly: Assembly,
  card: PullCard,
  driven: readonly DrivenScrew[],
): { readonly screws: readonly DrivenScrew[]; readonly faults: readonly Fault[] } {
  const part = assembly.members.find((m) => m.mark === card.part);
  const behind = assembly.members.find((m) => m.mark === card.behind);
  if (!part || (card.behind !== undefined && !behind)) {
    const on = part ? card.behind! : card.part;
    return {
      screws: [],
      faults: [{ code: 'workpiece-missing', on, sentence: `${on} is not there for a pull.` }],
    };
  }
  const faults: Fault[] = [];
  const filled = new Set(driven.flatMap((s) => s.fills));
  const holes = throughIn(part).filter((h) => !filled.has(h.way) && h.way.diameter >= card.diameterMm);
  if (holes.length !== card.count)
    faults.push({
      code: 'no-hole',
      on: card.part,
      sentence: `The card has ${card.count} screws for pulls, and ${card.part} ${holes.length} holes for them.`,
    });
  if (card.holesMm !== undefined)
    for (const found of wrongPairs(holes, card.holesMm))
      faults.push({
        code: 'no-hole',
        on: card.part,
        sentence: `The holes for the pull in ${card.part} are ${round(found)} mm apart, its own ${round(card.holesMm)} mm.`,
      });
  const wood = thicknessOf(part) + (behind ? thicknessOf(behind) : 0);
  const reach = card.lengthMm - wood;
  if (reach < card.diameterMm * 0.9 || reach > card.deepMm)
    faults.push({
      code: reach > card.deepMm ? 'screw-comes-through' : 'screw-misses',
      on: card.part,
      sentence:
        reach > card.deepMm
          ? `The screws of the pull on ${card.part} are ${round(reach - card.deepMm)} mm too long for its thread.`
          : `The screws of the pull on ${card.part} hardly reach its thread: ${round(reach)} mm.`,
    });
  const screws = holes.map((h): DrivenScrew => {
    const inLine = behind && throughIn(behind).find((o) => beside(h, o) <= OFF_PILOT);
    if (behind && !inLine)
      faults.push({
        code: 'no-hole',
        on: behind.mark,
        sentence: `A screw of the pull on ${card.part} finds no hole in ${behind.mark}.`,
      });
    return {
      parts: [card.part, behind?.mark ?? card.part],
      head: on(h, wood),
      tip: h.mouth,
      radius: card.diameterMm / 2,
      fills: inLine ? [h.way, inLine.way] : [h.way],
    };
  });
  for (const s of screws)
    if (driven.some((d) => meet(d, s)))
      faults.push({
        code: 'screws-meet',
        on: card.part,
        sentence: `A screw of the pull meets another in ${card.part}.`,
      });
  return { screws, faults };
}

/** Holes two by two, each with the one that comes nearest to a pull's own distance: the distances that are not that. */
function wrongPairs(holes: readonly Through[], apart: number): readonly number[] {
  const left = [...holes].sort((a, b) => a.mouth[0] - b.mouth[0] || a.mouth[2] - b.mouth[2]);
  const wrong: number[] = [];
  while (left.length > 1) {
    const one = left.shift()!;
    const far = left.map((h) => Math.hypot(...one.mouth.map((x, k) => x - h.mouth[k]!)));
    const best = far.reduce((b, d, i) => (Math.abs(d - apart) < Math.abs(far[b]! - apart) ? i : b), 0);
    left.splice(best, 1);
    if (Math.abs(far[best]! - apart) > OFF) wrong.push(far[best]!);
  }
  return wrong;
}

function throughIn(member: Member): readonly Through[] {
  const frame = frameOf(member);
  return member.piece.ways.flatMap((way) =>
    way.kind === 'hole' && way.depth === undefined
      ? [{ way, mouth: fromMember(frame, way.at), along: fromMember(frame, way.along, true) }]
      : [],
  );
}

function thicknessOf({ piece }: Member): number {
  return toMm(piece.size[2]);
}

/** So far along a hole from its mouth. */
function on({ mouth, along }: Through, distance: number): Point {
  return [mouth[0] + along[0] * distance, mouth[1] + along[1] * distance, mouth[2] + along[2] * distance];
}

/** How far one hole's mouth lies beside the other's axis. */
function beside(hole: Through, other: Through): number {
  const d = other.mouth.map((x, k) => x - hole.mouth[k]!);
  const off = d.reduce((sum, x, k) => sum + x * hole.along[k]!, 0);
  return Math.hypot(...d.map((x, k) => x - off * hole.along[k]!));
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10;
}
