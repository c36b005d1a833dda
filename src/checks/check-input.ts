import type { Breakdown } from '../breakdown/index.ts';
import type { BuildPlan } from '../build/index.ts';
import type { JobDocument } from '../job/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import type { Point } from '../solid/index.ts';

/** What a part weighs, and where its centre of mass lies in the standing piece. */
export interface Weighed {
  readonly kg: number;
  readonly centreMm: Point;
}

/** All that the checks look at. */
export interface CheckInput {
  readonly job: JobDocument;
  readonly setOut: SetOut;
  readonly breakdown: Breakdown;
  readonly build: BuildPlan;
  /** Weighs a part of `setOut` by its id; the solids do it. */
  readonly weigh: (partId: string) => Weighed;
}
