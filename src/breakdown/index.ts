export type { CutArea, CutBound, CutNode, CutPlan, CutSheet, Unplaced } from './cut-plan.ts';
export type { CutPiece, CutProblem, CutStock } from './cut-problem.ts';
