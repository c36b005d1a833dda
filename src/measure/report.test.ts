import { expect, test } from 'vitest';
import { Ledger } from './ledger.ts';
import { inMm, tracesOf } from './report.ts';
import { fromMm } from './ticks.ts';

function sheet() {
  const l = new Ledger();
  const width = l.document('case/width', fromMm(1580), '1580');
  const side = l.measured('lot/birch/thickness', fromMm(17.6));
  const clear = l.less('clear width', width, side, side);
  const report = {
    name: 'case',
    count: 2,
    width_mm: width,
    at_mm: [side, clear],
    parts: [{ size_mm: { length: clear, thickness: side }, note: undefined }],
    empty: null,
  };
  return { l, width, side, clear, report };
}

test('fields that end in _mm come out in millimetres, all else as it was', () => {
  const { l, report } = sheet();
  expect(inMm(l, report)).toEqual({
    name: 'case',
    count: 2,
    width_mm: 1580,
    at_mm: [17.6, 1544.8],
    parts: [{ size_mm: { length: 1544.8, thickness: 17.6 } }],
    empty: null,
  });
  expect(JSON.stringify(inMm(l, report))).not.toContain('note');
});

test('every traced length is found with the path of its field, and no plain number is', () => {
  const { width, side, clear, report } = sheet();
  expect(tracesOf(report)).toEqual([
    { path: 'width_mm', traced: width },
    { path: 'at_mm/0', traced: side },
    { path: 'at_mm/1', traced: clear },
    { path: 'parts/0/size_mm/length', traced: clear },
    { path: 'parts/0/size_mm/thickness', traced: side },
  ]);
});
