import type { Traced } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { FinishPlan } from './finish/finish-plan.ts';
import type { GaugeStick } from './gauge-sticks.ts';
import type { GlueUp } from './glue/glue-up.ts';
import type { Act, Operation } from './operation.ts';
import type { Schedule } from './schedule/schedule.ts';
import type { StageId } from './stages.ts';
import type { StoryStick } from './story-sticks.ts';

/** A sheet, offcut, board or strip as it stands in the shop before work begins, under the name the cards use. */
export interface Workpiece {
  readonly name: string;
  readonly lot: string;
  readonly stock: string;
  readonly length: Traced;
  readonly width: Traced;
  readonly thickness: Traced;
  /** How much of each end and each long edge is as it came and must not stay on a part. */
  readonly raw: { readonly ends: Traced; readonly edges: Traced };
  /** The slope along an edge of a strip that was parted from its blank on an earlier day. */
  readonly slope?: Pick<Extract<Act, { act: 'bevel' }>, 'edge' | 'angle' | 'fullFace'>;
}

/** Operations grouped under a heading, as they follow one another. */
export interface Stage {
  readonly id: StageId;
  readonly title: string;
  readonly operations: readonly string[];
}

/** The order of work. */
export interface BuildPlan {
  readonly stock: readonly Workpiece[];
  /** In the order they are done. */
  readonly operations: readonly Operation[];
  readonly stages: readonly Stage[];
  readonly glueUps: readonly GlueUp[];
  /** Absent where parts belong to no piece. */
  readonly finishing?: FinishPlan;
  readonly schedule: Schedule;
  readonly gauges: readonly GaugeStick[];
  readonly stories: readonly StoryStick[];
  readonly snags: readonly Snag[];
}
