import type { JobDocument, Shop } from '../../job/index.ts';
import type { LedgerData } from '../../measure/index.ts';
import type { CuttingProgress, ListPlan, Plan, PlanProgress } from '../../plan/index.ts';
import type { DimensionsData, SetOut } from '../../setting-out/index.ts';
import type { ListCut } from './list-work.ts';

/** What the page asks of the worker. `job` is a running number: answers to an older one are stale. */
export type Request =
  | { readonly ask: 'plan'; readonly job: number; readonly document: JobDocument }
  | { readonly ask: 'list'; readonly list: number; readonly text: string; readonly shop: Shop }
  | { readonly ask: 'enough'; readonly job: number }
  | { readonly ask: 'file'; readonly file: 'pdf' | 'csv' };

/** The skin of a part where it stands, in millimetres: three numbers a corner, three corners a triangle. */
export interface PartMesh {
  readonly part: string;
  readonly positions: Float32Array;
  readonly triangles: Uint32Array;
}

/** What has been set out, as it crosses to the page: ledger and names as data. */
export type Packed<P extends { readonly setOut: SetOut }> = Omit<P, 'setOut'> & {
  readonly setOut: Omit<SetOut, 'ledger' | 'dimensions'> & {
    readonly ledger: LedgerData;
    readonly dimensions: DimensionsData;
  };
};

export type PackedPlan = Packed<Plan>;

/** A cut list as it crosses to the page. */
export type PackedList =
  | (Omit<ListCut & { readonly ok: true }, 'plan'> & { readonly plan: Packed<ListPlan> })
  | (ListCut & { readonly ok: false });

export type Answer =
  | { readonly tell: 'list'; readonly list: number; readonly cut: PackedList }
  | { readonly tell: 'list-failed'; readonly list: number; readonly sentence: string }
  | { readonly tell: 'meshes'; readonly job: number; readonly parts: readonly PartMesh[] }
  | { readonly tell: 'progress'; readonly job: number; readonly progress: PlanProgress }
  | { readonly tell: 'search'; readonly job: number; readonly search: CuttingProgress | undefined }
  | { readonly tell: 'plan'; readonly job: number; readonly plan: PackedPlan }
  | { readonly tell: 'failed'; readonly job: number; readonly sentence: string }
  | { readonly tell: 'file'; readonly file: 'pdf' | 'csv'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly tell: 'file-failed'; readonly file: 'pdf' | 'csv'; readonly sentence: string };
