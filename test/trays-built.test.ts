import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard with trays where its single shelf was, under a lid. */
function withTrays(trays: object = {}, change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  const { records } = job.design;
  records[records.findIndex((r) => r.id === 'shelf')] = {
    id: 'trays',
    kind: 'trays',
    parent: 'right',
    board: 'birch6',
    count: 4,
    ...trays,
  };
  job.design.records = records.filter((r) => r.id !== 'top');
  addScrews(job, 'countersunk', [40, 50], { diameter: '4.5 mm', head: '8.8 mm' });
  change(job);
  return job;
}

describe('tray dividers', () => {
  test.each(['dado', 'tongue', 'stopped-dado', 'rabbet'])(
    'in dados of the bottom and of a shelf in a bay slide in when that stands: %s',
    async (joints) => {
      const job = smallJob();
      job.design.records = job.design.records.filter((r) => r.kind !== 'shelf' && r.id !== 'upright');
      Object.assign(recordOf(job, 'case'), { joints });
      Object.assign(recordOf(job, 'left'), { split: 'down' });
      job.design.records.push(
        { id: 'low', kind: 'opening', parent: 'left' },
        { id: 'high', kind: 'opening', parent: 'left' },
        { id: 'trays', kind: 'trays', parent: 'low', board: 'birch6', count: 2 },
      );
      addScrews(job, 'countersunk', [40, 50], { diameter: '4.5 mm', head: '8.8 mm' });
      const of = built(equipped(job));
      expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
      const order = of.build.operations.map((o) => o.id);
      const mark = of.drawn.parts.find((p) => p.record === 'trays')!.mark;
      expect(order.indexOf(`${mark}/set`)).toBeGreaterThan(order.indexOf('E1/set'));
      expect(await dryFaults(of)).toEqual([]);
    },
  );

  test.each(['between', 'over'] as const)(
    'a shelf and a lid (%s) over them have their pockets driven before they slide in',
    async (lid) => {
      const job = smallJob();
      job.design.records = job.design.records.filter(
        (r) => !['shelf', 'shelves', 'upright', 'top', 'back', 'left', 'right'].includes(String(r.id)),
      );
      Object.assign(recordOf(job, 'case'), { joints: 'pocket-screws', lid });
      Object.assign(recordOf(job, 'inside'), { split: 'down' });
      job.design.records.push(
        { id: 'low', kind: 'opening', parent: 'inside' },
        { id: 'high', kind: 'opening', parent: 'inside' },
        { id: 'trays', kind: 'trays', parent: 'low', board: 'birch6', count: 9 },
        { id: 'more', kind: 'trays', parent: 'high', board: 'birch6', count: 9 },
      );
      const of = built(equipped(job));
      expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
      const order = of.build.operations.map((o) => o.id);
      const lidSet = order.indexOf('C1/set');
      expect(lidSet).toBeGreaterThan(0);
      for (const { mark } of of.drawn.parts.filter((p) => p.record === 'more'))
        expect(order.indexOf(`${mark}/set`)).toBeGreaterThan(lidSet);
      expect(await dryFaults(of)).toEqual([]);
    },
  );

  test.each([undefined, 'rabbet', 'pocket-screws'])(
    'right under shelves near the lid, on either side of a divider that is pocketed to it: %s',
    async (joints) => {
      for (const back of ['rabbet', 'groove']) {
        const job = smallJob();
        job.design.records = job.design.records.filter(
          (r) => !['shelf', 'shelves', 'top'].includes(String(r.id)),
        );
        Object.assign(recordOf(job, 'back'), { fitting: back });
        Object.assign(recordOf(job, 'case'), { lid: 'between', ...(joints ? { joints } : {}) });
        for (const bay of ['left', 'right']) {
          Object.assign(recordOf(job, bay), { split: 'down' });
          job.design.records.push(
            { id: `${bay}.low`, kind: 'opening', parent: bay },
            { id: `${bay}.high`, kind: 'opening', parent: bay, size: '140 mm' },
            { id: `${bay}.trays`, kind: 'trays', parent: `${bay}.low`, board: 'birch6', count: 2 },
          );
        }
        const of = built(equipped(job));
        expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
        expect(await dryFaults(of)).toEqual([]);
      }
    },
  );

  test.each([undefined, 'face-screws', 'rabbet', 'dado', 'tongue', 'mitre'])(
    'stand in dados a third of the board deep, equally spaced, in a case joined by %s',
    async (joints) => {
      const of = built(
        equipped(
          withTrays({}, (j) => {
            if (joints) Object.assign(recordOf(j, 'case'), { joints });
            if (joints === 'mitre') j.design.records = j.design.records.filter((r) => r.kind !== 'edging');
          }),
        ),
      );
      expect(of.drawn.snags.filter((s) => s.level !== 'note')).toEqual([]);
      const t = (x: (typeof of.drawn.parts)[0]['length']) => of.drawn.ledger.ticks(x) / 3200;
      const trays = of.drawn.parts.filter((p) => p.record === 'trays');
      expect(trays).toHaveLength(4);
      // 6 mm into a board of 18, above and below.
      const inside = of.drawn.openings.find((o) => o.id === 'right')!;
      expect(trays.map((p) => t(p.length) - t(inside.height))).toEqual([12, 12, 12, 12]);
      const places = [
        t(inside.box.min[0]),
        ...trays.flatMap((p) => {
          const faces = [
            t(p.place.origin[0]),
            t(p.place.origin[0]) + (p.place.thickness === '+x' ? 6.5 : -6.5),
          ];
          return faces.sort((a, b) => a - b);
        }),
        t(inside.box.max[0]),
      ];
      const clear = [0, 2, 4, 6, 8].map((i) => places[i + 1]! - places[i]!);
      for (const c of clear) expect(c).toBeCloseTo((t(inside.width) - 4 * 6.5) / 5, 2);
      // Nothing is screwed into their thin edges.
      const ids = new Set(trays.map((p) => p.id));
      expect(of.drawn.fasteners.filter((f) => f.through.some((p) => ids.has(p)))).toEqual([]);
      expect(await dryFaults(of)).toEqual([]);
    },
  );

  test.each([
    ['trays.no-room', { count: 18 }],
    ['trays.no-room', { setback: '400 mm' }],
  ])('%s', (code, trays) => {
    const { drawn } = built(equipped(withTrays(trays)));
    expect(drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code)).toEqual([code]);
  });

  test('leave a driver no room for pockets over them where a panel behind them keeps them from sliding in later', () => {
    const hidden = (j: PlainJob) => {
      Object.assign(recordOf(j, 'case'), { joints: 'pocket-screws' });
      Object.assign(recordOf(j, 'right'), { split: 'back' });
      Object.assign(recordOf(j, 'trays'), { parent: 'front' });
      j.design.records.push(
        { id: 'front', kind: 'opening', parent: 'right' },
        { id: 'hidden', kind: 'opening', parent: 'right', size: '60 mm' },
      );
    };
    const { drawn } = built(equipped(withTrays({}, hidden)));
    expect(drawn.snags.map((s) => s.code)).toContain('pockets.no-driver');
  });

  test('have nothing to stand in under a top that is laid on last', () => {
    const top = (j: PlainJob) =>
      j.design.records.push({ id: 'top', kind: 'top', parent: 'case', board: 'birch18' });
    const { drawn } = built(equipped(withTrays({}, top)));
    expect(drawn.snags.map((s) => s.code)).toEqual(['trays.no-above']);
  });

  test('fill their opening alone', () => {
    const shelf = (j: PlainJob) => j.design.records.push({ id: 'more', kind: 'shelf', parent: 'right' });
    const read = checkJob(withTrays({}, shelf));
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.filled-twice']);
  });
});
