import { describe, expect, test } from 'vitest';
import { HANDLE_STRIP } from '../../../test/doors/handle-strip.ts';
import { fitFaults } from '../../../test/generate/judge-fits.ts';
import { slidingFaults } from '../../../test/generate/judge-sliding.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { toMm } from '../../measure/index.ts';
import { type SetOut, setOut } from '../index.ts';

/** The small job with sliding doors of 6.5 mm before all of its inside. */
function withDoors(fields: object = {}, change: (job: PlainJob) => void = () => {}): SetOut {
  const job = smallJob();
  job.design.records.push({
    id: 'slides',
    kind: 'sliding-doors',
    parent: 'case',
    board: 'birch6',
    over: ['inside'],
    ...fields,
  });
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

/** A case of one opening between panels of 3/4 in, in a shop that sets everything out in inches. */
function inInches(width: string, height: string, fields: object): SetOut {
  return withDoors(fields, (job) => {
    job.shop.units = 'in';
    const keep = new Set(['cupboard', 'case', 'inside', 'slides']);
    job.design.records = job.design.records.filter((r) => keep.has(String(r.id)));
    Reflect.deleteProperty(recordOf(job, 'inside'), 'split');
    Object.assign(recordOf(job, 'cupboard'), { width, height, depth: '16 in' });
    Object.assign(lotOf(job, 'birch18'), { nominal: '3/4 in' });
  });
}

const codes = (piece: SetOut) => piece.snags.map((s) => s.code);
const set = (piece: SetOut) => piece.sliding[0]!;
const inches = (piece: SetOut, t: Parameters<SetOut['ledger']['ticks']>[0]) =>
  toMm(piece.ledger.ticks(t)) / 25.4;
const mm = (piece: SetOut, t: Parameters<SetOut['ledger']['ticks']>[0]) => toMm(piece.ledger.ticks(t));
const doorOf = (piece: SetOut, n = 0) => piece.parts.find((p) => p.id === set(piece).leaves[n]!.part)!;

describe('published rules for sliding doors (common practice; the sums are geometry)', () => {
  test('20 in between the faces, grooves 3/8 and 3/16 in, 1/8 in left above: 20.3125 in high, 0.0625 in to spare', () => {
    const piece = inInches('48 in', '21 1/2 in', {
      upperGroove: '3/8 in',
      lowerGroove: '3/16 in',
      engagement: '1/8 in',
    });
    expect(codes(piece)).toEqual([]);
    expect(inches(piece, doorOf(piece).length)).toBe(20.3125);
    const { groove, lift, spare, opening } = set(piece);
    expect(inches(piece, opening.height)).toBe(20);
    // Lifted until it just clears the lower edge, a door has this much left above it.
    const half = inches(piece, lift) - inches(piece, groove.lower);
    expect(half + inches(piece, spare)).toBe(0.0625);
  });

  test('48 in closed by two doors that lap by 1 in: 24.5 in each', () => {
    const piece = inInches('49 1/2 in', '24 in', { overlap: '1 in' });
    expect(inches(piece, set(piece).opening.width)).toBeCloseTo(48, 9);
    for (const n of [0, 1]) expect(inches(piece, doorOf(piece, n).width)).toBeCloseTo(24.5, 9);
  });

  test('48 in closed by three doors on three tracks that lap by 1 in: 16.667 in each', () => {
    const piece = inInches('49 1/2 in', '24 in', { overlap: '1 in', count: 3, tracks: 3 });
    expect(inches(piece, doorOf(piece).width)).toBeCloseTo(50 / 3, 3);
  });

  test('a groove is 1/32 to 1/16 in wider than the door, doors pass with 1/16 in of air or more', () => {
    const piece = withDoors();
    const play = mm(piece, set(piece).play);
    expect(play).toBeGreaterThanOrEqual(25.4 / 32);
    expect(play).toBeLessThanOrEqual(25.4 / 16);
    expect(mm(piece, set(piece).gap)).toBeGreaterThanOrEqual(25.4 / 16);
  });
});

describe('sliding doors', () => {
  test('stand in grooves of bottom and top, behind the edging; what is inside stays behind them', () => {
    const piece = withDoors();
    expect(codes(piece)).toEqual([]);
    expect(slidingFaults(piece)).toEqual([]);
    const grooves = piece.parts.flatMap((p) =>
      p.features.filter((f) => f.kind === 'groove').map(() => p.name),
    );
    expect(grooves).toEqual(['bottom', 'bottom', 'top', 'top']);
    expect(mm(piece, set(piece).opens)).toBeCloseTo(914 - 469.5, 3);
  });

  test('are pushed by recesses near the edges that stay in sight, right through where a door is thin', () => {
    const holes = (piece: SetOut) =>
      [0, 1].map((n) => {
        const part = doorOf(piece, n);
        const hole = part.features.find((f) => f.kind === 'hole');
        if (hole?.kind !== 'hole') throw new Error('no hole');
        // From its left edge: the near edge of a door looks to the right.
        const left = mm(piece, part.width) - mm(piece, hole.at[1]);
        return [hole.depth && mm(piece, hole.depth), left, mm(piece, part.width) - left];
      });
    const thick = holes(withDoors({ board: 'birch18', tongue: '8 mm', fingerHole: '30 mm' }));
    expect(thick.map(([depth, left, right], i) => [depth, i === 0 ? left : right])).toEqual([
      [8, 35],
      [8, 35],
    ]);
    expect(holes(withDoors({ fingerHole: '30 mm' })).map(([depth]) => depth)).toEqual([undefined, undefined]);
    expect(codes(withDoors({ fingerHole: '600 mm' }))).toContain('sliding.finger-hole-wide');
  });

  test('their fits are loops: lifted in, held when down, free in the width of their grooves', () => {
    const piece = withDoors({ board: 'birch18', tongue: '8 mm' });
    expect(fitFaults(piece)).toEqual([]);
    const [lift, hold, play] = ['slides/door:1/lift', 'slides/door:1/hold', 'slides/play'].map((id) => {
      const fit = piece.fits.find((f) => f.id === id)!;
      return [fit.kind, mm(piece, fit.gap), fit.toFit];
    });
    // Grooves 9 and 4 mm deep, 3 mm left in the upper one: 2 mm above a door that just clears the lower edge.
    expect(lift).toEqual(['track', 2, 'slides/door:1']);
    expect(hold).toEqual(['track', 3, undefined]);
    expect(play).toEqual(['track', 1, undefined]);
  });

  test('two doors before three equal bays close any two', () => {
    const piece = withDoors({ over: ['left', 'middle', 'right'], closes: 'each' }, (job) => {
      job.design.records.splice(4, 0, { id: 'middle', kind: 'opening', parent: 'inside' });
      job.design.records = job.design.records.filter((r) => r.kind !== 'divider');
    });
    expect(codes(piece)).toEqual([]);
    expect(slidingFaults(piece)).toEqual([]);
    expect(set(piece).closable).toEqual([
      ['left', 'middle'],
      ['left', 'right'],
      ['middle', 'right'],
    ]);
  });

  test('thick doors run on tongues: rabbets behind both ends, narrower grooves', () => {
    const piece = withDoors({ board: 'birch18', tongue: '8 mm' });
    expect(slidingFaults(piece)).toEqual([]);
    const door = doorOf(piece);
    expect(door.features.map((f) => f.kind === 'rabbet' && [f.edge, f.face])).toEqual([
      ['start', 'under'],
      ['end', 'under'],
    ]);
    expect(mm(piece, set(piece).groove.width)).toBeCloseTo(9, 6);
  });

  test.each([
    ['an engagement that leaves no room to lift', { engagement: '6 mm' }, 'sliding.cannot-go-in'],
    ['an upper groove hardly deeper than the lower', { upperGroove: '6 mm' }, 'sliding.falls-out'],
    ['a groove of more than half the board', { lowerGroove: '10 mm' }, 'sliding.groove-too-deep'],
    [
      'doors that pass so near that no wood is left between their grooves',
      { gap: '2 mm' },
      'sliding.web-thin',
    ],
    ['a groove at the very front', { setIn: '2 mm' }, 'sliding.groove-at-edge'],
    ['doors that fill the depth', { board: 'birch18', tracks: 3, setIn: '280 mm' }, 'doors.no-room'],
    ['a lap wider than the opening', { overlap: '950 mm' }, 'doors.no-room'],
  ])('%s is told', (_, fields, code) => {
    expect(codes(withDoors(fields))).toContain(code);
  });

  test('low and thick doors that would jam on their way in are told', () => {
    const piece = inInches('30 in', '5 in', { board: 'birch18' });
    expect(codes(piece)).toEqual(['sliding.cannot-swing-in']);
  });

  test('openings so unlike that doors collide before them are told', () => {
    const between = ['one', 'two', 'three'];
    const unlike = (job: PlainJob) => {
      job.design.records = job.design.records.filter((r) => r.kind !== 'divider');
      const sizes = ['60 mm', '60 mm', 'equal'];
      const more = between.map((id, i) => ({ id, kind: 'opening', parent: 'inside', size: sizes[i] }));
      job.design.records.splice(4, 0, ...more);
    };
    const over = ['left', ...between, 'right'];
    const piece = withDoors({ over, closes: 'each', count: 3, overlap: '60 mm' }, unlike);
    expect(codes(piece)).toContain('sliding.cannot-close');
  });

  test('doors for each of openings that lie one above the other, or for fewer than doors, are refused', () => {
    const job = smallJob();
    const doors = { id: 'slides', kind: 'sliding-doors', parent: 'case', board: 'birch6', closes: 'each' };
    job.design.records.push({ ...doors, over: ['left'] });
    const read = checkJob(job);
    expect(!read.ok && read.snags.map((s) => s.code)).toEqual(['sliding.not-side-by-side']);
    job.design.records.at(-1)!.over = ['left', 'right'];
    job.design.records.at(-1)!.count = 3;
    const again = checkJob(job);
    expect(!again.ok && again.snags.map((s) => s.code)).toEqual(['sliding.too-many-doors']);
  });
});

describe('two handles across a sliding door', () => {
  const opened = (handle: object) => {
    const piece = withDoors({}, (job) => {
      const rack = job.shop.rack as unknown as Record<string, object[]>;
      rack.lots!.push(HANDLE_STRIP);
      for (const length of ['16 mm', '20 mm'])
        rack.screws!.push({
          id: `flat-${length.slice(0, 2)}.4`,
          kind: 'countersunk',
          length,
          diameter: '4 mm',
          head: '8 mm',
        });
      job.design.records.push({ id: 'grips', kind: 'handle', parent: 'slides', strip: 'oak', ...handle });
    });
    expect(codes(piece)).toEqual([]);
    expect(slidingFaults(piece)).toEqual([]);
    return [mm(piece, set(piece).opens), mm(piece, doorOf(piece).width)] as const;
  };

  test('bar the doors before it from the first to the last: what opens is up to the one that is met first', () => {
    const two = { count: 2, row: 'across', fromLeft: '60 mm', fromRight: '60 mm' };
    // The door in front stops 3 mm before a handle of 30 mm whose middle is 60 mm from the edge, and laps 25 mm closed.
    expect(opened(two)[0]).toBeCloseTo(60 - 15 - 3 - 25, 6);
    const [one, width] = opened({ fromEdge: '60 mm' });
    expect(one).toBeLessThan(width);
    expect(one).toBeGreaterThan(opened(two)[0]);
  });
});
