import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Formula, namesIn } from './formula.ts';
import { readFormula } from './read-formula.ts';

const KNOWN = new Set(['width', 'gap', 'side', 'bay1.width', 'left-door.width', 'case.thickness']);

function says(text: string): string {
  const read = readFormula(text, (name) => KNOWN.has(name));
  return read.ok ? read.formula.says : read.problem;
}

describe('a formula', () => {
  test.each([
    ['width / 3 - gap', 'width / 3 - gap'],
    ['2*side', '2 * side'],
    ['width − 2 × 18 mm', 'width - 2 * 18 mm'],
    ['(width - gap)*2 ÷ 3', '(width - gap) * 2 / 3'],
    ['width - (gap - side)', 'width - (gap - side)'],
    ['min(width, 2*side, 40)', 'min(width, 2 * side, 40)'],
    ['down(width/3, 1/16 in)', 'down(width / 3, 1/16 in)'],
    ['1 3/4 in + gap', '1 3/4 in + gap'],
    ['4\' 11" - gap', '4\' 11" - gap'],
    ['12,7 mm + gap', '12,7 mm + gap'],
    ['width-gap', 'width - gap'],
    ['left-door.width-gap', 'left-door.width - gap'],
  ])('`%s` is read as `%s`', (text, expected) => {
    expect(says(text)).toBe(expected);
  });

  test('divides from the left, and takes a fraction with its whole number for one number', () => {
    const factor = (text: string) => {
      const read = readFormula(text);
      return read.ok && read.formula.is === 'scaled' ? [read.formula.over, read.formula.under] : read;
    };
    expect(factor('width * 1 1/2')).toEqual([3, 2]);
    expect(factor('width * 0.15')).toEqual([3, 20]);
    expect(factor('(2 + 1) * width')).toEqual([3, 1]);
    const read = readFormula('width / 3/4');
    expect(read.ok && read.formula).toMatchObject({ over: 1, under: 4, of: { over: 1, under: 3 } });
  });

  test.each([
    ['width * gap', 'a size times a size is an area; one of the two must be a bare number', 9],
    ['3 / gap', 'a size is divided by a bare number, not by a size', 5],
    ['width / 0', 'nothing can be divided by 0', 9],
    ['(width', 'a bracket is not closed', 6],
    ['width)', 'this bracket closes none', 6],
    ['width +', 'a size is missing here', 7],
    ['width gap', 'a sign is missing before this', 7],
    ['width ^ 2', '“^” has no meaning here', 7],
    ['max(12,7)', 'between brackets write 12.7 for a decimal, or “12, 7” for two sizes', 5],
    ['gap + 1-3/4 in', 'write 1 3/4 for the fraction, or 1 - 3/4 to take it away', 7],
    ['min(width)', '“min” wants two sizes or more, with commas between', 1],
    ['down(width)', '“down” wants a size and the step to round it to, with a comma between', 1],
    ['side(3)', 'before a bracket stands a sign, or one of min, max, down, up, nearest', 1],
    [
      'gap + 1,580 mm',
      'a comma with three digits behind it could set thousands apart; write 1580, or 1.580 or 1,58 for a decimal',
      7,
    ],
  ])('`%s` is refused with its place', (text, what, at) => {
    expect(says(text)).toBe(`\`${text}\`: ${what}, at character ${at}`);
  });

  test('never throws, and every length and name in it stands where it says', () => {
    const words = [
      'width',
      'gap',
      'bay1.width',
      '18 mm',
      '1/2 in',
      '3',
      '2.5',
      '+',
      '-',
      '*',
      '/',
      '(',
      ')',
      ',',
      'min',
      'up',
      ' ',
      '"',
      '$',
    ];
    const leaves = (f: Formula): readonly Formula[] => {
      switch (f.is) {
        case 'length':
        case 'name':
          return [f];
        case 'sum':
        case 'less':
          return [...leaves(f.left), ...leaves(f.right)];
        case 'scaled':
          return leaves(f.of);
        case 'round':
          return [...leaves(f.of), ...leaves(f.step)];
        case 'greatest':
        case 'least':
          return f.of.flatMap(leaves);
      }
    };
    let read = 0;
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...words), { maxLength: 9 }), (some) => {
        const text = some.join('');
        const found = readFormula(text, (name) => KNOWN.has(name));
        if (!found.ok) {
          expect(found.problem).toMatch(/, at character \d+$/);
          expect(found.at).toBeLessThanOrEqual(text.length + 1);
          return;
        }
        read++;
        for (const leaf of leaves(found.formula))
          if ('at' in leaf)
            expect(text.slice(leaf.at - 1)).toMatch(
              new RegExp(`^${leaf.says.replace(/[.*+?^$()]/g, '\\$&')}`),
            );
        expect(namesIn(found.formula).every(({ name, at }) => text.startsWith(name, at - 1))).toBe(true);
      }),
      { numRuns: 2000 },
    );
    expect(read).toBeGreaterThan(50);
  });
});
