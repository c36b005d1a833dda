import { describe, expect, test } from 'vitest';
import { pinFaults } from '../../../test/generate/judge-pins.ts';
import { type Changes, changed, pantry } from '../../../test/pins/pantry-job.ts';
import { checkJob } from '../../job/index.ts';
import { toMm } from '../../measure/index.ts';
import { setOut } from '../set-out-job.ts';

function setOutOf(changes: Changes = {}) {
  const piece = setOut(pantry(changes));
  const mm = (t: Parameters<typeof piece.ledger.ticks>[0]) => toMm(piece.ledger.ticks(t));
  const holes = (id: string) =>
    piece.parts
      .find((p) => p.id === id)!
      .features.flatMap((f) =>
        f.kind === 'hole' && f.use === 'pin' ? [{ side: f.side, z: mm(f.at[0]), y: mm(f.at[1]), f }] : [],
      );
  return { piece, mm, holes, codes: piece.snags.map((s) => s.code) };
}

describe('rows of holes', () => {
  test('5 mm wide at 32 mm centres, 37 mm from the front edge (common practice)', () => {
    const { holes, mm } = setOutOf();
    const front = holes('case/left-side').filter((h) => h.y === 37);
    expect(mm(front[0]!.f.diameter)).toBe(5);
    expect(front.length).toBeGreaterThan(20);
    front.slice(1).forEach((h, i) => {
      expect(h.z - front[i]!.z).toBeCloseTo(32, 9);
    });
  });

  test('of two openings never meet in what parts them', () => {
    const { piece, holes } = setOutOf();
    expect(pinFaults(piece)).toEqual([]);
    const rows = (side: string) =>
      new Set(
        holes('inside/divider:1')
          .filter((h) => h.side === side)
          .map((h) => h.y),
      );
    const [show, under] = [rows('show'), rows('under')];
    expect([show.size, under.size]).toEqual([2, 2]);
    for (const y of show) for (const other of under) expect(Math.abs(y - other)).toBeGreaterThanOrEqual(7);
  });

  test('in a board thick enough for both, they stay where they were asked for', () => {
    const { holes } = setOutOf({
      ply18: { nominal: '30 mm', thickness: '30 mm' },
      'steel-pin': { deep: '9 mm' },
    });
    expect(new Set(holes('case/right-side').map((h) => Math.round(h.y * 100)))).toHaveProperty('size', 2);
    expect(holes('inside/divider:1').every((h) => h.y === 37 || h.y === 236.5)).toBe(true);
  });

  test('a level where a screw stands is left out', () => {
    const { piece } = setOutOf({
      'jar-shelves': { pitch: '12 mm', below: '20 mm', above: '20 mm', front: '45 mm' },
    });
    expect(piece.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(pinFaults(piece)).toEqual([]);
  });
});

describe('loose shelves', () => {
  test('are 3 mm (1/8 in) shorter than their opening (common practice), and lie on four pins', () => {
    const { piece, mm } = setOutOf();
    expect(piece.pinned).toHaveLength(7);
    for (const s of piece.pinned) {
      const part = piece.parts.find((p) => p.id === s.part)!;
      expect(mm(s.opening) - mm(part.length)).toBe(3);
      expect(s.pins).toBe(4);
    }
  });

  test('part their opening about equally, each on a level of its own', () => {
    const { piece, mm } = setOutOf();
    const heights = piece.pinned.filter((s) => s.record === 'tin-shelves').map((s) => mm(s.height));
    heights.slice(1).forEach((h, i) => {
      expect(Math.abs(h - heights[i]! - heights[0]!)).toBeLessThan(64);
    });
  });

  test('rest on their ends only, as the check of their sag reckons', () => {
    const { piece } = setOutOf();
    const loose = new Set(piece.pinned.map((s) => s.part));
    expect(piece.surfaces.filter((s) => loose.has(s.part)).map((s) => s.ends)).toEqual(
      Array(7).fill('resting'),
    );
  });
});

describe('what can’t be', () => {
  test.each<[string, Changes, string]>([
    ['a hole that comes through', { 'steel-pin': { deep: '16 mm' } }, 'pins.too-deep'],
    ['a shelf that slips off its pins', { 'jar-shelves': { clearance: '3 mm' } }, 'pins.shelf-falls'],
    ['rows too close to each other', { 'jar-shelves': { front: '130 mm', back: '130 mm' } }, 'pins.no-room'],
    ['no height for any hole', { 'jar-shelves': { below: '700 mm', above: '700 mm' } }, 'pins.no-room'],
    ['a shelf before its front pins', { 'jar-shelves': { setback: '60 mm' } }, 'pins.no-room'],
    [
      'more shelves than levels',
      { 'jar-shelves': { count: 20, below: '500 mm', above: '500 mm' } },
      'pins.no-level',
    ],
  ])('%s', (_, changes, code) => {
    const { piece, codes } = setOutOf(changes);
    expect(codes).toContain(code);
    const snag = piece.snags.find((s) => s.code === code)!;
    expect(snag.where.path).toContain('design/records/jar-shelves');
    expect(snag.cures.length).toBeGreaterThan(0);
  });

  test('no pins on the rack', () => {
    const job = changed({});
    job.shop.rack.pins = [];
    const read = checkJob(job);
    if (!read.ok) throw new Error('not read');
    expect(setOut(read.job).snags.map((s) => s.code)).toContain('pins.none');
  });

  test('a pin that the rack doesn’t have, an opening that is filled twice', () => {
    const job = changed({ 'jar-shelves': { pin: 'brass' } });
    job.design.records.push({ id: 'fixed', kind: 'shelf', parent: 'tins' });
    const read = checkJob(job);
    expect(read.ok ? [] : read.snags.map((s) => s.code).sort()).toEqual([
      'design.filled-twice',
      'document.no-such-pin',
    ]);
  });
});
