import {
  type Ledger,
  type LengthFormat,
  printLength,
  printSetting,
  type Ticks,
  type Traced,
} from '../measure/index.ts';

/** How the book writes lengths: in the shop's format, with the unit where it stands alone in a sentence. */
export interface Lengths {
  /** `590 mm`, `23 1/4"`: for sentences. */
  readonly inWords: (t: Traced) => string;
  /** `590`, `23 1/4"`: for drawings and tables that name the unit once. */
  readonly bare: (t: Traced) => string;
  /** As fine as it takes, the unit left out: for what was measured. */
  readonly measured: (t: Traced) => string;
  readonly bareTicks: (t: Ticks) => string;
  /** `mm` or `inches`. */
  readonly unit: string;
}

/**
 * Lengths of a ledger in a format. In sentences a length is as fine as it takes for the printed number to be the one
 * that is meant. In drawings it is rounded to the format, or shown by the next finer step where that is exact (a
 * measured 17.6 mm among halves of millimetres).
 */
export function lengthsOf(ledger: Ledger, format: LengthFormat): Lengths {
  const finer: LengthFormat =
    format.unit === 'mm' ? { unit: 'mm', step: 0.1 } : { ...format, denominator: 64 };
  const bareTicks = (t: Ticks) => {
    const own = printLength(t, format);
    const fine = printLength(t, finer);
    return (!own.exact && fine.exact ? fine.text : own.text).replace(/ mm$/, '');
  };
  return {
    inWords: (t) => printSetting(ledger.ticks(t), format),
    bare: (t) => bareTicks(ledger.ticks(t)),
    measured: (t) => printSetting(ledger.ticks(t), format).replace(/ mm$/, ''),
    bareTicks,
    unit: format.unit === 'mm' ? 'mm' : 'inches',
  };
}
