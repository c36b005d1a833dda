import { describe, expect, test } from 'vitest';
import { demoDocument } from './build/built.ts';
import { cutFrom } from './cut-from-list.ts';

const sheet = {
  id: 'ply',
  name: 'Plywood',
  material: 'birch-plywood',
  form: 'sheet',
  nominal: '18 mm',
  thickness: '17.6 mm',
  trim: '10 mm',
};
const big = { id: 'big', length: '2500 mm', width: '1250 mm', price: 60 };
const half = { id: 'half', length: '1250 mm', width: '1250 mm', price: 45 };
const tools = demoDocument().shop.tools as { kind: string }[];
const shortRail = tools.map((t) => (t.kind === 'guide-rail' ? { ...t, length: '1400 mm' } : t));

const codes = (plan: ReturnType<typeof cutFrom>) =>
  plan.snags.filter((s) => s.level !== 'note').map((s) => s.code);

describe('a list in its shop', () => {
  test('a sheet that the rail is too short for is told', () => {
    const plan = cutFrom([{ ...sheet, stock: [big] }], 'length,width,count,stock\n700,400,6,ply', {
      tools: shortRail,
    });
    expect(codes(plan)).toEqual(['tools.rail-short']);
  });

  test('where the rail reaches along other stock, that is cut', () => {
    const list = 'length,width,count,stock\n700,400,5,ply';
    const lots = [{ ...sheet, stock: [big, half] }];
    const used = (plan: ReturnType<typeof cutFrom>) => plan.breakdown.purchases.map((p) => p.stock);
    expect(used(cutFrom(lots, list))).toEqual(['big']);
    const plan = cutFrom(lots, list, { tools: shortRail });
    expect(used(plan)).toEqual(['half']);
    expect(codes(plan)).toEqual([]);
    // A sheet of one's own that stays on the rack is told.
    const own = [{ ...sheet, stock: [{ ...big, have: 1 }, half] }];
    expect(codes(cutFrom(own, list, { tools: shortRail }))).toEqual(['stock.beyond-the-rail']);
    // What only the large sheet holds still comes from it, and is told.
    expect(codes(cutFrom(lots, 'length,width,stock\n1900,400,ply', { tools: shortRail }))).toEqual([
      'tools.rail-short',
    ]);
  });

  test('a leftover longer than the rail is cut across first', () => {
    const left = { id: 'left', length: '2000 mm', width: '500 mm', have: 1, trim: '0 mm' };
    const plan = cutFrom([{ ...sheet, stock: [left] }], 'length,width,count,stock\n900,240,4,ply', {
      tools: shortRail,
    });
    expect(plan.breakdown.missing).toEqual([]);
    expect(codes(plan)).toEqual([]);
  });

  test('a saw that doesn’t go through, and sheets that nobody lifts, are told', () => {
    const shallow = tools.map((t) => (t.kind === 'circular-saw' ? { ...t, reach: '15 mm' } : t));
    const weak = { tools: shallow, people: [{ id: 'maker', lift: '20 kg' }] };
    const plan = cutFrom([{ ...sheet, stock: [big] }], 'length,width,count,stock\n700,400,6,ply', weak);
    expect(codes(plan)).toEqual(['tools.saw-shallow', 'lifting.sheet']);
  });

  test('what finds no stock is told once for a row, and why', () => {
    const lots = [{ ...sheet, stock: [big] }];
    const plan = cutFrom(lots, 'name,length,width,count,stock\nlong,2600,300,3,ply\nwide,1245,1245,1,ply');
    const says = plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence);
    expect(says).toEqual([
      'P1, the long, is 2600 mm × 300 mm, larger than any stock of “Plywood”. The same goes for P2, P3.',
      'P4, the wide, is 1245 mm × 1245 mm, larger than any stock of “Plywood” once that is trimmed.',
    ]);
  });

  test('a set of equal parts that is too wide side by side follows end to end', () => {
    const lots = [{ ...sheet, stock: [big] }];
    const plan = cutFrom(lots, 'length,width,count,stock,strip\n180,596,3,ply,doors\n300,200,2,ply,fronts');
    expect(plan.breakdown.missing).toEqual([]);
    const [doors, fronts] = plan.breakdown.lots[0]!.problem.problem.groups!;
    expect([doors!.follow, fronts!.follow]).toEqual(['length', 'width']);
  });
});
