import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import type { CaseBox } from '../case-units.ts';
import { glueCautions } from '../cautions.ts';
import { listWords } from '../words.ts';
import { squareLines } from './square-lines.ts';

/**
 * Checks the n-th case of an assembly by its diagonals, and lets it set where it was glued. `free` are the marks of uprights
 * whose upper ends nothing holds yet.
 */
export function checkSquare(
  bench: Bench,
  into: string,
  n: number,
  box: CaseBox,
  { glued, free }: { readonly glued: boolean; readonly free: readonly string[] },
): void {
  const { left, right } = box;
  const nth = n > 1 ? `-${n}` : '';
  const square = caseSquare(bench, box, `the open side of ${box.words}`, glued);
  bench.do(
    {
      id: `${into}/check-square${nth}`,
      kind: 'check-square',
      stage: 'assemble',
      title: `Check ${box.words} for square`,
      does: { act: 'other', on: [left.mark, right.mark] },
      lengths: square.lengths,
      lines: [
        ...square.lines,
        ...(!glued && free.length > 0
          ? [
              `${listWords(free)} ${free.length > 1 ? 'are' : 'is'} still free at one end: bring that to ${free.length > 1 ? 'their' : 'its'} marks on the long story stick.`,
            ]
          : []),
      ],
    },
    [into],
  );
  if (glued)
    bench.do(
      {
        id: `${into}/cure${nth}`,
        kind: 'cure',
        stage: 'assemble',
        title: `Let ${box.words} set`,
        does: { act: 'other', on: [left.mark, right.mark] },
        lines: ['On a flat floor, so that it stays flat.'],
        cautions: glueCautions(bench),
      },
      [into],
    );
}

/** Lines that check a case by the diagonals of its open side, and the lengths they print. */
export function caseSquare(
  bench: Bench,
  { left, right, parts }: CaseBox,
  what: string,
  wet: boolean,
): ReturnType<typeof squareLines> {
  const l = bench.ledger;
  const own = new Set(parts.map((p) => p.id));
  const backs = bench.setOut.joints.filter((j) => j.duty === 'back' && own.has(j.part));
  const slides = new Set(backs.filter((j) => j.kind === 'groove').map((j) => j.part));
  const back = backs.find((j) => !slides.has(j.part));
  return squareLines(bench, {
    what,
    width: l.less('outer width', planesOf(l, right).planes['+x'], planesOf(l, left).planes['-x']),
    height: left.length,
    parts,
    wet,
    ...(back ? { back: bench.setOut.parts.find((p) => p.id === back.part)!.mark } : {}),
  });
}
