import { describe, expect, test } from 'vitest';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard with nothing inside, and no opening that says so. */
function empty(change: (job: PlainJob) => void): PlainJob {
  const job = smallJob();
  job.design.records = job.design.records.filter((r) =>
    ['piece', 'case', 'back', 'top', 'base'].includes(String(r.kind)),
  );
  addScrews(job, 'pocket', [25, 38, 45, 63], { diameter: '4 mm', head: '8.8 mm' });
  addScrews(job, 'countersunk', [30, 40, 50, 60], { diameter: '4.5 mm', head: '8.8 mm' });
  change(job);
  return job;
}

const hangBy =
  (by: 'rails' | 'cleat', fitting: string) =>
  (job: PlainJob): void => {
    job.design.records = job.design.records.filter((r) => r.kind !== 'base');
    Object.assign(recordOf(job, 'back'), { fitting });
    job.design.records.push(
      { id: 'hook', kind: 'hanging', parent: 'case', board: 'birch18', by },
      { id: 'place', kind: 'room', wall: 'studs' },
    );
  };

describe('a case without an opening', () => {
  test.each([
    ['a rail', hangBy('rails', 'rabbet'), ['hook/rail:1']],
    ['the strip of a cleat', hangBy('cleat', 'groove'), ['hook/cleat']],
    [
      'a kick board',
      (job: PlainJob) => Object.assign(recordOf(job, 'base'), { form: 'toe-kick', board: 'birch18' }),
      ['base/kick'],
    ],
  ] as const)('joins %s to both sides', async (_, change, parts) => {
    const of = built(equipped(empty((job) => void change(job))));
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    for (const id of parts) {
      const mates = of.drawn.joints.filter((j) => j.part === id).map((j) => j.mate);
      expect(mates).toEqual(expect.arrayContaining(['case/left-side', 'case/right-side']));
    }
    expect(await dryFaults(of)).toEqual([]);
  });
});
