import { sagLimit } from '../materials/index.ts';
import type { Snag } from '../snag/index.ts';
import type { Bending, LoadedSurface } from './loaded-surface.ts';

/** What a surface is judged by: a share of its span, reached at once or after years. */
export interface Measure {
  readonly code: string;
  readonly level: Snag['level'];
  readonly limit: NonNullable<ReturnType<typeof sagLimit>>;
  readonly sag: (b: Bending) => number;
  /** What the sag at once is multiplied with. */
  readonly factor: (b: Bending) => number;
}

/** The standard's limit first; what keeps to it may still be seen. */
export const MEASURES: readonly Measure[] = [
  {
    code: 'sag.beyond-limit',
    level: 'stop',
    limit: sagLimit('standard')!,
    sag: (b) => b.sagMm,
    factor: () => 1,
  },
  {
    code: 'sag.seen',
    level: 'mind',
    limit: sagLimit('eye')!,
    sag: (b) => b.finalMm,
    factor: (b) => b.creep,
  },
];

/** Whether a surface keeps to a measure. Sags are rounded first, so that every machine draws the line in the same place. */
export function keepsTo(measure: Measure, s: LoadedSurface, bending: Bending): boolean {
  return micrometres(measure.sag(bending)) <= micrometres(s.spanMm / measure.limit.over);
}

function micrometres(mm: number): number {
  return Math.round(mm * 1000);
}
