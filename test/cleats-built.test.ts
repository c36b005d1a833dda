import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { partsToCut } from '../src/setting-out/index.ts';
import { built, mm } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard hung on a wall of studs by a bevelled cleat. */
function hung(change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  job.design.records = job.design.records.filter((r) => r.id !== 'base');
  Object.assign(recordOf(job, 'back'), { fitting: 'groove' });
  job.design.records.push(
    { id: 'hook', kind: 'hanging', parent: 'case', board: 'birch18', by: 'cleat' },
    { id: 'place', kind: 'room', wall: 'studs' },
  );
  addScrews(job, 'pocket', [25, 38, 45, 63], { diameter: '4 mm', head: '8.8 mm' });
  change(job);
  return job;
}

describe('a bevelled cleat', () => {
  test('is parted from one blank, hidden in the recess behind the back, and the case hooks over it', async () => {
    const of = built(equipped(hung()));
    expect(of.drawn.snags).toEqual([]);
    const [cleat] = of.drawn.cleats;
    const part = (id: string) => of.drawn.parts.find((p) => p.id === id)!;
    const [onCase, onWall] = [part(cleat!.onCase), part(cleat!.onWall)];
    // 80 mm of either, 18 mm of which they share; the kerf of 2.2 mm takes 3.1 mm of the face at 45 degrees.
    expect(mm(of, onWall.width)).toBe(80);
    expect(mm(of, cleat!.blank.width)).toBe(145.5);
    expect(mm(of, onCase.width)).toBeCloseTo(145.5 + 18 - 80 - 2.2 * Math.SQRT2, 3);
    expect([onCase.mark, onWall.mark, cleat!.blank.mark]).toEqual(['T1', 'X1', 'Z1']);
    expect(partsToCut(of.drawn).map((p) => p.mark)).toContain('Z1');
    expect(partsToCut(of.drawn).map((p) => p.mark)).not.toContain('T1');
    // The back makes room for it by itself.
    const back = part('back/back');
    const rear = part('case/left-side').place.origin[1];
    expect(mm(of, of.drawn.dimensions.get('overall.depth')!)).toBe(350);
    expect(mm(of, rear)).toBeLessThan(mm(of, back.place.origin[1]));
    expect(await dryFaults(of)).toEqual([]);
  });

  test.each([
    ['dado', 'between'],
    ['dowels', 'between'],
    ['biscuits', 'between'],
    ['face-screws', 'between'],
    ['rabbet', 'over'],
  ])('holds in a case joined by %s, its lid %s', async (joints, lid) => {
    const of = built(
      equipped(
        hung((j) => {
          j.design.records = j.design.records.filter((r) => r.id !== 'top');
          Object.assign(recordOf(j, 'case'), { joints, lid });
          for (const long of [30, 40, 50, 60])
            j.shop.rack.screws.push({
              id: `countersunk-${long}`,
              kind: 'countersunk',
              length: `${long} mm`,
              diameter: '4.5 mm',
              head: '8.8 mm',
            });
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(await dryFaults(of)).toEqual([]);
  });

  test.each([
    ['it is never parted', 'Z1/part'],
    ['the wall strip is as long as the case is wide', 'X1/crosscut'],
    ['nothing is hooked on', 'X1/hook'],
  ])('the dry fit finds out where %s', async (_, id) => {
    const of = built(equipped(hung()));
    const faults = await dryFaults(of, (o) => (o.id === id ? { ...o, does: { act: 'other', on: [] } } : o));
    expect(faults.length).toBeGreaterThan(0);
  });

  test('the dry fit finds out where the blank is parted off its line, or squarely', async () => {
    const of = built(equipped(hung()));
    for (const change of [{ angle: 30 }, { at: of.drawn.cleats[0]!.blank.thickness }])
      expect(
        (await dryFaults(of, (o) => (o.does.act === 'part' ? { ...o, does: { ...o.does, ...change } } : o)))
          .length,
      ).toBeGreaterThan(0);
  });

  test('asks for a recess that is open below, and deep enough', () => {
    const codes = (change: (j: PlainJob) => void) => {
      const read = checkJob(hung(change));
      return read.ok ? [] : read.snags.map((s) => s.code);
    };
    expect(codes((j) => Object.assign(recordOf(j, 'back'), { fitting: 'rabbet' }))).toEqual([
      'design.cleat-place',
    ]);
    expect(codes((j) => Object.assign(recordOf(j, 'case'), { bottom: 'under' }))).toEqual([
      'design.cleat-place',
    ]);
    const shallow = built(equipped(hung((j) => Object.assign(recordOf(j, 'back'), { setIn: '12 mm' }))));
    expect(shallow.drawn.snags.map((s) => s.code)).toContain('hanging.recess-shallow');
    const high = built(equipped(hung((j) => Object.assign(recordOf(j, 'hook'), { height: '450 mm' }))));
    expect(high.drawn.snags.map((s) => s.code)).toContain('hanging.no-room');
  });

  test('of two cases in a row: both strips are on the wall before anything is hooked on; in a stack the lower case has it', async () => {
    const two = (lay: string) =>
      hung((j) => {
        j.design.records = j.design.records.filter((r) => r.id !== 'top');
        j.design.records.push(
          { id: 'row', kind: 'group', parent: 'cupboard', lay },
          { id: 'other', kind: 'case', parent: 'row', board: 'birch18' },
          { id: 'back2', kind: 'back', parent: 'other', board: 'birch6', fitting: 'groove' },
          { id: 'hook2', kind: 'hanging', parent: 'other', board: 'birch18', by: 'cleat' },
        );
        Object.assign(recordOf(j, 'case'), { parent: 'row' });
        for (const long of [25, 30, 35])
          j.shop.rack.screws.push({
            id: `connect-${long}`,
            kind: 'countersunk',
            length: `${long} mm`,
            diameter: '4 mm',
            head: '8 mm',
          });
      });
    const row = built(equipped(two('across')));
    expect(row.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const home = row.build.operations.filter((o) => /X\d|set-up/.test(o.id) && o.stage === 'home');
    expect(home.map((o) => o.kind)).toEqual(['anchor', 'anchor', 'assemble', 'assemble']);
    expect(await dryFaults(row)).toEqual([]);
    const stack = checkJob(two('up'));
    expect(stack.ok ? [] : stack.snags.map((s) => [s.code, s.where.record])).toEqual([
      ['design.cleat-place', 'hook2'],
    ]);
  });

  test('the wall strip alone is what its anchors hold', () => {
    const of = built(equipped(hung()));
    const [cleat] = of.drawn.cleats;
    const cards = of.build.operations.filter((o) => o.stage === 'home').map((o) => o.id);
    expect(cards).toEqual(expect.arrayContaining(['home/set-up', 'X1/hook']));
    // The sides are 720 mm high under the top; the strips of 80 and 80.4 mm share 18 mm of slope.
    expect(mm(of, cleat!.below)).toBeCloseTo(80.4 - 18, 0);
    expect(mm(of, cleat!.lift)).toBe(28);
  });
});
