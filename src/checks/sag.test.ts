import { describe, expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { codes, cured, glazeCabinet, setOutInput, withPlaces } from '../../test/checks/checked-job.ts';
import type { JobDocument } from '../job/index.ts';
import { bend, loadedSurface } from './loaded-surface.ts';
import { sag } from './sag.ts';

const nothing = () => ({ kg: 0, centreMm: [0, 0, 0] as const });
const ofShelf = (job: JobDocument, weigh = setOutInput(job).weigh) =>
  sag({ ...setOutInput(job), weigh }).filter((s) => s.where.record === 'shelf');

describe('Architectural Woodwork Standards, 1st ed. (2009), section 10, 4.4.14.10.11 to .13 (read)', () => {
  // Material, thickness in inches, load in lb/ft2, the published longest span in inches at span/144. The published
  // spans are whole inches, most of them cut down, and know no weight of the shelf itself.
  test.each([
    ['fir-plywood', 0.75, 40, 40],
    ['fir-plywood', 0.75, 50, 37],
    ['fir-plywood', 1, 40, 53],
    ['fir-plywood', 1, 50, 49],
    ['fir-core-hardwood-plywood', 0.75, 40, 49],
    ['fir-core-hardwood-plywood', 0.75, 50, 46],
    ['fir-core-hardwood-plywood', 1, 40, 66],
    ['fir-core-hardwood-plywood', 1, 50, 61],
    ['oak-northern-red', 0.75, 40, 49],
    ['oak-northern-red', 0.75, 50, 46],
    ['oak-northern-red', 1, 40, 66],
    ['oak-northern-red', 1, 50, 61],
  ])('%s, %d in, %d lb/ft2: up to %d in', (material, thickness, psf, published) => {
    const shelfOf = (span: number) =>
      bookcase({
        units: 'in',
        width: `${span + 1.5} in`,
        depth: '12 in',
        box: { load: '1 lb' },
        load: `${((psf * span * 12) / 144).toFixed(4)} lb`,
        board: { material, nominal: `${thickness} in` },
        lots: [],
      });
    const verdict = (span: number) => {
      const job = withPlaces(shelfOf(span), { 'shop/rack/lots/sides/thickness': '0.75 in' });
      return codes(ofShelf(job, nothing));
    };
    expect(verdict(published - 0.05)).not.toContain('sag.beyond-limit');
    expect(verdict(published + 0.75)).toContain('sag.beyond-limit');
  });

  test('a shelf for which no load is stated is reckoned as general shelving, 40 lb/ft2', () => {
    const of = (span: number) =>
      withPlaces(
        bookcase({
          units: 'in',
          width: `${span + 1.5} in`,
          depth: '12 in',
          board: { material: 'fir-plywood', nominal: '0.75 in' },
        }),
        { 'shop/rack/lots/sides/thickness': '0.75 in' },
      );
    expect(codes(ofShelf(of(39.95), nothing))).toEqual(['sag.seen']);
    const [snag] = ofShelf(of(40.75), nothing);
    expect(snag?.code).toBe('sag.beyond-limit');
    expect(snag?.sentence).toContain('40 lb/ft2');
    expect(snag?.figures?.unit).toBe('in');
  });
});

describe('birch plywood, 900 mm, 300 deep, 17.6 thick, 40 kg: 5 w L^4 / (384 E I), worked by hand', () => {
  // I = 300 x 17.6^3 / 12 = 136 294 mm4; w = 40 x 9.80665 / 900 = 0.43585 N/mm; E = 10 048 MPa: 2.719 mm.
  const job = bookcase({
    width: '936 mm',
    load: '40 kg',
    board: { thickness: '17.6 mm' },
    lots: [
      {
        id: 'thick',
        name: 'Birch 21',
        material: 'birch-plywood',
        form: 'sheet',
        nominal: '21 mm',
        stock: [{ id: 't', length: '2500 mm', width: '1250 mm', price: 110 }],
      },
      {
        id: 'thicker',
        name: 'Birch 24',
        material: 'birch-plywood',
        form: 'sheet',
        nominal: '24 mm',
        stock: [{ id: 'u', length: '2500 mm', width: '1250 mm', price: 130 }],
      },
    ],
  });

  test('at once it keeps to the standard, after years the eye sees it (k_def 0.8: 1.8 times)', () => {
    const [snag] = ofShelf(job, nothing);
    expect(snag).toMatchObject({
      code: 'sag.seen',
      level: 'mind',
      where: { record: 'shelf', part: 'shelf/shelf' },
    });
    expect(snag!.figures!.value).toBeCloseTo(2.719 * 1.8, 2);
    expect(snag!.figures!.limit).toBeCloseTo(900 / 384, 3);
    expect(snag!.sentence).toContain('2.7 mm at once and 4.9 mm after years');
  });

  test('its own weight counts', () => {
    const without = ofShelf(job, nothing)[0]!.figures!.value;
    const own = 0.3 * 0.9 * 0.0176 * 680;
    expect(ofShelf(job)[0]!.figures!.value / without).toBeCloseTo((40 + own) / 40, 3);
  });

  test('the thinnest board that does is the cure, and does cure it', () => {
    const cure = ofShelf(job)[0]!.cures[0]!;
    expect(cure.edits).toEqual([{ record: 'shelf', field: 'board', value: 'thicker' }]);
    expect(ofShelf(cured(job, cure.edits!))).toEqual([]);
    const thinner = [{ record: 'shelf', field: 'board', value: 'thick' }];
    expect(codes(ofShelf(cured(job, thinner)))).toEqual(['sag.seen']);
  });

  test('the span that it says would do, does, with all of the load still on it', () => {
    const cures = ofShelf(job)[0]!.cures.map((c) => c.says);
    expect(cures).toContain('Put an upright in the middle of the span.');
    const says = cures.find((c) => c.startsWith('Bring the span'))!;
    const span = Number(/down to (\d+) mm/.exec(says)![1]);
    const at = (mm: number) => ofShelf(withPlaces(job, { 'design/records/bookcase/width': `${mm + 36} mm` }));
    expect(at(span)).toEqual([]);
    expect(at(span + 1)).not.toEqual([]);
  });

  test('the load that it says would do, does', () => {
    const says = ofShelf(job)[0]!.cures.at(-1)!.says;
    const kg = Number(/no more than (\d+) kg/.exec(says)![1]);
    expect(kg).toBeGreaterThan(5);
    expect(ofShelf(withPlaces(job, { 'design/records/shelf/load': `${kg} kg` }))).toEqual([]);
    expect(ofShelf(withPlaces(job, { 'design/records/shelf/load': `${kg + 1} kg` }))).not.toEqual([]);
  });
});

test('an opening of a fixed width is made narrower where others can take up the rest', () => {
  const job = bookcase({
    width: '1600 mm',
    load: '40 kg',
    records: [
      { id: 'wide', kind: 'opening', parent: 'inside', size: '900 mm' },
      { id: 'rest', kind: 'opening', parent: 'inside' },
    ],
    shelf: { parent: 'wide' },
    inside: { split: 'across' },
  });
  const cure = ofShelf(job)[0]!.cures.find((c) => c.edits?.[0]?.field === 'size')!;
  expect(cure.edits![0]).toMatchObject({ record: 'wide', field: 'size' });
  const after = cured(job, cure.edits!);
  expect(setOutInput(after).setOut.snags).toEqual([]);
  expect(ofShelf(after)).toEqual([]);
});

test('shelves that are alike share one snag', () => {
  const job = bookcase({ width: '936 mm', load: '60 kg', shelf: { count: 3 } });
  const snags = ofShelf(job);
  expect(snags).toHaveLength(1);
  expect(snags[0]!.sentence).toMatch(/^Each of E1, E2 and E3 would sag/);
});

describe('how the grain runs', () => {
  const input = setOutInput(glazeCabinet());
  const on = (id: string) => loadedSurface(input, input.setOut.surfaces.find((s) => s.part === id)!);

  test('shelves and top span along their grain; a bottom on its base spans across it', () => {
    expect(on('jars1/shelf:1').grain).toBe('along');
    expect(on('top/top').grain).toBe('along');
    expect(on('case/bottom').grain).toBe('across');
  });

  test('a bottom carries its load over all bays, spread', () => {
    const bottom = on('case/bottom');
    expect(bottom.loadKg).toBe(120);
    expect(bottom.breadthMm).toBeGreaterThan(3 * bottom.spanMm);
  });

  test('birch is softer across its face grain: 7452 for 10048 MPa (Handbook of Finnish Plywood, from memory)', () => {
    const lot = input.job.shop.rack.lots[0]!;
    const sagOf = (grain: 'along' | 'across') =>
      bend(input, { ...on('jars1/shelf:1'), grain, edging: [] }, lot)!.sagMm;
    expect(sagOf('across') / sagOf('along')).toBeCloseTo(10048 / 7452, 6);
  });

  test('where no stiffness across the grain is known, that is said and nothing is guessed', () => {
    const job = withPlaces(glazeCabinet(), { 'shop/rack/lots/birch18/material': 'fir-plywood' });
    const snags = sag(setOutInput(job));
    expect(snags.map((s) => [s.code, s.level, s.where.part])).toEqual([
      ['sag.stiffness-unknown', 'note', 'case/bottom'],
    ]);
  });
});

test('a solid lipping glued to the front stiffens its shelf by its own E b t^3 / 12, and no other part', () => {
  const input = setOutInput(glazeCabinet());
  const shelf = loadedSurface(input, input.setOut.surfaces.find((s) => s.part === 'jars1/shelf:1')!);
  expect(shelf.edging).toHaveLength(1);
  expect(shelf.edging[0]).toMatchObject({ breadthMm: 6, lowerMm: 0, moeMpa: 12000 });
  expect(shelf.edging[0]!.upperMm).toBeCloseTo(17.6, 9);
  const lot = input.job.shop.rack.lots[0]!;
  const [lipped, bare] = [bend(input, shelf, lot)!, bend(input, { ...shelf, edging: [] }, lot)!];
  expect(bare.sagMm / lipped.sagMm).toBeCloseTo(1 + (12000 * 6) / (10048 * shelf.breadthMm), 6);
});

test('the glaze cabinet keeps to both limits', () => {
  expect(sag(setOutInput(glazeCabinet()))).toEqual([]);
});

describe('thicker boards are offered in the field that names the board', () => {
  const birch = (id: string, nominal: string) => ({
    id,
    name: `Birch ${nominal}`,
    material: 'birch-plywood',
    form: 'sheet',
    nominal,
    stock: [{ id: `${id}-sheet`, length: '2500 mm', width: '1250 mm', price: 130 }],
  });
  const lots = [birch('birch24', '24 mm')];
  const cureOf = (job: JobDocument, part: string) => {
    const found = sag(setOutInput(job)).find((s) => s.where.part === part);
    return found?.cures.find((c) => c.edits)?.edits;
  };

  test('the case’s own, for its bottom', () => {
    const job = bookcase({ width: '936 mm', load: '1 kg', box: { load: '40 kg' }, lots });
    const edits = cureOf(job, 'case/bottom')!;
    expect(edits).toEqual([{ record: 'case', field: 'board', value: 'birch24' }]);
    expect(sag(setOutInput(cured(job, edits))).filter((s) => s.where.part === 'case/bottom')).toEqual([]);
  });

  test('the case’s own, for a fixed shelf that has no record', () => {
    const job = bookcase({
      width: '836 mm',
      load: '1 kg',
      box: { load: '1 kg' },
      inside: { split: 'down' },
      records: [
        { id: 'low', kind: 'opening', parent: 'inside' },
        { id: 'high', kind: 'opening', parent: 'inside' },
      ],
      shelf: { parent: 'high' },
      lots,
    });
    const edits = cureOf(job, 'inside/divider:1')!;
    expect(edits).toEqual([{ record: 'case', field: 'board', value: 'birch24' }]);
    expect(sag(setOutInput(cured(job, edits))).filter((s) => s.where.part === 'inside/divider:1')).toEqual(
      [],
    );
  });

  test('the top’s own, for a top', () => {
    const records = [{ id: 'top', kind: 'top', parent: 'case', board: 'sides', load: '40 kg' }];
    const job = bookcase({ width: '936 mm', load: '1 kg', records, lots });
    const edits = cureOf(job, 'top/top')!;
    expect(edits).toEqual([{ record: 'top', field: 'board', value: 'birch24' }]);
    expect(sag(setOutInput(cured(job, edits))).filter((s) => s.where.part === 'top/top')).toEqual([]);
  });

  test('none that its edging would be too narrow for', () => {
    const strip = {
      id: 'lip',
      name: 'Lipping 6 x 20',
      material: 'ash-white',
      form: 'strip',
      nominal: '6 mm',
      width: '20 mm',
      stock: [{ id: 'lip-length', length: '2400 mm', price: 5 }],
    };
    const records = [{ id: 'lipping', kind: 'edging', parent: 'case', strip: 'lip' }];
    const job = bookcase({ width: '936 mm', load: '40 kg', records, lots: [...lots, strip] });
    expect(codes(sag(setOutInput(job)))).toContain('sag.seen');
    expect(cureOf(job, 'shelf/shelf')).toBeUndefined();
  });
});
