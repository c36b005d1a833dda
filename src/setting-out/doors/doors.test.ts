import { describe, expect, test } from 'vitest';
import { cupboard } from '../../../test/doors/door-job.ts';
import { doorFaults } from '../../../test/generate/judge-doors.ts';
import { boxOf } from '../../../test/generate/judge-set-out.ts';
import { DOORS, hingeCount } from '../../materials/index.ts';
import { toMm } from '../../measure/index.ts';
import { type SetOut, setOut } from '../index.ts';

const mm = (piece: SetOut, t: Parameters<SetOut['ledger']['ticks']>[0]) => toMm(piece.ledger.ticks(t));
const part = (piece: SetOut, id: string) => piece.parts.find((p) => p.id === id)!;
const codes = (piece: SetOut) => piece.snags.map((s) => s.code);

describe('an overlay door', () => {
  const piece = setOut(cupboard());
  const coat = part(piece, 'coat-door/door');

  test('adds its thickness before the case: the depth stays as asked', () => {
    // 6 mm of overhang, 17.8 of door and 1.5 of bumper, then sides of 348.3 and a back of 6.4: 380 mm.
    expect(mm(piece, part(piece, 'case/left-side').width)).toBeCloseTo(380 - 6 - 17.8 - 1.5 - 6.4, 6);
    expect(boxOf(piece, coat).min[1]).toBe(6 * 3200);
  });

  test('covers half of what parts two openings, less half the gap; two gaps of 3 mm between three doors', () => {
    const boxes = piece.doors.map((d) => boxOf(piece, part(piece, d.part)));
    expect(boxes[1]!.min[0] - boxes[0]!.max[0]).toBe(3 * 3200);
    expect(boxes[2]!.min[0] - boxes[1]!.max[0]).toBe(3 * 3200);
    expect(piece.doors.map((d) => d.hinge)).toEqual(['full', 'half', 'full']);
  });

  test('has its cups 35 mm wide, 12.5 deep, 3 to 6 mm from its edge, plates 37 mm back (common practice)', () => {
    expect(doorFaults(piece)).toEqual([]);
    const cups = coat.features.filter((f) => f.kind === 'hole' && f.use === 'cup');
    expect(cups.map((f) => f.kind === 'hole' && [mm(piece, f.diameter), mm(piece, f.depth!)])).toEqual([
      [35, 12.5],
      [35, 12.5],
    ]);
    expect(piece.doors[0]!.hinges.map((t) => mm(piece, t))).toEqual([100, 778]);
  });
});

test('an inset door leaves 1.5 to 2.5 mm all round, an overlay one about 3 (common practice)', () => {
  expect(toMm(DOORS.insetGap.value)).toBeGreaterThanOrEqual(1.5);
  expect(toMm(DOORS.insetGap.value)).toBeLessThanOrEqual(2.5);
  expect(toMm(DOORS.overlayGap.value)).toBe(3);
});

describe('what stands behind inset doors', () => {
  const piece = setOut(
    cupboard({
      full: { suits: 'inset' },
      'coat-door': { hang: 'inset', over: ['coats'] },
      'bag-doors': { hang: 'inset', over: ['bags'] },
    }),
  );

  test('is set back by the door and 3 mm more', () => {
    const door = boxOf(piece, part(piece, 'coat-door/door'));
    const shelf = boxOf(piece, part(piece, 'hooks/shelf'));
    expect(shelf.min[1] - door.max[1]).toBe(3 * 3200);
    // The divider between two doors of their own comes to the front: they hang on it.
    expect(boxOf(piece, part(piece, 'inside/divider:1')).min[1]).toBe(door.min[1]);
    expect(doorFaults(piece)).toEqual([]);
  });

  test('is set back wholly where one door closes both openings', () => {
    const both = setOut(
      cupboard({
        full: { suits: 'inset' },
        'coat-door': { hang: 'inset', over: ['coats', 'bags'], count: 2 },
        'bag-doors': undefined,
      }),
    );
    const door = boxOf(both, part(both, 'coat-door/left-door'));
    expect(boxOf(both, part(both, 'inside/divider:1')).min[1] - door.max[1]).toBe(3 * 3200);
  });
});

