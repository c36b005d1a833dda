import type { Part } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { planesOf } from '../boxes.ts';
import type { CaseUnit } from '../case-units.ts';
import { CAUTION } from '../cautions.ts';
import { squareLines } from './square-lines.ts';

/** Checks a case by its diagonals, and lets it set where it was glued. */
export function checkSquare(bench: Bench, unit: CaseUnit, left: Part, right: Part, glued: boolean): void {
  const l = bench.ledger;
  const own = new Set(unit.parts.map((p) => p.id));
  const backs = bench.setOut.joints.filter((j) => j.duty === 'back' && own.has(j.part));
  const slides = new Set(backs.filter((j) => j.kind === 'groove').map((j) => j.part));
  const back = backs.find((j) => !slides.has(j.part));
  const square = squareLines(bench, {
    what: `the open side of ${unit.words}`,
    width: l.less('outer width', planesOf(l, right).planes['+x'], planesOf(l, left).planes['-x']),
    height: left.length,
    parts: unit.parts,
    wet: glued,
    ...(back ? { back: bench.setOut.parts.find((p) => p.id === back.part)!.mark } : {}),
  });
  bench.do(
    {
      id: `${unit.name}/check-square`,
      kind: 'check-square',
      stage: 'assemble',
      title: `Check ${unit.words} for square`,
      does: { act: 'other', on: [left.mark, right.mark] },
      lengths: square.lengths,
      lines: [
        ...square.lines,
        ...(!glued && unit.parts.some((p) => p.mark.startsWith('D'))
          ? ['The uprights inside are still free at one end: set them by the gauge sticks there too.']
          : []),
      ],
    },
    [unit.name],
  );
  if (glued)
    bench.do(
      {
        id: `${unit.name}/cure`,
        kind: 'cure',
        stage: 'assemble',
        title: `Let ${unit.words} set`,
        does: { act: 'other', on: [left.mark, right.mark] },
        lines: ['On a flat floor, so that it stays flat.'],
        cautions: [CAUTION.glue],
      },
      [unit.name],
    );
}
