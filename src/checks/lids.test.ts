import { expect, test } from 'vitest';
import { chestJob, toyChest } from '../../test/lids/chest-job.ts';
import { checkJob } from '../job/index.ts';
import { setOut } from '../setting-out/index.ts';
import { lids } from './lids.ts';

function codes(changes: Parameters<typeof chestJob>[0]): string[] {
  const job = chestJob(changes);
  return lids({ job, setOut: setOut(job) }).map((s) => s.code);
}

test('the toy chest of the examples holds its lid, pinches nobody and lets air in', () => {
  expect(codes({})).toEqual([]);
});

test('a lid without stays falls: its moment is its weight at half its depth (statics)', () => {
  const job = chestJob({ 'lid-stay': undefined });
  const piece = setOut(job);
  const [lid] = piece.lids;
  const board = piece.parts.find((p) => p.id === lid!.part)!;
  const mm = (t: typeof board.length) => piece.ledger.ticks(t) / 3200;
  // Birch plywood, 680 kg/m3; a level lid turns about its rear edge.
  const kg = (680 * mm(board.length) * mm(board.width) * mm(board.thickness)) / 1e9;
  expect(lid!.kg).toBeCloseTo(kg, 1);
  expect(lid!.momentNm).toBeCloseTo((kg * 9.81 * mm(board.width)) / 2000, 1);
  expect(lids({ job, setOut: piece }).map((s) => s.code)).toEqual(['lids.falls']);
});

test('two stays hold what one does not; stays too weak for the lid are refused (statics)', () => {
  const [lid] = setOut(chestJob({})).lids;
  expect(lid!.stays!.holdNm).toBeGreaterThanOrEqual(lid!.momentNm);
  const weak = setOut(chestJob({ 'lid-stay': { holds: '2 N m' } }));
  expect(weak.snags.map((s) => s.code)).toEqual(['lids.stay-weak']);
});

test('a narrow gap pinches; without it, holes in the sides must let air in (EN 71-1 and ASTM F963, from memory)', () => {
  expect(codes({ front: { gap: '8 mm' }, air: undefined })).toEqual(['lids.pinch', 'lids.shut-in']);
  // 30 mm holes have 707 mm2 each.
  expect(codes({ front: { gap: '8 mm' } })).toEqual(['lids.pinch']);
  expect(codes({ front: { gap: '8 mm' }, air: { diameter: '20 mm' } })).toEqual([
    'lids.pinch',
    'lids.shut-in',
  ]);
});

test('in a shop that works in inches the gap is told and typed in them', () => {
  const job = chestJob({ front: { gap: '8 mm' } });
  const inches = { ...job, shop: { ...job.shop, units: 'in', precision: '1/32' } } as typeof job;
  const [snag] = lids({ job: inches, setOut: setOut(job) });
  expect(snag!.sentence).toContain('comes down to 5/16" above');
  expect(snag!.figures).toMatchObject({ unit: 'in' });
  expect(snag!.cures[0]!.edits).toEqual([{ record: 'front', field: 'gap', value: '19/32"' }]);
});

test('a shelf fixed in a chest closes the space under it, and one on pins does not', () => {
  const of = (record: object) => {
    const chest = toyChest({});
    chest.design.records.push({ id: 'tray', parent: 'inside', ...record });
    const rack = (chest as unknown as { shop: { rack: Record<string, unknown> } }).shop.rack;
    rack.pins = [{ id: 'pin', name: 'Pin', diameter: '5 mm', deep: '8 mm', stands: '8 mm', above: '2.5 mm' }];
    const read = checkJob(chest);
    if (!read.ok) throw new Error(read.snags[0]!.sentence);
    const piece = setOut(read.job);
    return lids({ job: read.job, setOut: piece });
  };
  const [snag, ...more] = of({ kind: 'shelf' });
  expect(more).toEqual([]);
  expect(snag).toMatchObject({ code: 'lids.out-of-reach', level: 'mind', where: { record: 'tray' } });
  expect(of({ kind: 'pins', count: 1 })).toEqual([]);
  // A hand comes past one that is set back far enough (120 mm, from memory).
  expect(of({ kind: 'shelf', setback: '100 mm' }).map((s) => s.code)).toEqual(['lids.out-of-reach']);
  expect(of({ kind: 'shelf', setback: '150 mm' })).toEqual([]);
});
