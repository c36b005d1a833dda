import { memberError } from '../checks/index.ts';
import { type VirtualFit, type VirtualOutcome, virtualBuilds } from '../dry-fit/index.ts';
import { Chance, type Report, ticks, toMm } from '../measure/index.ts';
import type { Plan } from './plan.ts';

const BUILDS = 10_000;
const SEED = 1;
/** Dimensions named as those that matter most. */
const MOST_NAMED = 8;

/** Builds the piece ten thousand times with the errors of this shop's tools and stock. Same plan, same outcome. */
export function toleranceOf({ job, setOut }: Pick<Plan, 'job' | 'setOut'>): VirtualOutcome {
  const { ledger } = setOut;
  const fits = setOut.fits.map((fit): VirtualFit => {
    const loop = fit.loop.map((m, i) => {
      const { plus, minus, sharedBy } = memberError(job, ledger, fit, m);
      return {
        name: m.name,
        // A part is cut once, whichever fits it stands in.
        error: sharedBy ?? (m.part === undefined ? `${fit.id} ${i}` : `${m.part} ${m.name}`),
        weight: m.sign * (m.times ?? 1),
        limit: (plus + minus) / 2,
        offset: (plus - minus) / 2,
      };
    });
    const last = fit.loop.find((m) => m.part === fit.toFit && m.made.by === 'tool');
    const cutting = last && memberError(job, ledger, fit, last);
    return {
      id: fit.id,
      name: fit.name,
      gap: ledger.ticks(fit.printed),
      least: ledger.ticks(fit.least),
      ...(fit.most === undefined ? {} : { most: ledger.ticks(fit.most) }),
      loop,
      ...(cutting ? { cutToFit: (cutting.plus + cutting.minus) / 2 } : {}),
    };
  });
  return virtualBuilds(fits, BUILDS, new Chance(SEED));
}

/** The virtual builds as a report, documented under `dry-fit --json`. Lengths in mm: they are drawn by chance. */
export function toleranceReport(of: VirtualOutcome): Report {
  const mm = ([least, greatest]: readonly [number, number]) => ({
    least: toMm(ticks(least)),
    greatest: toMm(ticks(greatest)),
  });
  return {
    builds: of.builds,
    clean: of.clean,
    clean_cut_to_fit: of.cleanCutToFit,
    matters: of.matters.slice(0, MOST_NAMED).map((m) => m.name),
    fits: of.fits.map((f) => ({
      id: f.id,
      name: f.name,
      worst: mm(f.worst),
      likely: mm(f.likely),
      sure: f.sure,
      sure_cut_to_fit: f.sureCutToFit,
      matters: f.matters,
    })),
  };
}
