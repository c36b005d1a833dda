import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rectangle } from './drawing.ts';
import { flow } from './flow.ts';
import { PLEX, printable } from './text-measure.ts';
import { paragraph } from './typeset.ts';

describe('setting text', () => {
  it('keeps every word, in order, within the column', () => {
    const word = fc.stringMatching(/^[a-z]{1,9}$/);
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 40 }),
        fc.integer({ min: 40, max: 120 }),
        (words, width) => {
          const set = paragraph(words.join(' '), width, 4, PLEX);
          const lines = set.marks.map((m) => (m.kind === 'text' ? m.text : ''));
          expect(lines.join(' ')).toBe(words.join(' '));
          for (const l of lines) expect(PLEX.width(l, 4, 'regular')).toBeLessThanOrEqual(width + 1e-6);
          expect(set.lines).toBe(lines.length);
        },
      ),
    );
  });

  it('never parts a number from its unit, and joins the full stop to it', () => {
    const runs = [
      { text: 'Mark ' },
      { text: '23 1/4"', whole: true, face: 'semibold' as const },
      { text: '. Then saw.' },
    ];
    for (let width = 14; width < 60; width++) {
      const texts = paragraph(runs, width, 4, PLEX).marks.map((m) => (m.kind === 'text' ? m : undefined)!);
      const number = texts.find((t) => t.text.startsWith('23'))!;
      const stop = texts.find((t) => t.text.startsWith('.'))!;
      expect(number.text).toBe('23 1/4"');
      expect(stop.at[1]).toBe(number.at[1]);
    }
  });

  it('writes a question mark for what the typeface lacks', () => {
    expect(printable('⌀ 5 × ½')).toBe('? 5 × ½');
  });
});

describe('flowing blocks', () => {
  const block = (height: number, more = {}) => ({
    marks: [rectangle(0, 0, 10, height, { pen: 'thin' })],
    height,
    ...more,
  });
  const column = { left: 0, top: 0, width: 100, height: 100 };

  it('divides no block and loses none', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 1, maxLength: 30 }), (heights) => {
        const pages = flow(
          heights.map((h) => block(h, { before: 3 })),
          column,
        );
        expect(pages.flat().length).toBe(heights.length);
        for (const page of pages)
          for (const m of page)
            if (m.kind === 'polygon') for (const [, y] of m.points) expect(y).toBeLessThanOrEqual(100 + 1e-6);
      }),
    );
  });

  it('takes a heading along with what it heads', () => {
    const pages = flow([block(80), block(10, { keep: true }), block(30)], column);
    expect(pages.map((p) => p.length)).toEqual([1, 2]);
  });

  it('repeats the head of a table on the next page', () => {
    const head = block(5);
    const rows = Array.from({ length: 12 }, () => block(10, { head }));
    expect(flow([head, ...rows], column).map((p) => p.length)).toEqual([10, 4]);
  });
});
