import { HOLDING } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Halves } from './sawn.ts';
import type { VirtualPiece } from './virtual-piece.ts';

/** The power saws that pieces must be large enough for. */
export type PowerSaw = 'circular-saw' | 'mitre-saw';

/** Why a piece is too small for the saw that its card names; undefined where it can be held. */
export function tooSmallFor(
  saw: PowerSaw,
  piece: VirtualPiece,
  { workpiece, across }: { readonly workpiece: string; readonly across: 'length' | 'width' },
  halves: Halves,
): string | undefined {
  const axis = across === 'length' ? 0 : 1;
  const held: number =
    saw === 'mitre-saw'
      ? Math.max(...halves.map((h) => h?.size[axis] ?? 0))
      : Math.max(piece.size[0], piece.size[1]);
  const least = saw === 'mitre-saw' ? HOLDING.mitreSaw : HOLDING.board;
  if (held >= least) return undefined;
  return `${workpiece} is too small to hold under the saw: ${toMm(held)} mm where ${toMm(least)} mm are needed. Cut it by hand, or earlier off a larger piece.`;
}
