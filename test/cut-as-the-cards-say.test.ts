import { describe, expect, test } from 'vitest';
import { sheetIsCut } from '../src/plan/index.ts';
import { cutFrom, mmOf, sawnByCards } from './cut-from-list.ts';

const KERF = 2.2;
const sheet = { id: 'ply', name: 'Plywood', material: 'birch-plywood', form: 'sheet', nominal: '18 mm' };
const strip = {
  id: 'ash',
  name: 'Ash',
  material: 'ash-white',
  form: 'strip',
  nominal: '20 mm',
  width: '20 mm',
};
const flaw = (x: number, length: number, y?: number, width?: number) => ({
  id: `at-${x}`,
  x: `${x} mm`,
  length: `${length} mm`,
  ...(y === undefined ? {} : { y: `${y} mm`, width: `${width} mm` }),
});

describe('what the cards saw', () => {
  test.each([
    [
      'boards with a knot behind the first crosscut',
      {
        ...sheet,
        trim: '15 mm',
        stock: [
          { id: 'plank', length: '2.6 m', width: '240 mm', have: 1, flaws: [flaw(900, 50, 80, 40)] },
          { id: 'wide', length: '2.5 m', width: '300 mm', price: 40 },
        ],
      },
      'length,width,count,stock\n800,90,6,ply\n500,200,3,ply',
    ],
    [
      'a sheet with voids among small parts, both ways',
      {
        ...sheet,
        trim: '10 mm',
        stock: [
          {
            id: 'off',
            length: '1500 mm',
            width: '800 mm',
            have: 1,
            flaws: [flaw(700, 60, 400, 60), flaw(1200, 30, 150, 30)],
          },
          { id: 'big', length: '2.5 m', width: '1250 mm', price: 90 },
        ],
      },
      'length,width,count,stock\n210,95,24,ply\n320,150,6,ply',
    ],
    [
      'a strip with a knot',
      {
        ...strip,
        stock: [
          { id: 'knotty', length: '2400 mm', have: 1, flaws: [flaw(500, 40)] },
          { id: 'new', length: '2400 mm', price: 5 },
        ],
      },
      'length,count,stock\n300,3,ash\n450,3,ash',
    ],
    [
      'a strip of many short pieces',
      { ...strip, stock: [{ id: 'knotty', length: '2400 mm', have: 1, price: 9, flaws: [flaw(1500, 25)] }] },
      'length,count,stock\n95,22,ash',
    ],
  ])('lies beside every flaw: %s', (_, lot, list) => {
    const plan = cutFrom([lot], list);
    expect(plan.breakdown.missing).toEqual([]);
    expect(plan.breakdown.lots.flatMap((l) => l.verdict.findings)).toEqual([]);
    const { wood, sizeOf } = sawnByCards(plan, KERF);
    for (const { sheets } of plan.breakdown.lots)
      for (const { name, source } of sheets)
        for (const f of source.flaws) {
          const [x, y, length, width] = [f.x, f.y, f.length, f.width].map((t) => mmOf(plan, t));
          for (const { mark } of plan.setOut.parts) {
            const w = wood.get(mark)!;
            const beside =
              w.sheet !== name ||
              x! + length! <= w.x ||
              w.x + w.length <= x! ||
              (lot.form === 'sheet' && (y! + width! <= w.y || w.y + w.width <= y!));
            expect(beside, `${mark} of ${name}`).toBe(true);
          }
        }
    for (const { mark, cut } of plan.setOut.parts) {
      const [length, width] = sizeOf(mark);
      expect(length, mark).toBeCloseTo(mmOf(plan, cut.length), 6);
      expect(width, mark).toBeCloseTo(mmOf(plan, cut.width), 6);
    }
    // How flawed stock must lie is told before it is sawn.
    const says = plan.build.operations.find((o) =>
      o.lines.some((l) => l.includes('where the plan has them')),
    );
    expect(says?.id).toMatch(/^[SL]\d+\/(lay|true-edge)$/);
  });

  test('parts that lie across the grain keep their length when the last of a row is trimmed', () => {
    const lot = {
      ...sheet,
      trim: '10 mm',
      stock: [{ id: 'big', length: '2.5 m', width: '1250 mm', price: 9 }],
    };
    const plan = cutFrom(
      [lot],
      'length,width,count,grain,stock\n700,400,2,,ply\n600,380,4,free,ply\n90,500,2,,ply',
      {
        cutting: { carryAfter: 1, hold: '60 mm', stages: 3, first: 'crosscut' },
      },
    );
    const { sizeOf } = sawnByCards(plan, KERF);
    const wrong = plan.setOut.parts.filter(
      ({ mark, cut }) =>
        Math.abs(sizeOf(mark)[0]! - mmOf(plan, cut.length)) > 1e-6 ||
        Math.abs(sizeOf(mark)[1]! - mmOf(plan, cut.width)) > 1e-6,
    );
    expect(wrong.map((p) => p.mark)).toEqual([]);
    const trims = plan.build.operations.filter((o) => /^Trim P\d+ /.test(o.title));
    expect(trims.map((o) => o.title)).toContain('Trim P6 (piece of row 3) to width');
  });

  test('a row of equal parts is ripped at one setting after another, with no cut that only takes waste off before', () => {
    const lot = {
      ...sheet,
      trim: '10 mm',
      stock: [{ id: 'big', length: '2.5 m', width: '1250 mm', price: 9 }],
    };
    const plan = cutFrom([lot], 'length,width,count,stock\n860,300,4,ply');
    const cuts = plan.build.operations.filter((o) => o.does.act === 'saw');
    const told = cuts.map((o) => `${o.kind} ${o.does.act === 'saw' && mmOf(plan, o.does.at)}`);
    expect(told).toEqual([
      'true-edge 10',
      'square-end 10',
      'crosscut 860',
      'rip 300',
      'rip 300',
      'rip 300',
      'rip 300',
    ]);
  });
});

test('a leftover with a flaw goes back on the rack with it, and gives no part again through it', () => {
  const off = {
    id: 'off',
    length: '1500 mm',
    width: '700 mm',
    have: 1,
    flaws: [{ ...flaw(950, 40, 300, 40), name: 'void' }],
  };
  const lot = { ...sheet, trim: '10 mm', stock: [off] };
  const plan = cutFrom([lot], 'length,width,count,stock\n600,500,1,ply');
  const left = plan.breakdown.leftovers.find((l) => l.flaws.length > 0)!;
  const { wood } = sawnByCards(plan, KERF);
  const w = wood.get(left.name)!;
  const edit = sheetIsCut(plan, 'S1');
  if (edit?.edit !== 'all') throw new Error('no edit');
  const rack = edit.of.find((e) => 'at' in e && e.at.endsWith('/stock'));
  const stock = (rack as unknown as { value: { id: string; flaws?: Record<string, string>[] }[] }).value;
  const there = stock.find((s) => s.id === left.name)!;
  expect(there.flaws).toMatchObject([{ name: 'void', y: `${Math.floor(300 - w.y)} mm` }]);
  expect(Number.parseFloat(there.flaws![0]!.x!)).toBeLessThanOrEqual(950 - w.x);
  expect(Number.parseFloat(there.flaws![0]!.x!)).toBeGreaterThan(950 - w.x - 1.01);
  // The flaw lies so that what is clear of it is too small for the part.
  expect(plan.breakdown.spares.map((s) => s.from)).toEqual(['nothing']);
});
