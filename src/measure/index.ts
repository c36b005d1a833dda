export { Chance } from './chance.ts';
export { dateOf, dayNumber, WEEKDAYS, weekdayOf } from './civil-day.ts';
export {
  KG_PER_LB,
  L_PER_US_GALLON,
  MM_PER_INCH,
  MPA_PER_PSF,
  MPA_PER_PSI,
  N_PER_KG,
  N_PER_LBF,
} from './conversions.ts';
export { explain } from './explain.ts';
export type { Entry, LedgerData, LedgerOperation, LengthRow, RatioRow, Traced } from './ledger.ts';
export { Ledger } from './ledger.ts';
export { mitreFace, mitreGain } from './mitre.ts';
export type { ReadLength, Units } from './parse.ts';
export { parseLength } from './parse.ts';
export type { ReadMass } from './parse-mass.ts';
export { parseMass } from './parse-mass.ts';
export type { LengthFormat, PrintedLength } from './print.ts';
export { printedTicks, printLength, printStep, toJsonMm } from './print.ts';
export { printSetting } from './print-setting.ts';
export type { Misread } from './read-number.ts';
export type { Leaf, LeafKind } from './recompute.ts';
export { leavesOf, recompute, recomputeAll } from './recompute.ts';
export type { Report } from './report.ts';
export { inMm, tracesOf } from './report.ts';
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
export type { LoopMember, StackUp } from './tolerance.ts';
export { stackUp } from './tolerance.ts';