test('hinges by height and mass: 2 to 900 mm, 3 to 1600, 4 to 2000, or by 6, 12, 17 kg (common practice, from memory)', () => {
  expect([600, 900, 901, 1600, 1999].map((h) => hingeCount(h, 5)!.hinges)).toEqual([2, 2, 3, 3, 4]);
  expect([5, 7, 13, 18].map((kg) => hingeCount(800, kg)!.hinges)).toEqual([2, 3, 4, 5]);
  expect(hingeCount(2600, 5)).toBeUndefined();
});

describe('a hinge', () => {
  test('keeps clear of a shelf that ends at its post', () => {
    // A shelf 92 mm above the bottom is where the lower hinge, 100 mm up the door, would be.
    const piece = setOut(cupboard({ hooks: { at: '92 mm' } }));
    const shelf = boxOf(piece, part(piece, 'hooks/shelf'));
    const door = boxOf(piece, part(piece, 'coat-door/door'));
    const at = piece.doors[0]!.hinges.map((t) => door.min[2] + piece.ledger.ticks(t));
    for (const z of at) expect(z < shelf.min[2] - 40 * 3200 || z > shelf.max[2] + 40 * 3200).toBe(true);
    expect(codes(piece)).toEqual([]);
  });

  test('keeps clear of a shelf let into the other face of its post', () => {
    // The shelf of the bags goes 6 mm into the 18 mm post; screws of 12 mm from the other face would meet it.
    const piece = setOut(
      cupboard({ case: { joints: 'dado' }, 'coat-door': { hand: 'right' }, hooks: { at: '500 mm' } }, (job) =>
        job.design.records.push({ id: 'low', kind: 'shelf', parent: 'bags', at: '82 mm' }),
      ),
    );
    expect(codes(piece)).toEqual([]);
    const shelf = boxOf(piece, part(piece, 'low/shelf'));
    const post = boxOf(piece, part(piece, 'inside/divider:1'));
    expect(shelf.min[0]).toBeLessThan(post.max[0]);
    const door = boxOf(piece, part(piece, 'coat-door/door'));
    const [lowest] = piece.doors[0]!.hinges.map((t) => door.min[2] + piece.ledger.ticks(t));
    for (const z of [lowest! - 16 * 3200, lowest! + 16 * 3200])
      expect(z < shelf.min[2] - 2 * 3200 || z > shelf.max[2] + 2 * 3200).toBe(true);
  });

  test('is refused where its screws would come through, or its cup', () => {
    expect(codes(setOut(cupboard({ 'hinge-screw': { length: '16 mm' } })))).toContain(
      'hinges.screw-too-long',
    );
    expect(codes(setOut(cupboard({ full: { deep: '16 mm' } })))).toContain('hinges.cup-too-deep');
  });

  test('must be made for its door; the cure names one that is', () => {
    const piece = setOut(cupboard({ 'coat-door': { hinge: 'half' } }));
    const snag = piece.snags.find((s) => s.code === 'hinges.wrong-kind')!;
    expect(snag.cures[0]!.edits).toEqual([{ record: 'coat-door', field: 'hinge', value: 'full' }]);
    expect(codes(setOut(cupboard({ half: { suits: 'inset' } })))).toContain('hinges.none-suits');
  });
});

test('a gap that leaves nothing of a door is told', () => {
  expect(codes(setOut(cupboard({ 'coat-door': { gap: '800 mm' } })))).toContain('doors.no-room');
});

test('edging that leaves nothing of a door is told on its strip, not as gaps', () => {
  const job = cupboard();
  const thick = {
    ...{ id: 'thick', name: 'Thick strips', material: 'beech-european', form: 'strip' },
    ...{ nominal: '400 mm', thickness: '400 mm', width: '40 mm' },
    stock: [{ id: 'thick-length', length: '3000 mm' }],
  } as (typeof job.shop.rack.lots)[number];
  const edging = { id: 'lips', kind: 'edging', parent: 'coat-door', strip: 'thick' } as const;
  const piece = setOut({
    ...job,
    design: { ...job.design, records: [...job.design.records, edging] },
    shop: { ...job.shop, rack: { ...job.shop.rack, lots: [...job.shop.rack.lots, thick] } },
  });
  const told = piece.snags.filter((s) => s.code === 'doors.no-room');
  expect(told.map((s) => `${s.where.path}: ${s.sentence}`)).toEqual([
    'design/records/lips/strip: The edging leaves no board of “coat-door”.',
  ]);
});
