export type { Entry, LedgerData, LedgerOperation, LengthRow, RatioRow, Traced } from './ledger.ts';
export { Ledger } from './ledger.ts';
export type { Rounding, Ticks } from './ticks.ts';
export {
  fromInches,
  fromMm,
  LONGEST,
  roundHalfAway,
  TICKS_PER_INCH,
  TICKS_PER_MM,
  ticks,
  toInches,
  toMm,
  toStep,
  ZERO,
} from './ticks.ts';
