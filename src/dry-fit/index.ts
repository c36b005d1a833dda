export type { DrawnPart } from './compare.ts';
export type { Care } from './condition/condition.ts';
export type { DryFitInput } from './dry-fit.ts';
export { dryFit } from './dry-fit.ts';
export { fitReport } from './fit-report.ts';
export type { DryFitFault, DryFitReport, PartOutcome } from './report.ts';
export { type VirtualFit, type VirtualOutcome, virtualBuilds } from './virtual/virtual-builds.ts';
