export type { BuildPlan, Stage, Workpiece } from './build-plan.ts';
export type {
  Act,
  Operation,
  OperationKind,
  PieceDirection,
  Touch,
  Turn,
  WorkEdge,
  WorkFace,
  WorkSide,
} from './operation.ts';
