import { describe, expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { checkInput, codes, cured, glazeCabinet, withPlaces } from '../../test/checks/checked-job.ts';
import { enoughMaterial } from './enough-material.ts';

const LARGE = {
  id: 'large',
  name: 'Large board',
  material: 'birch-plywood',
  form: 'sheet',
  nominal: '18 mm',
  stock: [{ id: 'large-sheet', length: '3000 mm', width: '1500 mm', price: 120 }],
};

test('the glaze cabinet has its material; what is to be bought is told, with counts', () => {
  const snags = enoughMaterial(checkInput(glazeCabinet()));
  expect(codes(snags)).toEqual(['screws.to-buy', 'stock.to-buy']);
  expect(snags.every((s) => s.level === 'note')).toBe(true);
  const screws = snags.find((s) => s.code === 'screws.to-buy')!;
  expect(screws.figures!.margin).toBe(screws.figures!.value - screws.figures!.limit);
  expect(screws.sentence).toContain(`${-screws.figures!.margin} × Pocket screw`);
});

test('a rack with all it takes has nothing to say', () => {
  const job = withPlaces(bookcase({ width: '800 mm', load: '10 kg' }), {
    'shop/rack/lots/sides/thickness': '18 mm',
    'shop/rack/lots/shelving/thickness': '18 mm',
    'shop/rack/lots/sides/stock/0/have': 1,
    'shop/rack/lots/shelving/stock/0/have': 1,
  });
  expect(enoughMaterial(checkInput(job))).toEqual([]);
});

describe('a part without stock', () => {
  const small = { stock: [{ id: 'short', length: '600 mm', width: '400 mm', price: 10 }] };
  const job = bookcase({ width: '900 mm', load: '10 kg', board: small, lots: [LARGE] });

  test('stops the work, naming part, lot and size', () => {
    const snag = enoughMaterial(checkInput(job)).find((s) => s.code === 'stock.none-for-part')!;
    expect(snag).toMatchObject({
      level: 'stop',
      where: { part: 'shelf/shelf', record: 'shelf', lot: 'shelving' },
    });
    expect(snag.sentence).toBe(
      'E1, the shelf, is 864 mm × 300 mm, larger than any stock of “board shelving”.',
    );
  });

  test('another board of the same material is offered, and does cure it', () => {
    const snag = enoughMaterial(checkInput(job)).find((s) => s.code === 'stock.none-for-part')!;
    const cure = snag.cures.find((c) => c.edits)!;
    expect(cure.edits![0]).toMatchObject({ record: 'shelf', field: 'board' });
    expect(codes(enoughMaterial(checkInput(cured(job, cure.edits!))))).not.toContain('stock.none-for-part');
  });

  test('nothing is offered that is as small', () => {
    const snags = enoughMaterial(
      checkInput(bookcase({ width: '3100 mm', load: '1 kg', board: small, lots: [] })),
    ).filter((s) => s.code === 'stock.none-for-part');
    expect(snags.length).toBeGreaterThan(0);
    expect(snags.flatMap((s) => s.cures.flatMap((c) => c.edits ?? []))).toEqual([]);
  });

  test('stock that is used up says so, and asks for more', () => {
    const few = { stock: [{ id: 'one', length: '900 mm', width: '320 mm', have: 1 }], trim: '0 mm' };
    const snags = enoughMaterial(
      checkInput(bookcase({ width: '900 mm', load: '1 kg', board: few, shelf: { count: 2 } })),
    ).filter((s) => s.code === 'stock.none-for-part');
    expect(snags).toHaveLength(1);
    expect(snags[0]!.sentence).toContain('is used up before');
  });
});

test('a board of the case that is too small is changed for the whole case', () => {
  const job = withPlaces(bookcase({ width: '900 mm', load: '1 kg', lots: [LARGE] }), {
    'shop/rack/lots/sides/stock': [{ id: 'short', length: '700 mm', width: '400 mm', price: 10 }],
  });
  const snag = enoughMaterial(checkInput(job)).find((s) => s.code === 'stock.none-for-part')!;
  const cure = snag.cures.find((c) => c.edits)!;
  expect(cure.edits![0]).toMatchObject({ record: 'case', field: 'board' });
  expect(codes(enoughMaterial(checkInput(cured(job, cure.edits!))))).not.toContain('stock.none-for-part');
});

test('a lot that was never measured is told, a measured one is not', () => {
  const job = bookcase({ width: '800 mm', load: '10 kg', board: { thickness: '17.7 mm' } });
  const lots = enoughMaterial(checkInput(job)).filter((s) => s.code === 'stock.not-measured');
  expect(lots.map((s) => [s.where.lot, s.level])).toEqual([['sides', 'note']]);
  expect(lots[0]!.sentence).toContain('nominal 18 mm');
});

test('a cut plan that the judge rejects stops the work', () => {
  const input = checkInput(bookcase({ width: '800 mm', load: '10 kg' }));
  const [first, ...rest] = input.breakdown.lots;
  const findings = [{ code: 'cost', at: 'cost', says: 'the cost is 5, not 6.' }] as const;
  const bad = { ...input.breakdown, lots: [{ ...first!, verdict: { holds: false, findings } }, ...rest] };
  const snags = enoughMaterial({ ...input, breakdown: bad });
  expect(snags.find((s) => s.code === 'breakdown.not-verified')).toMatchObject({
    level: 'stop',
    sentence: expect.stringContaining('does not hold: the cost is 5, not 6. This is a fault of the program'),
  });
  expect(codes(enoughMaterial(input))).not.toContain('breakdown.not-verified');
});
