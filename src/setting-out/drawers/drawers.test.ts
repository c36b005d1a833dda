import { describe, expect, test } from 'vitest';
import { type Changes, changedChest, toolChest } from '../../../test/drawers/chest-job.ts';
import { drawerFaults } from '../../../test/generate/judge-drawers.ts';
import { checkJob } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import { setOut } from '../set-out-job.ts';

function chest(changes: Changes = {}) {
  const piece = setOut(toolChest(changes));
  const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
  return { piece, mm, part: (id: string) => piece.parts.find((p) => p.id === id)! };
}

describe('the box of a drawer', () => {
  test('is 1/2 in a side narrower than its opening for usual side-mount runners, and half of the 1/32 in that they put up with (common practice)', () => {
    const { piece, mm, part } = chest();
    const [drawer] = piece.drawers;
    const opening = piece.openings.find((o) => o.id === 'heavy')!;
    const side = part(drawer!.parts.left);
    expect(mm(drawer!.runner!.thick)).toBe(12.7);
    expect(mm(drawer!.beside)).toBe(13.1);
    expect(mm(drawer!.inside.width) + 2 * mm(side.thickness)).toBeCloseTo(mm(opening.width) - 26.2, 9);
    expect(mm(side.length)).toBe(300);
  });

  test('has a back cut as long as its front, and both so that the film of the finish leaves the runners their room', () => {
    for (const joint of ['rabbet', 'screws']) {
      const { piece, mm, part } = chest({ planes: { joint }, small: { joint } });
      for (const { parts } of piece.drawers) {
        expect(mm(part(parts.back).cut.length)).toBe(mm(part(parts.front).cut.length));
        const across = piece.fits.find((f) => f.id === `${parts.left}/across`)!;
        // Of the 0.8 mm that it was drawn with, film takes some.
        expect(mm(across.gap)).toBeLessThan(0.8);
        expect(mm(across.printed)).toBeGreaterThanOrEqual(0);
      }
    }
  });

  test.each(['rabbet', 'dado', 'screws', 'pocket-screws'])(
    'joined by %s, and its bottom either way',
    (joint) => {
      for (const bottomFitting of ['groove', 'applied']) {
        const { piece } = chest({ planes: { joint, bottomFitting }, small: { joint, bottomFitting } });
        expect(piece.snags.filter((s) => s.level === 'stop')).toEqual([]);
        expect(piece.drawers).toHaveLength(4);
        expect(drawerFaults(piece)).toEqual([]);
      }
    },
  );

  test('takes the longest runners that go in behind the front', () => {
    const job = changedChest({});
    const [slide] = job.shop.rack.runners!;
    job.shop.rack.runners!.push(
      { ...slide, id: 'longer', length: '350 mm' },
      { ...slide, id: 'shorter', length: '250 mm', caseScrews: ['37 mm', '200 mm'] },
    );
    const read = checkJob(job);
    if (!read.ok) throw new Error('not read');
    expect(new Set(setOut(read.job).drawers.map((d) => d.runner?.id))).toEqual(new Set(['slide-300']));
  });
});

describe('wooden runners', () => {
  const strip = {
    id: 'beech',
    name: 'Beech strip',
    material: 'beech-european',
    form: 'strip',
    nominal: '7 mm',
    width: '18 mm',
    stock: [{ id: 'beech-length', length: '1000 mm', price: 2 }],
  };
  const wooden = (fields: object = {}, thickness = '7 mm') => {
    const own = { carriedBy: 'wooden-runners', runnerStrip: 'beech', joint: 'dado', ...fields };
    const job = changedChest({ planes: own, small: own });
    job.shop.rack.lots!.push({ ...strip, thickness });
    const read = checkJob(job);
    if (!read.ok) throw new Error(read.snags.map((x) => x.sentence).join('\n'));
    const piece = setOut(read.job);
    return { piece, stops: piece.snags.filter((x) => x.level === 'stop').map((x) => x.code) };
  };

  test('stand in grooves that leave them room, and need no bought ones', () => {
    const { piece, stops } = wooden();
    const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
    expect(stops).toEqual([]);
    expect(drawerFaults(piece)).toEqual([]);
    const [drawer] = piece.drawers;
    expect(drawer!.runner).toBeUndefined();
    // 7 mm less 1 mm beside the box, and 0.5 mm of air; 18 mm and 0.8 mm of air.
    expect([mm(drawer!.wooden!.depth), mm(drawer!.wooden!.width)]).toEqual([6.5, 18.8]);
    expect(piece.parts.filter((p) => p.mark.startsWith('Y'))).toHaveLength(8);
  });

  test.each([
    ['screws come out in the groove', { joint: 'screws' }, '7 mm'],
    ['rabbets at the back nearly meet the groove', { joint: 'rabbet' }, '7 mm'],
    ['the strip is too thick', {}, '10 mm'],
  ])('%s: it is said', (_, fields, thickness) => {
    const { piece, stops } = wooden(fields, thickness);
    expect(stops).toContain('drawers.groove-too-deep');
    // Dados are less deep, and their corners keep clear of the groove.
    const edits = 'joint' in fields ? [{ record: 'planes', field: 'joint', value: 'dado' }] : undefined;
    expect(piece.snags.find((s) => s.code === 'drawers.groove-too-deep')!.cures[0]!.edits).toEqual(edits);
  });
});

describe('fronts', () => {
  test('graded: each so much higher than the one above, and with their gaps the whole opening', () => {
    const { piece, mm, part } = chest();
    const heights = piece.drawers
      .filter((d) => d.record === 'small')
      .map((d) => Math.round(mm(part(d.parts.face).width) * 100));
    expect(heights[0]! - heights[1]!).toBeCloseTo(1200, -1);
    expect(heights[1]! - heights[2]!).toBeCloseTo(1200, -1);
    const opening = piece.openings.find((o) => o.id === 'trays')!;
    expect(heights.reduce((a, b) => a + b, 0) / 100 + 4 * 2).toBeCloseTo(mm(opening.height), 1);
  });

  test('overlay: before the case, which is so much less deep', () => {
    const { piece, mm } = chest({ planes: { hang: 'overlay' }, small: { hang: 'overlay' } });
    expect(piece.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(piece.drawers).toHaveLength(4);
    expect(drawerFaults(piece)).toEqual([]);
    expect(mm(piece.overall.depth)).toBe(380);
  });
});

describe('what can’t be', () => {
  test.each<[string, Changes, string]>([
    ['a case too shallow for any runner', { chest: { depth: '300 mm' } }, 'drawers.no-runner'],
    ['more drawers than fit', { small: { count: 9 } }, 'drawers.no-room'],
    ['grading that leaves nothing of the last', { small: { grade: '100 mm' } }, 'drawers.no-room'],
    ['screws that come through the box', { 'runner-screw': { length: '16 mm' } }, 'drawers.screw-too-long'],
    ['no screw for the front', { 'flat-4x25': { length: '60 mm' } }, 'drawers.no-screw'],
  ])('%s', (_, changes, code) => {
    const { piece } = chest(changes);
    const snag = piece.snags.find((s) => s.code === code);
    expect(snag?.where.path).toMatch(/design\/records\/(small|planes)/);
    expect(snag?.cures.length).toBeGreaterThan(0);
  });

  test('runners that aren’t there, a front of strips', () => {
    const read = checkJob(changedChest({ small: { runner: 'brass' }, planes: { frontBoard: 'oak' } }));
    expect(read.ok ? [] : read.snags.map((s) => s.code).sort()).toEqual([
      'document.no-such-lot',
      'document.no-such-runner',
    ]);
  });
});
