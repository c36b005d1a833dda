export type { Breakdown, Leftover, LotBreakdown, Purchase } from './break-down.ts';
export { breakDown } from './break-down.ts';
export { type ReadCutProblem, readCutProblem } from './cut-contract.ts';
export type {
  BoundProof,
  CutArea,
  CutBound,
  CutNode,
  CutPlan,
  CutSheet,
  LengthWeight,
  Unplaced,
} from './cut-plan.ts';
export { cutPlanJson, type Json, whyUnplaced } from './cut-plan-json.ts';
export type { CutPiece, CutProblem, CutStock } from './cut-problem.ts';
export { judgeCuts } from './judge/judge-cuts.ts';
export { readCutPlan } from './judge/read-cut-plan.ts';
export type { Finding, FindingCode, Verdict } from './judge/verdict.ts';
export { listParts } from './list/list-parts.ts';
export { type ListRow, type ListSize, type ReadList, readList } from './list/read-list.ts';
export { goodFacesOf, type LotProblem, type StockSource } from './lot-problem.ts';
export {
  KEEP_LENGTH,
  KEEP_WIDTH,
  type PlannedArea,
  type PlannedNode,
  type PlannedSheet,
} from './planned-sheet.ts';
export { lowerBound } from './planner/lower-bound.ts';
export { type CutOptions, type CutProgress, ONE_SECOND, planCuts } from './planner/plan-cuts.ts';
export { provenWords } from './proven-words.ts';
export { type Spare, type SpareGroup, spareGroups } from './spares.ts';
export type { TestPiece } from './test-pieces.ts';
