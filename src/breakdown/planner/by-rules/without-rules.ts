import { ticks } from '../../../measure/index.ts';
import type { CutProblem } from '../../cut-problem.ts';
import { lies } from './cut-unit.ts';

/**
 * The same problem with sizes, counts and costs alone: pieces with their allowances, free to turn where any stock lets
 * them lie across. What fits no stock as its grain runs is
 * left out. Whatever can be cut under the rules can be cut here, so its bounds hold there.
 */
export function withoutRules({ kerf, stock, pieces, costScale }: CutProblem): CutProblem {
  const crossing = stock.some((s) => s.grain === 'across' || s.grain === 'free');
  return {
    kerf,
    ...(costScale === undefined ? {} : { costScale }),
    stock: stock.map(({ id, length, width, count, cost, trim }) => ({
      id,
      length,
      ...(width === undefined ? {} : { width }),
      ...(count === undefined ? {} : { count }),
      cost,
      trim,
    })),
    pieces: pieces
      .filter((p) => stock.some((s) => [false, true].some((t) => lies(p, s, t))))
      .map((p) => ({
        id: p.id,
        length: ticks(p.length + (p.allowance?.length ?? 0)),
        ...(p.width === undefined ? {} : { width: ticks(p.width + (p.allowance?.width ?? 0)) }),
        count: p.count,
        turn: p.turn || p.across === true || crossing,
      })),
  };
}
