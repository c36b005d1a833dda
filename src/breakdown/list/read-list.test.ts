import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkShop } from '../../job/index.ts';
import { fromMm } from '../../measure/index.ts';
import { readList } from './read-list.ts';

const file = new URL('../../../examples/glaze-cabinet.json', import.meta.url);
const checked = checkShop(JSON.parse(readFileSync(file, 'utf8')).shop);
if (!checked.ok) throw new Error('the example’s shop is refused');
const { shop } = checked;

function codes(text: string): string[] {
  const read = readList(text, shop);
  return (read.ok ? read.notes : read.snags).map((s) => `${s.code} ${s.where.path}`);
}

describe('readList', () => {
  it('reads headings in a maker’s words, in any order, with units where they stand', () => {
    const text = 'Qty;Wide (cm);Long;what;material\n3;30;2\' 6";shelf;birch6\n;;0.4 m;;Ash6';
    const read = readList(text, shop);
    if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join());
    expect(read.rows).toMatchObject([
      { name: 'shelf', count: 3, grain: 'length', row: 2, length: { value: fromMm(762) } },
      { name: 'piece of row 3', count: 1, length: { value: fromMm(400) }, lot: { id: 'ash6' } },
    ]);
    expect(read.rows[0]!.width!.value).toBe(fromMm(300));
  });

  it('reads fractions in the heading’s unit, as it does decimals, and keeps what was meant', () => {
    const text = 'Length (cm),Width in,stock\n82 1/2,12 3/4,birch18\n82½,12.75,birch18\n"82,5",1 ft,birch18';
    const read = readList(text, shop);
    if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join());
    expect(read.rows.map((r) => r.length.value)).toEqual([fromMm(825), fromMm(825), fromMm(825)]);
    expect(read.rows.map((r) => r.width?.value)).toEqual([fromMm(323.85), fromMm(323.85), fromMm(304.8)]);
    expect(read.rows.map((r) => r.length.typed)).toEqual(['82 1/2 cm', '82½ cm', '82,5 cm']);
  });

  it('says how wide the strips are when another width is asked', () => {
    const read = readList('length,width,stock\n500,12.5,ash6', shop);
    expect(read.ok ? [] : read.snags.map((s) => s.sentence)).toEqual([
      'Row 2: the strips of ash6 are 20 mm wide, not 12.5.',
    ]);
  });

  it('lays a piece whose length runs across the grain the other way round', () => {
    const read = readList('length,width,grain,stock\n500,300,across,birch18\n500,300,free,birch18', shop);
    if (!read.ok) throw new Error('refused');
    expect(read.rows.map((r) => [r.length.value, r.width?.value, r.grain])).toEqual([
      [fromMm(300), fromMm(500), 'length'],
      [fromMm(500), fromMm(300), 'free'],
    ]);
  });

  it('finds the lot by a thickness as sold or as measured, and a strip’s width by itself', () => {
    const read = readList('length,width,thickness\n500,300,17.6\n500,300,6.5\n900,,6', shop);
    if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join());
    expect(read.rows.map((r) => r.lot.id)).toEqual(['birch18', 'birch6', 'ash6']);
    expect(read.rows[2]!.width).toBeUndefined();
  });

  it('tells every fault at once, each with its row', () => {
    const text = `name,length,width,thickness,count,grain,colour,stock
a,,300,17.6,1,,,
b,tall,300,17.6,0,diagonal,,
c,500,300,,1,,,oak
d,500,300,18,1,,,
e,500,-3,17.6,1.5,,,
f,500,,17.6,,,,
g,500,300,17.6,1,,,,9
`;
    expect(codes(text)).toEqual([
      'list.size-missing list/row2',
      'list.unreadable-size list/row3',
      'list.unreadable-count list/row3',
      'list.unreadable-grain list/row3',
      'list.no-such-stock list/row4',
      'list.stock-unclear list/row5',
      'list.size-zero list/row6',
      'list.unreadable-count list/row6',
      'list.size-missing list/row7',
      'list.more-cells list/row8',
    ]);
  });

  it.each([
    ['', 'list.empty list/row1'],
    ['length,width\n\n', 'list.empty list/row1'],
    ['500,300\n400,200', 'list.no-heading list/row1'],
    ['name,width\na,300', 'list.column-missing list/row1'],
    ['length,long\n3,4', 'list.column-twice list/row1'],
    [`length,count,stock\n${'5,5000,ash6\n'.repeat(2)}`, 'list.too-many list/row1'],
    [`length\n${'5\n'.repeat(2001)}`, 'list.too-many list/row1'],
  ])('refuses %j', (text, code) => {
    expect(codes(text.slice(0, 40_000))).toContain(code);
  });

  it('says which columns it doesn’t use', () => {
    expect(codes('length,stock,colour\n500,ash6,red')).toEqual(['list.column-ignored list/row1']);
  });

  it('never throws, whatever is pasted', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200, unit: 'binary' }), (text) => {
        readList(text, shop);
        readList(`length,width,count,stock\n${text}`, shop);
      }),
      { seed: 2, numRuns: 300 },
    );
  });
});
