export { areaWords, coverageWords, usedWords, volumeWords } from './amounts.ts';
export type { BuildPlan, Stage, Workpiece } from './build-plan.ts';
export { CAUTION } from './cautions.ts';
export { cutsOfAct } from './cuts-of-act.ts';
export { timeWords } from './duration-words.ts';
export type { ClassFinish, FinishPlan } from './finish/finish-plan.ts';
export { finishReport } from './finish/finish-report.ts';
export { readyWords } from './finish/ready-words.ts';
export { fromOperation } from './from-operation.ts';
export type { GaugeStick } from './gauge-sticks.ts';
export type { GlueUp } from './glue/glue-up.ts';
export { MINUTES, WAITS } from './minutes.ts';
export type {
  Act,
  Operation,
  PieceDirection,
  Touch,
  Turn,
  WorkEdge,
  WorkFace,
  WorkSide,
  Yield,
} from './operation.ts';
export type { OperationKind } from './operation-kind.ts';
export { planBuild, planSawing } from './plan-build.ts';
export { scheduleBuild } from './schedule/build-schedule.ts';
export { type WrittenMoment, writtenMoment } from './schedule/moment.ts';
export type { Schedule, ScheduledOperation } from './schedule/schedule.ts';
export { scheduleReport } from './schedule/schedule-report.ts';
export { sizesMade } from './sizes-made.ts';
export type { StageId } from './stages.ts';
export { STAGES } from './stages.ts';
export { stepsReport } from './steps-report.ts';
export type { StoryStick } from './story-sticks.ts';
