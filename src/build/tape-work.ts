import type { Lot } from '../job/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { markWords } from './mark-words.ts';
import type { PieceDirection } from './operation.ts';
import { directionWords, listWords, looks } from './words.ts';

/** How a part that is veneer tape is made to stick; undefined for solid edging. */
export function tapeOf(bench: Bench, part: Part): Lot['tape'] {
  return bench.job.shop.rack.lots.find((l) => l.id === part.lot)?.tape;
}

/** What a card says of tape that is ironed on. */
export function tapeLines(tape: NonNullable<Lot['tape']>): readonly string[] {
  return [
    ...(tape === 'glue'
      ? [
          'Wood glue on the tape and on the edge, thin and even; let both dry until the glue is clear, half an hour or so. The iron melts it again.',
        ]
      : []),
    'The edge sanded flat and free of dust. Iron without steam, at the heat for cotton, slowly from one end to the other; a clean sheet of paper between keeps it clean.',
    'Behind the iron rub it down hard with a block of hardwood until it is cold. Where it lifts, iron and rub again.',
  ];
}

/** Trims tape that stands beyond its boards, by hand: a router tears it. */
export function trimTape(
  bench: Bench,
  batch: readonly { readonly board: Part; readonly strips: readonly Part[] }[],
  ends: readonly PieceDirection[],
  { stage, covers }: { readonly stage: 'edging' | 'hang'; readonly covers: boolean },
): void {
  const boards = batch.map((e) => e.board.mark);
  const { board } = batch[0]!;
  bench.do(
    {
      id: `${boards[0]}/${covers ? 'flush-sides' : 'flush'}`,
      kind: 'trim',
      stage,
      title: `Trim the ${covers ? `tape ${markWords(batch.flatMap((e) => e.strips.map((s) => s.mark)))} on` : 'tape of'} ${markWords(boards)} level`,
      does: {
        act: 'flush',
        workpieces: boards,
        sides: [looks(board, 'show'), looks(board, 'under'), ...ends],
        ...(covers ? { strips: batch.map((e) => e.strips.map((s) => s.mark)) } : {}),
      },
      times: boards.length,
      faceUp: 'one face up, then the other',
      lines: [
        ...(ends.length > 0
          ? [
              `First the ${listWords(ends.map(directionWords))} end${ends.length > 1 ? 's' : ''}: lay the tape on a board and score it through with a sharp chisel, from outside in${covers ? ', level with the tape that is on there already' : ''}.`,
            ]
          : []),
        'Then the long sides: a sharp chisel flat on the face, cutting aslant and with the grain of the tape, first one face and then the other. Where the grain runs into the board, work from the other end.',
        'A fine file or a block with 180, strokes toward the board only, takes off what is left and eases the arris.',
      ],
      cautions: [CAUTION.chisel],
    },
    boards,
  );
}
