import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Traced } from '../measure/index.ts';
import { type ChainPlace, chains, type Span } from './dimension.ts';
import { dimensionClashes } from './dimension-clashes.ts';
import { line, text } from './drawing.ts';
import { PLEX } from './text-measure.ts';

const BELOW: ChainPlace = { axis: 'x', border: 100, outward: 1, first: 8 };
const span = (from: number, to: number): Span => ({
  from,
  to,
  words: `${Math.round((to - from) * 10)}`,
  trace: 0 as Traced,
});
const paper = (marks: ReturnType<typeof chains>) => ({ width: 400, height: 400, marks });

describe('dimension chains', () => {
  it('put a longer span outside of a shorter one', () => {
    const [inner, outer] = chains([[span(100, 200)], [span(120, 150)]], BELOW, PLEX);
    expect(inner!.label.text).toBe('300');
    expect(outer!.label.text).toBe('1000');
    expect(outer!.label.at[1]).toBeGreaterThan(inner!.label.at[1]);
  });

  it('keep a row of openings on one line', () => {
    const row = [span(102, 140), span(142, 180), span(182, 198)];
    const at = new Set(chains([row, [span(100, 200)]], BELOW, PLEX).map((d) => d.strokes[2]!.from[1]));
    expect(at.size).toBe(2);
  });

  it('move the figure of a narrow span out of the way of its neighbours', () => {
    const marks = chains(
      [[span(100, 102), span(102, 106), span(106, 194), span(194, 200)], [span(100, 200)]],
      BELOW,
      PLEX,
    );
    expect(dimensionClashes(paper(marks), PLEX)).toEqual([]);
  });

  it('read clearly however a width is divided', () => {
    const division = fc.array(fc.integer({ min: 20, max: 500 }), { minLength: 1, maxLength: 7 });
    fc.assert(
      fc.property(division, division, (first, second) => {
        const row = (sizes: readonly number[]) => {
          const all = sizes.reduce((a, b) => a + b, 0);
          let at = 100;
          return sizes.map((s) => {
            const to = at + (s / all) * 150;
            const out = span(at, to);
            at = to;
            return out;
          });
        };
        const wide = (r: readonly Span[]) => r.every((s) => s.to - s.from > 9);
        const rows = [row(first), row(second)].filter(wide);
        const marks = chains([...rows, [span(100, 250)]], BELOW, PLEX);
        expect(dimensionClashes(paper(marks), PLEX)).toEqual([]);
      }),
    );
  });
});

describe('the check of drawings', () => {
  it('finds texts that overlap, lines through figures and figures off the paper', () => {
    const dimension = chains([[span(100, 140)]], BELOW, PLEX)[0]!;
    const [x, y] = dimension.label.at;
    const clashes = dimensionClashes(
      {
        width: 400,
        height: 400,
        marks: [
          dimension,
          line([x, y - 10], [x, y + 10]),
          text([10, 10], 'one', 4),
          text([12, 11], 'two', 4),
          text([399, 50], 'off', 4),
        ],
      },
      PLEX,
    );
    expect(clashes).toEqual([
      'a line runs through "400"',
      '"one" and "two" overlap',
      '"off" leaves the paper',
    ]);
  });

  it('lets texts touch', () => {
    const wide = PLEX.width('one', 4, 'regular');
    const marks = [text([10, 10], 'one', 4), text([10 + wide, 10], 'two', 4)];
    expect(dimensionClashes({ width: 50, height: 50, marks }, PLEX)).toEqual([]);
  });
});
