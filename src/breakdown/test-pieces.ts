import type { Ledger } from '../measure/index.ts';
import type { Leftover, LotBreakdown } from './break-down.ts';

/** A piece of a lot that is kept to prove settings on, and to try the finish on. */
export interface TestPiece {
  readonly lot: string;
  /** A leftover of this plan, stock that stays on the rack, or nothing at all. */
  readonly from: 'leftover' | 'rack' | 'nothing';
  /** The leftover's name. */
  readonly name?: string;
}

/**
 * For each lot that is cut, the smallest leftover that goes back on the rack; else the rack's own, where more of the lot
 * stands there than is cut. Of veneer tape there is none.
 */
export function testPiecesOf(
  ledger: Ledger,
  lots: readonly LotBreakdown[],
  leftovers: readonly Leftover[],
): readonly TestPiece[] {
  const area = (l: Leftover) => ledger.ticks(l.length) * ledger.ticks(l.width);
  return lots
    .filter(({ lot, sheets }) => sheets.length > 0 && lot.tape === undefined)
    .map(({ lot, sheets }): TestPiece => {
      const [smallest] = leftovers.filter((l) => l.lot === lot.id).sort((a, b) => area(a) - area(b));
      if (smallest) return { lot: lot.id, from: 'leftover', name: smallest.name };
      const stays = lot.stock.some(
        (stock) =>
          (stock.have ?? 0) > sheets.filter((s) => s.source.onRack && s.source.stock === stock).length,
      );
      return { lot: lot.id, from: stays ? 'rack' : 'nothing' };
    });
}
