import { describe, expect, test } from 'vitest';
import { smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { setOut } from '../index.ts';

function outOf(shelf: object, depth = '380 mm', height = '900 mm') {
  const job = smallJob();
  job.design.records = [
    { id: 'box', kind: 'piece', name: 'A box', width: '600 mm', height, depth },
    { id: 'case', kind: 'case', parent: 'box', board: 'birch18' },
    { id: 'inside', kind: 'opening', parent: 'case' },
    { id: 'shelves', kind: 'shelf', parent: 'inside', ...shelf },
  ];
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const piece = setOut(read.job);
  const mm = (t: (typeof piece.overall)['width']) => piece.ledger.ticks(t) / 3200;
  const shelves = piece.parts.filter((p) => p.record === 'shelves');
  return { piece, mm, shelves, codes: piece.snags.map((s) => [s.code, s.level]) };
}

describe('shelves for a row of something', () => {
  test('leave its height and an inch of room below each, from below', () => {
    const { piece, mm, shelves, codes } = outOf({ rowOf: 'books-a5', count: 2 });
    expect(codes).toEqual([]);
    const floor = piece.openings.find((o) => o.id === 'inside')!.box.min[2];
    const under = shelves.map(
      (s) => mm(s.place.origin[2]) - mm(floor) - (s.place.thickness === '+z' ? 0 : mm(s.thickness)),
    );
    // A5 is 210 mm high (ISO 216), and 25 mm are left above.
    expect(under[0]).toBeCloseTo(235, 9);
    expect(under[1]! - under[0]!).toBeCloseTo(235 + mm(shelves[0]!.thickness), 9);
  });

  test('carry it, and so does what is below: 25 lb a foot of books is 37.2 kg/m', () => {
    const { piece, mm, shelves } = outOf({ rowOf: 'books-a4' });
    const surface = piece.surfaces.find((s) => s.part === shelves[0]!.id)!;
    expect(surface.loadKg).toBeCloseTo((mm(surface.span) / 1000) * 37.2, 0);
    expect(piece.surfaces.find((s) => s.part === 'case/bottom')!.loadKg).toBeCloseTo(surface.loadKg!, 0);
    const stated = outOf({ rowOf: 'books-a4', load: '5 kg' });
    expect(stated.piece.surfaces.find((s) => s.part === stated.shelves[0]!.id)!.loadKg).toBe(5);
  });

  test('too many, or too shallow for it, are told', () => {
    expect(outOf({ rowOf: 'lp-records', count: 3 }).codes).toEqual([['shelves.no-room', 'stop']]);
    expect(outOf({ rowOf: 'lp-records' }, '250 mm').codes).toEqual([['rows.stand-out', 'mind']]);
  });
});
