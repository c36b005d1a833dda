import type { JobDocument } from '../../job/index.ts';
import type { LedgerData } from '../../measure/index.ts';
import type { Plan, PlanProgress } from '../../plan/index.ts';

/** What the page asks of the worker. `job` is a running number: answers to an older one are stale. */
export type Request =
  | { readonly ask: 'plan'; readonly job: number; readonly document: JobDocument }
  | { readonly ask: 'file'; readonly file: 'pdf' | 'csv' };

/** The skin of a part where it stands, in millimetres: three numbers a corner, three corners a triangle. */
export interface PartMesh {
  readonly part: string;
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
}

/** A plan as it crosses to the page: the ledger as data. */
export type PackedPlan = Omit<Plan, 'setOut'> & {
  readonly setOut: Omit<Plan['setOut'], 'ledger'> & { readonly ledger: LedgerData };
};

export type Answer =
  | { readonly tell: 'meshes'; readonly job: number; readonly parts: readonly PartMesh[] }
  | { readonly tell: 'progress'; readonly job: number; readonly progress: PlanProgress }
  | { readonly tell: 'plan'; readonly job: number; readonly plan: PackedPlan }
  | { readonly tell: 'failed'; readonly job: number; readonly sentence: string }
  | { readonly tell: 'file'; readonly file: 'pdf' | 'csv'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly tell: 'file-failed'; readonly file: 'pdf' | 'csv'; readonly sentence: string };
