import type { Traced } from '../../measure/index.ts';
import type { Part } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { squareLimit } from './square-limit.ts';

/** Something that must be square. */
export interface Squared {
  /** `the open side`, `the frame`. */
  readonly what: string;
  readonly width: Traced;
  readonly height: Traced;
  readonly parts: readonly Part[];
  /** The glue is still wet. */
  readonly wet: boolean;
  /** The mark of a back that comes later and can be laid on to square it. */
  readonly back?: string;
}

/** Lines that check it by its diagonals, and the lengths they print. */
export function squareLines(
  bench: Bench,
  { what, width, height, parts, wet, back }: Squared,
): { readonly lines: readonly string[]; readonly lengths: readonly Traced[] } {
  const { difference, fit } = squareLimit(bench, width, height, parts);
  return {
    lines: [
      `Measure both diagonals of ${what} from outer corner to outer corner. They may differ by {0} at most${fit === undefined ? '' : `; more would use up all the play of ${fit}`}.`,
      wet
        ? 'If they differ by more, lay a clamp along the longer one and draw it shorter, or set the other clamps a little aslant that way; measure again, all before the glue sets.'
        : 'If they differ by more, loosen the screws at one corner and push along the longer one.',
      ...(wet && back !== undefined
        ? [
            `${back} was cut square: check its own diagonals, then lay it on dry and bring the edges level with it. A square back squares a wet case.`,
          ]
        : []),
    ],
    lengths: [difference],
  };
}
