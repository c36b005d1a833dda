import { describe, expect, test } from 'vitest';
import { backFittingEdit } from '../src/app/draw/case-edits.ts';
import { addBayBacksEdit } from '../src/app/draw/design-edits.ts';
import { applyEdit, checkJob, inverseOf, treeOf } from '../src/job/index.ts';
import { built, mm } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { addScrews, lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

/** The small cupboard with a back in each of its two bays. */
function parted(fitting: string, change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  job.design.records = job.design.records.filter((r) => r.id !== 'back');
  job.shop.rack.lots.push({
    ...lotOf(job, 'birch6'),
    id: 'birch4',
    nominal: '4 mm',
    stock: [{ id: 'birch4-sheet', length: '2500 mm', width: '1250 mm', price: 30 }],
  });
  job.design.records.push(
    { id: 'back-left', kind: 'back', parent: 'left', board: 'birch6', fitting },
    { id: 'back-right', kind: 'back', parent: 'right', board: 'birch4', fitting },
  );
  addScrews(job, 'countersunk', [30, 40, 50, 60], { diameter: '4.5 mm', head: '8.8 mm' });
  change(job);
  return job;
}

describe('a back in each bay', () => {
  test.each([
    ['rabbet', 'pocket-screws'],
    ['rabbet', 'dado'],
    ['rabbet', 'face-screws'],
    ['rabbet', 'dowels'],
    ['groove', 'pocket-screws'],
    ['groove', 'dado'],
    ['groove', 'tongue'],
  ])('in %ss of sides and dividers, joined by %s', async (fitting, joints) => {
    const of = built(equipped(parted(fitting, (j) => Object.assign(recordOf(j, 'case'), { joints }))));
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const part = (id: string) => of.drawn.parts.find((p) => p.id === id)!;
    const [left, right] = [part('back-left/back'), part('back-right/back')];
    expect([mm(of, left.thickness), mm(of, right.thickness)]).toEqual([6.5, 4]);
    // Both lie in one plane in front, and the divider runs on behind them like the sides.
    const divider = part('upright/divider');
    expect(mm(of, divider.width)).toBe(mm(of, part('case/left-side').width));
    expect(
      divider.features.filter((f) => f.kind === fitting && 'edge' in f && f.edge === 'far'),
    ).toHaveLength(2);
    expect(await dryFaults(of)).toEqual([]);
  });

  test.each(['pocket-screws', 'dado', 'face-screws', 'dowels', 'tongue'])(
    'one in rabbets, one in grooves, joined by %s: in one plane, the divider cut for each on its own face',
    async (joints) => {
      for (const grooved of ['back-left', 'back-right']) {
        const of = built(
          equipped(
            parted('rabbet', (j) => {
              Object.assign(recordOf(j, 'case'), { joints });
              Object.assign(recordOf(j, grooved), { fitting: 'groove' });
            }),
          ),
        );
        expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
        const part = (id: string) => of.drawn.parts.find((p) => p.id === id)!;
        // It lies from behind to the front.
        const front = (id: string) =>
          mm(of, part(`${id}/back`).place.origin[1]) - mm(of, part(`${id}/back`).thickness);
        expect(front('back-left')).toBe(front('back-right'));
        const cut = part('upright/divider').features.flatMap((f) =>
          (f.kind === 'rabbet' || f.kind === 'groove') && f.edge === 'far' ? [f.kind] : [],
        );
        expect(cut.sort()).toEqual(['groove', 'rabbet']);
        expect(await dryFaults(of)).toEqual([]);
      }
    },
  );

  test.each(['pocket-screws', 'dado', 'dowels'])(
    'laid on, joined by %s: two meet in the middle of the divider, each screwed to its side',
    async (joints) => {
      const of = built(equipped(parted('applied', (j) => Object.assign(recordOf(j, 'case'), { joints }))));
      expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
      const part = (id: string) => of.drawn.parts.find((p) => p.id === id)!;
      const mates = of.drawn.joints.filter((j) => j.duty === 'back').map((j) => `${j.part} ${j.mate}`);
      expect(mates).toEqual(
        expect.arrayContaining(['back-left/back case/left-side', 'back-right/back case/right-side']),
      );
      // Half of the divider’s edge is too narrow for screws.
      expect(mates.filter((m) => m.includes('divider'))).toEqual([]);
      expect(mm(of, part('upright/divider').width)).toBe(mm(of, part('case/left-side').width));
      expect(await dryFaults(of)).toEqual([]);
    },
  );

  test('laid on beside an open bay, a back covers all of the divider’s edge, and is screwed to it', async () => {
    const of = built(
      equipped(
        parted('applied', (j) => {
          j.design.records = j.design.records.filter((r) => r.id !== 'back-right');
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const joint = of.drawn.joints.find((j) => j.duty === 'back' && j.mate === 'upright/divider')!;
    expect(joint.hold).toBe('face-screws');
    expect(joint.fasteners.length).toBeGreaterThan(1);
    expect(await dryFaults(of)).toEqual([]);
  });

  test('laid on between two others, a back would hang by its lower end: refused', () => {
    const read = checkJob(
      parted('applied', (j) => {
        j.design.records = j.design.records.filter((r) => r.id !== 'upright');
        j.design.records.push(
          { id: 'third', kind: 'opening', parent: 'inside', size: 'equal' },
          { id: 'back-third', kind: 'back', parent: 'third', board: 'birch6', fitting: 'applied' },
        );
      }),
    );
    expect(read.ok ? [] : read.snags.map((s) => [s.code, s.where.path])).toEqual([
      ['design.back-of-bay', 'design/records/back-right/fitting'],
    ]);
  });

  test('in a mitred case, whose dividers come when it is closed, grooves beside them are refused; rabbets are not', async () => {
    const mitred = (fitting: string) =>
      equipped(
        parted(fitting, (j) => {
          Object.assign(recordOf(j, 'case'), { joints: 'mitre' });
          j.design.records = j.design.records.filter((r) => r.kind !== 'edging');
        }),
      );
    const read = checkJob(mitred('groove'));
    expect(read.ok).toBe(false);
    const told = read.ok ? [] : read.snags.map((s) => [s.code, s.where.path, s.cures?.[0]?.edits]);
    expect(told).toEqual(
      ['back-left', 'back-right'].map((record) => [
        'design.back-of-bay',
        `design/records/${record}/fitting`,
        [{ record, field: 'fitting', value: 'rabbet' }],
      ]),
    );
    expect(await dryFaults(built(mitred('rabbet')))).toEqual([]);
  });

  test('where the router’s step leaves the rabbets deeper than the panels inside are short, backs lie on these', async () => {
    const job = parted('rabbet', (j) => {
      for (const id of ['back-left', 'back-right']) recordOf(j, id).setIn = '17 mm';
      recordOf(j, 'back-right').board = 'birch6';
    });
    const shop = equipped(job) as PlainJob;
    for (const tool of shop.shop.tools) if (tool.kind === 'router') tool.step = '1/64 in';
    const of = built(shop);
    const set = of.build.operations.find((o) => o.title.startsWith('Set F1'))!;
    expect(set.lines.join()).toContain('its front side against B1');
    expect(await dryFaults(of)).toEqual([]);
  });

  test('one bay may stay open', async () => {
    const of = built(
      equipped(
        parted('rabbet', (j) => {
          j.design.records = j.design.records.filter((r) => r.id !== 'back-right');
        }),
      ),
    );
    expect(of.drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(of.drawn.parts.filter((p) => p.role === 'back').map((p) => p.name)).toEqual(['back in left']);
    expect(await dryFaults(of)).toEqual([]);
  });

  test('the dry fit finds out where a divider is not rabbeted for one of them', async () => {
    const of = built(equipped(parted('rabbet')));
    const faults = await dryFaults(of, (o) =>
      o.does.act === 'rabbet' && o.does.workpieces.includes('D1') && o.does.face === 'show'
        ? { ...o, does: { act: 'other', on: [] } }
        : o,
    );
    expect(faults.length).toBeGreaterThan(0);
  });

  test.each([
    ['on a space behind another', (j: PlainJob) => Object.assign(recordOf(j, 'inside'), { split: 'back' })],
    [
      'laid on beside one that is let in',
      (j: PlainJob) => Object.assign(recordOf(j, 'back-right'), { fitting: 'applied' }),
    ],
    [
      'in rabbets, set in otherwise than the one in grooves',
      (j: PlainJob) => {
        Object.assign(recordOf(j, 'back-left'), { setIn: '8 mm' });
        Object.assign(recordOf(j, 'back-right'), { fitting: 'groove', setIn: '15 mm' });
      },
    ],
    ['set in otherwise', (j: PlainJob) => Object.assign(recordOf(j, 'back-right'), { setIn: '15 mm' })],
    [
      'beside one of the whole case',
      (j: PlainJob) =>
        j.design.records.push({
          id: 'back',
          kind: 'back',
          parent: 'case',
          board: 'birch6',
          fitting: 'rabbet',
        }),
    ],
  ])('is refused %s', (_, change) => {
    const read = checkJob(parted('rabbet', change));
    expect(read.ok ? [] : [...new Set(read.snags.map((s) => s.code))]).toEqual(['design.back-of-bay']);
  });

  test('one that lacks its fitting is told that alone: others are not held against it', () => {
    const read = checkJob(
      parted('rabbet', (j) => {
        delete (j.design.records.find((r) => r.kind === 'back') as { fitting?: string }).fitting;
      }),
    );
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['document.missing-field']);
  });

  test('is laid on together with all others of its case, in one edit; grooves and rabbets stand side by side', () => {
    const read = checkJob(parted('rabbet'));
    if (!read.ok) throw new Error('the cupboard is fine');
    const { job } = read;
    const edit = backFittingEdit(job, treeOf(job).all('back')[1]!, 'applied');
    const edited = applyEdit(job, edit);
    if (!edited.ok) throw new Error('the edit is fine');
    expect(treeOf(edited.job).all('back')).toMatchObject([{ fitting: 'applied' }, { fitting: 'applied' }]);
    expect(checkJob(edited.job).ok).toBe(true);
    const own = applyEdit(job, backFittingEdit(job, treeOf(job).all('back')[1]!, 'groove'));
    expect(own.ok && treeOf(own.job).all('back')).toMatchObject([
      { fitting: 'rabbet' },
      { fitting: 'groove' },
    ]);
    expect(own.ok && checkJob(own.job).ok).toBe(true);
    expect(applyEdit(edited.job, inverseOf(job, edit))).toEqual({
      ok: true,
      job,
    });
  });

  test.each([
    [
      'a hinged top',
      (j: PlainJob) => Object.assign(recordOf(j, 'top'), { hinged: true }),
      'Give the whole case one back in their place',
    ],
    [
      'a cleat',
      (j: PlainJob) => {
        j.design.records = j.design.records.filter((r) => r.id !== 'base');
        j.design.records.push({ id: 'hook', kind: 'hanging', parent: 'case', board: 'birch18', by: 'cleat' });
      },
      'Give the whole case one back, in place of those of its bays',
    ],
  ])('leaves nothing for %s: one back for all is what is asked for', (_, change, cure) => {
    const read = checkJob(parted('groove', change));
    const snags = read.ok ? [] : read.snags;
    expect(snags).toHaveLength(1);
    expect(snags[0]!.sentence).toContain('belong to its bays');
    expect(snags[0]!.cures[0]!.says).toContain(cure);
  });

  test('can be added to every bay at once', () => {
    const read = checkJob(
      parted('rabbet', (j) => {
        j.design.records = j.design.records.filter((r) => r.kind !== 'back');
      }),
    );
    if (!read.ok) throw new Error('the cupboard is fine');
    const { job } = read;
    const edited = applyEdit(job, addBayBacksEdit(job, treeOf(job).all('case')[0]!));
    expect(edited.ok && treeOf(edited.job).all('back')).toMatchObject([
      { parent: 'left', fitting: 'rabbet' },
      { parent: 'right', fitting: 'rabbet' },
    ]);
  });
});
