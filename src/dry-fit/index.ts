export type { DryFitFault, DryFitReport, PartOutcome } from './report.ts';
