import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { built, mm } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard parted by a fixed shelf, with a back below it and one above. */
function storeys(fitting: string, change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  job.design.records = job.design.records.filter((r) => r.id !== 'back' && r.kind !== 'shelf');
  Object.assign(recordOf(job, 'inside'), { split: 'down' });
  job.shop.rack.lots.push({
    ...lotOf(job, 'birch6'),
    id: 'birch4',
    nominal: '4 mm',
    stock: [{ id: 'birch4-sheet', length: '2500 mm', width: '1250 mm', price: 30 }],
  });
  job.design.records.push(
    { id: 'low', kind: 'back', parent: 'left', board: 'birch6', fitting },
    { id: 'high', kind: 'back', parent: 'right', board: fitting === 'groove' ? 'birch6' : 'birch4', fitting },
  );
  addScrews(job, 'countersunk', [30, 40, 50, 60], { diameter: '4.5 mm', head: '8.8 mm' });
  change(job);
  return job;
}

const without =
  (...ids: string[]) =>
  (job: PlainJob) => {
    job.design.records = job.design.records.filter((r) => !ids.includes(String(r.id)));
  };

describe('backs one above another', () => {
  test.each([
    ['rabbet', 'pocket-screws'],
    ['rabbet', 'dado'],
    ['rabbet', 'mitre'],
    ['applied', 'pocket-screws'],
    ['applied', 'face-screws'],
    ['groove', 'pocket-screws'],
    ['groove', 'dado'],
  ])('in %ss, the case joined by %s: they meet behind the middle of the shelf', async (fitting, joints) => {
    const of = built(
      equipped(
        storeys(fitting, (j) => {
          Object.assign(recordOf(j, 'case'), { joints });
          if (joints === 'mitre') without('lipping')(j);
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const part = (id: string) => of.drawn.parts.find((p) => p.id === id)!;
    const [low, high, shelf] = [part('low/back'), part('high/back'), part('upright/divider')];
    const z = (p: typeof low) => mm(of, p.place.origin[2]);
    const half = z(high) - z(shelf);
    expect(half).toBeGreaterThan(8.4);
    expect(half).toBeLessThanOrEqual(9);
    expect(z(low) + Math.min(mm(of, low.length), mm(of, low.width))).toBe(z(high));
    for (const side of ['case/left-side', 'case/right-side']) {
      const channels = part(side).features.filter(
        (f) => f.kind === fitting && 'edge' in f && f.edge !== 'start' && f.edge !== 'end',
      );
      expect(channels).toHaveLength(fitting === 'applied' ? 0 : 1);
    }
    expect(await dryFaults(of)).toEqual([]);
  });

  test('one alone covers all of the shelf’s edge, is screwed there, and its rabbet ends with it', async () => {
    const of = built(equipped(storeys('rabbet', without('high'))));
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const joint = of.drawn.joints.find((j) => j.part === 'low/back' && j.mate === 'upright/divider')!;
    expect(joint.hold).toBe('face-screws');
    const side = of.drawn.parts.find((p) => p.id === 'case/left-side')!;
    const rabbet = side.features.find((f) => f.kind === 'rabbet' && (f.edge === 'far' || f.edge === 'near'))!;
    if (rabbet.kind !== 'rabbet') throw new Error('no rabbet');
    const shelf = of.drawn.parts.find((p) => p.id === 'upright/divider')!;
    expect(mm(of, rabbet.to)).toBe(mm(of, shelf.place.origin[2]) + 18 - mm(of, side.place.origin[2]));
    expect(await dryFaults(of)).toEqual([]);
  });

  test('in one pair of grooves they are of one board', () => {
    const read = checkJob(storeys('groove', (j) => Object.assign(recordOf(j, 'high'), { board: 'birch4' })));
    expect(read.ok ? [] : read.snags.map((s) => [s.code, s.where.path])).toEqual([
      ['design.back-of-bay', 'design/records/high/board'],
    ]);
  });

  test('one in rabbets and one in grooves are told by how they are fitted, of whatever board they are', () => {
    const read = checkJob(
      storeys('rabbet', (j) => Object.assign(recordOf(j, 'high'), { fitting: 'groove' })),
    );
    expect(read.ok ? [] : read.snags.map((s) => [s.code, s.where.path])).toEqual([
      ['design.back-of-bay', 'design/records/high/fitting'],
    ]);
  });
});
