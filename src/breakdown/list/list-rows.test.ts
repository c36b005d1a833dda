import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { listRows } from './list-rows.ts';

describe('listRows', () => {
  it('reads what another program writes as CSV, whatever the cells hold', () => {
    const cell = fc.stringMatching(/^[a-z0-9 ,;"'\n.]{0,8}$/).map((c) => c.trim());
    fc.assert(
      fc.property(
        fc.constantFrom(',', ';', '\t'),
        fc.array(fc.tuple(cell, cell, cell), { minLength: 1, maxLength: 5 }),
        (delimiter, rows) => {
          const all = [['name', 'length', 'width'], ...rows];
          expect(listRows(Papa.unparse(all, { delimiter, quotes: true }))).toEqual(all);
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });

  it('takes an inch mark for an inch mark', () => {
    expect(listRows('a,b\n23 1/4",12"\n"21 1/4""",x')).toEqual([
      ['a', 'b'],
      ['23 1/4"', '12"'],
      ['21 1/4"', 'x'],
    ]);
  });

  it('keeps blank rows, so that a row has its number, and knows a mark at the start of the file', () => {
    expect(listRows('\uFEFFa;b\r\n\r\n1,5;2\r\n')).toEqual([['a', 'b'], [''], ['1,5', '2']]);
  });
});
