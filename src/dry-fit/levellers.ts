import { type Assembly, frameOf, fromMember } from './assembly.ts';
import type { DryFitFault } from './report.ts';
import type { Way } from './virtual-piece.ts';

/** What a card says of levellers. */
export interface LevellerCard {
  readonly part: string;
  readonly count: number;
  readonly diameterMm: number;
  readonly deepMm: number;
}

type Fault = Omit<DryFitFault, 'operation'>;

/** What a hole for a sleeve may be off its size, mm: bits come in steps, and depths are set by a flag of tape. */
const OFF = 0.6;
/** How much deeper a hole may be, mm: a drill’s step more, so that the sleeve lies level (from memory). */
const DEEPER = 1;

/** Drives the sleeves of levellers into the holes that were really bored: as many, as wide, as deep, and open to the floor. */
export function letInLevellers(
  assembly: Assembly,
  card: LevellerCard,
  filled: ReadonlySet<Way>,
): { readonly fills: readonly Way[]; readonly faults: readonly Fault[] } {
  const member = assembly.members.find((m) => m.mark === card.part);
  if (!member)
    return {
      fills: [],
      faults: [{ code: 'workpiece-missing', on: card.part, sentence: `${card.part} is not there.` }],
    };
  const frame = frameOf(member);
  const holes = member.piece.ways.filter(
    (w) =>
      w.kind === 'hole' &&
      !filled.has(w) &&
      w.depth !== undefined &&
      Math.abs(w.diameter - card.diameterMm) <= OFF &&
      w.depth >= card.deepMm - OFF &&
      w.depth <= card.deepMm + DEEPER &&
      fromMember(frame, w.along, true)[2] > 0.99,
  );
  const faults: Fault[] = [];
  if (holes.length !== card.count)
    faults.push({
      code: 'no-hole',
      on: card.part,
      sentence: `${card.count} levellers go into ${card.part}, and it has ${holes.length} holes for them from below.`,
    });
  return { fills: holes, faults };
}
