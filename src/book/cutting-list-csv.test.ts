import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { smallCaseBook } from '../../test/book/small-case-book.ts';
import { csv, cuttingListCsv } from './cutting-list-csv.ts';

describe('cutting list as CSV', () => {
  it('is read back by an independent reader, one line a kind of part', () => {
    const input = smallCaseBook();
    const text = cuttingListCsv(input, input.format);
    const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
    expect(errors).toEqual([]);
    expect(data[0]).toMatchObject({ Marks: 'A', Name: 'left side', Count: '1', 'Length (mm)': '550' });
    expect(data.reduce((s, r) => s + Number(r.Count), 0)).toBe(input.setOut.parts.length);
  });

  it('keeps inch marks through quotes', () => {
    const input = smallCaseBook({ unit: 'in', denominator: 16 });
    const text = cuttingListCsv(input, input.format);
    const row = Papa.parse<Record<string, string>>(text, { header: true }).data[0]!;
    expect(row['Length (inches)']).toBe('21 5/8"');
  });

  it('ends lines with CR LF and quotes commas, quotes and line breaks (RFC 4180, section 2)', () => {
    expect(csv([['a,b', 'say "x"', 'two\nlines', 'plain']])).toBe('"a,b","say ""x""","two\nlines",plain\r\n');
  });

  it('disarms cells that a spreadsheet would run', () => {
    expect(csv([['=1+2', '+3', '-4', '@cmd', '\tx', '5-6']])).toBe("'=1+2,'+3,'-4,'@cmd,'\tx,5-6\r\n");
  });
});
