import type { Traced } from '../measure/index.ts';
import { axisOf, type Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';

/**
 * How long a mitred strip is, tip to tip: as drawn; round a board that is cut to its opening, so that its mitres close at
 * the corners which that has then.
 */
export function mitredLength(bench: Bench, strip: Part): Traced {
  const { ledger, setOut } = bench;
  const joint = setOut.joints.find((j) => j.duty === 'edging' && j.part === strip.id);
  const board = joint && setOut.parts.find((p) => p.id === joint.mate);
  if (!board?.fitted) return strip.length;
  const along = axisOf(strip.place.length).axis;
  const size = axisOf(board.place.length).axis === along ? 'length' : 'width';
  const fitted = board.fitted[size];
  const off = ledger.ticks(fitted) - ledger.ticks(board[size]);
  if (off === 0) return strip.length;
  return off > 0
    ? ledger.sum(
        'as much longer as its board',
        strip.length,
        ledger.less('what its board is longer', fitted, board[size]),
      )
    : ledger.less(
        'as much shorter as its board',
        strip.length,
        ledger.less('what its board is shorter', board[size], fitted),
      );
}
