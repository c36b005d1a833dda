import type { Traced } from '../../measure/index.ts';
import type { CentreChoice } from './centre-choice.ts';
import type { ChosenRunner } from './runner-choice.ts';
import type { WoodenChoice } from './wooden-choice.ts';

/** What the drawers of an opening are carried by, and what follows for their boxes. */
export interface Carriage {
  /** How long the boxes are from front to back. */
  readonly length: Traced;
  /** What is left between a box and an upright on either side. */
  readonly beside: Traced;
  /** The lowest box that still takes it. */
  readonly lowest: Traced;
  readonly travel: Traced;
  readonly by:
    | { readonly kind: 'bought'; readonly runner: ChosenRunner }
    | { readonly kind: 'wooden'; readonly strips: WoodenChoice }
    | { readonly kind: 'centre'; readonly strips: CentreChoice };
}
