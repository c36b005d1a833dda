import { stackOfFit } from '../checks/index.ts';
import { type Report, toMm } from '../measure/index.ts';
import type { Plan } from './plan.ts';

/** Every fit with its loop, and what its gap may come to; as part of `plan --json`. */
export function fitsReport({ job, setOut }: Plan): readonly Report[] {
  return setOut.fits.map((f) => {
    const { worst, likely } = stackOfFit(job, setOut.ledger, f);
    const range = ({ least, greatest }: typeof worst) => ({ least: toMm(least), greatest: toMm(greatest) });
    return {
      id: f.id,
      kind: f.kind,
      name: f.name,
      gap_mm: f.gap,
      printed_mm: f.printed,
      least_mm: f.least,
      most_mm: f.most,
      worst: range(worst),
      likely: range(likely),
      loop: f.loop.map((m) => ({
        name: m.name,
        length_mm: m.length,
        printed_mm: m.printed,
        sign: m.sign,
        times: m.times,
        made: m.made,
        part: m.part,
      })),
      to_fit: f.toFit,
    };
  });
}
