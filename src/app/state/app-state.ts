import type { Traced } from '../../measure/index.ts';
import type { CuttingProgress, Plan, PlanProgress } from '../../plan/index.ts';
import type { SetOut } from '../../setting-out/index.ts';
import type { Snag } from '../../snag/index.ts';
import type { PartMesh } from '../worker/messages.ts';
import type { History } from './history.ts';
import type { PlaceName } from './places.ts';

/** A number that was asked about, and the setting-out whose ledger knows it. */
export interface Asked {
  readonly setOut: SetOut;
  readonly traced: Traced;
}

/** Everything the page shows. Replaced, never changed. */
export interface AppState {
  readonly place: PlaceName;
  /** The file's name without its ending. */
  readonly name: string;
  readonly history: History;
  /** Of the job as it is now: worked out at once on every edit. */
  readonly setOut: SetOut;
  readonly meshes: { readonly of: SetOut; readonly parts: readonly PartMesh[] } | undefined;
  /** The latest plan; of an earlier job while `working` is set. */
  readonly plan: Plan | undefined;
  readonly working: PlanProgress | undefined;
  /** While better cutting is looked for, with the plan already there. */
  readonly search: CuttingProgress | undefined;
  /** What went wrong on our side, in a sentence. */
  readonly failure: string | undefined;
  /** A chosen part, by id. */
  readonly part: string | undefined;
  readonly asked: Asked | undefined;
  readonly snagsOpen: boolean;
  /** A field to bring into sight, by its path in the document. */
  readonly wanted: string | undefined;
  /** Why a file could not be opened. */
  readonly refused: { readonly file: string; readonly snags: readonly Snag[] } | undefined;
  /** Whether the job is kept in this browser. */
  readonly kept: boolean;
}
