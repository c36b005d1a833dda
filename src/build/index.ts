export type { BuildPlan, Stage, Workpiece } from './build-plan.ts';
export type { GaugeStick } from './gauge-sticks.ts';
export type {
  Act,
  Operation,
  OperationKind,
  PieceDirection,
  StageId,
  Touch,
  Turn,
  WorkEdge,
  WorkFace,
  WorkSide,
  Yield,
} from './operation.ts';
export { STAGES } from './operation.ts';
export { planBuild, planSawing } from './plan-build.ts';
export { stepsReport } from './steps-report.ts';
