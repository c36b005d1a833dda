import { expect, test } from 'vitest';
import { chestJob } from '../../test/lids/chest-job.ts';
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
