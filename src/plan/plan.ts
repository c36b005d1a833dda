import type { Breakdown } from '../breakdown/index.ts';
import type { BuildPlan } from '../build/index.ts';
import type { DryFitReport } from '../dry-fit/index.ts';
import type { JobDocument } from '../job/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { Mass } from '../solid/index.ts';
import type { Costs } from './costs.ts';

/** The proven plan of a job: what every room has worked out, each from the ones before it. */
export interface Plan {
  readonly job: JobDocument;
  readonly setOut: SetOut;
  readonly breakdown: Breakdown;
  readonly build: BuildPlan;
  readonly dryFit: DryFitReport;
  /** Mass and centre of each part as it stands, by part id, from the solids. */
  readonly masses: ReadonlyMap<string, Mass>;
  readonly mass: Mass;
  readonly costs: Costs;
  readonly hours: Hours;
  /** From every room, worst first. */
  readonly snags: readonly Snag[];
}

/** How long the build takes. Minutes come from the cards. */
export interface Hours {
  readonly active: number;
  /** Glue and finish drying, one after the other; other work may go on meanwhile. */
  readonly waiting: number;
  readonly byStage: readonly { readonly title: string; readonly active: number }[];
}

/** How far planning has come. */
export interface PlanProgress {
  readonly room: 'setting-out' | 'breakdown' | 'build' | 'dry-fit' | 'checks';
  /** From 0 to 1 within the room, as far as it is known. */
  readonly share: number;
}
