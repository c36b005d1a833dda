import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import type { CaseBox } from '../case-units.ts';
import { CAUTION } from '../cautions.ts';
import { squareLines } from './square-lines.ts';

/** Checks the n-th case of an assembly by its diagonals, and lets it set where it was glued. */
export function checkSquare(
  bench: Bench,
  into: string,
  n: number,
  box: CaseBox,
  { glued, free }: { readonly glued: boolean; readonly free: boolean },
): void {
  const l = bench.ledger;
  const { left, right } = box;
  const nth = n > 1 ? `-${n}` : '';
  const own = new Set(box.parts.map((p) => p.id));
  const backs = bench.setOut.joints.filter((j) => j.duty === 'back' && own.has(j.part));
  const slides = new Set(backs.filter((j) => j.kind === 'groove').map((j) => j.part));
  const back = backs.find((j) => !slides.has(j.part));
  const square = squareLines(bench, {
    what: `the open side of ${box.words}`,
    width: l.less('outer width', planesOf(l, right).planes['+x'], planesOf(l, left).planes['-x']),
    height: left.length,
    parts: box.parts,
    wet: glued,
    ...(back ? { back: bench.setOut.parts.find((p) => p.id === back.part)!.mark } : {}),
  });
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
        ...(!glued && free
          ? [
              'The uprights inside are still free at one end: bring that to its marks on the long story stick.',
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
        cautions: [CAUTION.glue],
      },
      [into],
    );
}
