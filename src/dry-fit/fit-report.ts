import type { Report } from '../measure/index.ts';
import type { DryFitReport } from './report.ts';

/** What came of a dry fit as a report, documented as `dry-fit --json`. */
export function fitReport(of: DryFitReport): Report {
  return {
    fits: of.fits,
    ran: of.ran,
    out_of: of.outOf,
    faults: of.faults,
    parts: of.parts.map((p) => ({
      mark: p.mark,
      missing_mm3: p.missing,
      surplus_mm3: p.surplus,
      off: p.off,
    })),
    unused: of.unused,
  };
}
