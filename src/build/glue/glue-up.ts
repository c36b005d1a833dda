/** Joints that are glued in one go, from the first stroke of the brush to the last clamp. */
export interface GlueUp {
  /** `case/glue-1`. */
  readonly id: string;
  /** What it is part of: `case`, `base`. */
  readonly assembly: string;
  /** Operations in which it is done, in order. */
  readonly operations: readonly string[];
  /** Marks of the parts that must lie ready. */
  readonly parts: readonly string[];
  /** Minutes it takes by its cards, and minutes that the glue leaves. */
  readonly minutes: number;
  readonly leaves: number;
  /** Clamps that stay on until the glue has set. Screws and pins hold theirs. */
  readonly clamps: number;
  /** Whether the parts of the assembly that come later stand in dry while it sets. */
  readonly laterStandDry: boolean;
}
