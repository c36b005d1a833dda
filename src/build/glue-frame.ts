import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { glueCautions } from './cautions.ts';
import { squareLines } from './glue/square-lines.ts';
import { Standing, seat } from './seating.ts';
import { touchWords } from './touch-words.ts';
import { listWords, looks } from './words.ts';

/** Glues mitred strips together to a frame, and lets it set. */
export function glueFrame(bench: Bench, name: string, words: string, strips: readonly Part[]): void {
  const standing = new Standing(bench, name);
  const spans = bench.ledger.greatest('the longest strip', ...strips.map((s) => s.length));
  strips.forEach((strip, i) => {
    const touches = seat(bench, standing, strip);
    const told = touches.map((t) => touchWords(bench, t, 0).words);
    const id = `${strip.mark}/set`;
    bench.do(
      {
        id,
        kind: 'assemble',
        stage: 'assemble',
        title:
          i === 0
            ? `Begin the ${words} with ${strip.mark} (${strip.name})`
            : `Glue ${strip.mark} (${strip.name}) into the ${words}`,
        does: {
          act: 'set',
          workpiece: strip.mark,
          into: name,
          turn: { length: strip.place.length, width: strip.place.width },
          touches,
          glue: true,
        },
        tool: 'clamp',
        spans,
        lines:
          i === 0
            ? [
                `On edge on a flat surface, with paper under the joints. Fit all ${strips.length} strips dry first and measure both diagonals.`,
              ]
            : [
                `Mitre to mitre: ${listWords(told)}.`,
                'Glue both slopes: the end grain drinks, so wait a minute and glue again. Hold with tape across the corner and a clamp each way.',
              ],
        cautions: glueCautions(bench),
      },
      i === 0 ? [strip.mark] : [strip.mark, name],
    );
    if (i === 0) bench.comesFrom(name, id);
    standing.add(strip);
  });
  const pockets = strips.some((s) => s.features.some((f) => f.kind === 'pocket'));
  const [front, aside] = ['-y', '-x'].map((d) => strips.find((s) => looks(s, 'show') === d));
  const square = squareLines(bench, {
    what: `the ${words}`,
    width: (front ?? strips[0]!).length,
    height: (aside ?? strips[1] ?? strips[0]!).length,
    parts: strips,
    wet: true,
  });
  bench.do(
    {
      id: `${name}/cure`,
      kind: 'cure',
      stage: 'assemble',
      title: `Check the ${words} for square and let it set`,
      does: { act: 'other', on: strips.map((s) => s.mark) },
      lengths: square.lengths,
      lines: [
        ...square.lines,
        `An offcut glued into each inner corner${pockets ? ', clear of the pockets,' : ''} holds more than the mitre alone.`,
      ],
      cautions: glueCautions(bench),
    },
    [name],
  );
}
