import type { Assembly } from './assembly.ts';
import type { DryFitFault } from './report.ts';
import type { DrivenScrew } from './screws.ts';
import type { Way } from './virtual-piece.ts';

/** What a card says of the plugs in a side. */
export interface PlugCard {
  readonly part: string;
  readonly side: string;
  readonly diameterMm: number;
  readonly count: number;
}

/** A plug and its hole are of one size, but for what is printed in the other system, mm. */
const SAME = 0.1;

/** Glues plugs over the heads of screws that are in already. */
export function setPlugs(
  assembly: Assembly,
  card: PlugCard,
  screws: readonly DrivenScrew[],
  covered: ReadonlySet<Way>,
): { readonly covers: readonly Way[]; readonly faults: readonly Omit<DryFitFault, 'operation'>[] } {
  const part = assembly.members.find((m) => m.mark === card.part);
  const fault = (code: DryFitFault['code'], sentence: string) => ({ code, on: card.part, sentence });
  if (!part) return { covers: [], faults: [fault('workpiece-missing', `${card.part} is not there.`)] };
  const filled = new Set(screws.flatMap((s) => s.fills));
  const faults: Omit<DryFitFault, 'operation'>[] = [];
  const covers = part.piece.ways.filter((way) => {
    if (way.side !== card.side || way.plugged === undefined || covered.has(way)) return false;
    if (Math.abs(way.plugged - card.diameterMm) > SAME) return false;
    if (!filled.has(way))
      faults.push(fault('no-screw', `A plug in ${card.part} would close a hole without a screw.`));
    return true;
  });
  if (covers.length !== card.count)
    faults.push(
      fault(
        'no-plug',
        `${card.count} plugs are to go into ${card.part}, which has ${covers.length} holes for them there.`,
      ),
    );
  return { covers, faults };
}
