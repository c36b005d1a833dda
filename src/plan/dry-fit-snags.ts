import type { Breakdown } from '../breakdown/index.ts';
import { madeOff } from '../checks/index.ts';
import type { DryFitReport } from '../dry-fit/index.ts';
import type { JobDocument } from '../job/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';

/**
 * What the dry fit found, as snags. A piece that can't be set out in full, lacks stock for a part, or has parts that were made
 * to other sizes than drawn is told there, not here again in all that follows from it.
 * @param checked what the checks found
 */
export function dryFitSnags(
  job: JobDocument,
  report: DryFitReport,
  drawn: SetOut,
  breakdown: Breakdown,
  checked: readonly Snag[],
): readonly Snag[] {
  if (drawn.snags.some((s) => s.level === 'stop') || breakdown.missing.length > 0) return [];
  if (report.faults.length === 0 || checked.some((s) => s.code === 'fits.lost')) return [];
  const off = madeOff(job, drawn);
  if (off.length > 0) return off;
  return report.faults.map((f): Snag => {
    const part = drawn.parts.find((p) => p.mark === f.on);
    return {
      code: `dry-fit.${f.code}`,
      level: 'stop',
      where: {
        ...(f.operation === undefined ? {} : { operation: f.operation }),
        ...(part ? { part: part.id, record: part.record } : {}),
      },
      sentence: f.sentence,
      rule: {
        says: 'the cards, executed as printed, must give the piece as drawn',
        source: 'the dry fit',
        confirmed: true,
      },
      cures: [
        { says: 'Look at that card and the part it names; change the design or the tool it is made with.' },
      ],
    };
  });
}
