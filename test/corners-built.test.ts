import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { applyEdit, checkJob, editOfCure } from '../src/job/index.ts';
import { type Traced, toMm } from '../src/measure/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { rowFaults } from './generate/judge-hole-rows.ts';
import { boxOf } from './generate/judge-set-out.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const FACE = {
  id: 'face-60',
  kind: 'countersunk',
  length: '60 mm',
  diameter: '4 mm',
  head: '8 mm',
  have: 200,
};

/** The small cupboard with a lid of its own, joined and backed as said; bottom and lid run through or not. */
function jobWith(joints: string, fitting: string, corners: object, without: readonly string[] = ['top']) {
  const job = equipped(smallJob()) as PlainJob;
  job.design.records = job.design.records.filter((r) => !without.includes(String(r.id)));
  Object.assign(recordOf(job, 'case'), { joints, ...corners });
  recordOf(job, 'back').fitting = fitting;
  job.shop.rack.screws.push(FACE);
  job.shop.rack.bits.push({ id: 'straight-6', kind: 'straight', diameter: '6 mm' });
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return read.job;
}

function planOf(...of: Parameters<typeof jobWith>): Plan {
  return planned(jobWith(...of));
}

function planned(document: unknown): Plan {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

function isBuiltAsDrawn(...of: Parameters<typeof jobWith>): void {
  const plan = planOf(...of);
  expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
  expect(plan.dryFit.faults).toEqual([]);
}

const BOTH = { bottom: 'under', lid: 'over' };

describe('which panel runs through at a corner', () => {
  test.each([
    ['pocket-screws', 'applied', BOTH],
    ['pocket-screws', 'groove', { lid: 'over' }],
    ['face-screws', 'rabbet', BOTH],
    ['face-screws', 'applied', { bottom: 'under' }],
    ['rabbet', 'applied', BOTH],
    ['rabbet', 'rabbet', BOTH],
    ['dado', 'groove', BOTH],
    ['stopped-dado', 'rabbet', { lid: 'over' }],
  ])('%s, the back by %s, %j: it is built as drawn', isBuiltAsDrawn);

  test('tongued sides stand in the bottom: a lid between them slides in last, from behind', () => {
    const plan = planOf('tongue', 'applied', { bottom: 'under' }, ['top', 'lipping']);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults).toEqual([]);
    const order = plan.build.operations.map((o) => o.id);
    expect(order.indexOf('C1/set')).toBeGreaterThan(order.indexOf('A2/set'));
  });

  test('one that goes into a side and takes the other is let down along both channels, and its card says so', () => {
    const plan = planOf('tongue', 'applied', { bottom: 'under-right', lid: 'over-left' }, ['top', 'lipping']);
    const card = plan.build.operations.find((o) => o.id === 'C1/set');
    expect(card?.lines.join(' ')).toContain('Let it down from behind, along all these channels at once');
    expect(plan.dryFit.faults).toEqual([]);
  });

  test('not where its front edging would run into the tongue of a divider: that is told, and what to do', () => {
    const piece = setOut(jobWith('tongue', 'applied', { bottom: 'under' }));
    const [stop] = piece.snags.filter((s) => s.level === 'stop');
    expect(stop?.code).toBe('joints.cannot-close');
    expect(stop?.sentence).toContain('tongue of the first divider');
    for (const cure of stop!.cures) {
      const [edit] = cure.edits!;
      const { value } = edit as { value: string };
      const cured = edit!.field === 'bottom' ? ['tongue', value] : [value, 'under'];
      const again = setOut(jobWith(cured[0]!, 'applied', { bottom: cured[1] }));
      expect(again.snags.filter((s) => s.level === 'stop')).toEqual([]);
    }
  });

  test('the panel that runs through has the full width, the sides stand on it and under it, the inside stays', () => {
    const [plain, through] = [{}, BOTH].map((c) => setOut(jobWith('pocket-screws', 'applied', c)));
    const length = (piece: typeof plain, id: string) =>
      toMm(piece!.ledger.ticks(piece!.parts.find((p) => p.id === id)!.length));
    expect(length(through, 'case/bottom')).toBe(length(plain, 'case/bottom') + 36);
    expect(length(through, 'case/lid')).toBe(length(plain, 'case/lid') + 36);
    expect(length(through, 'case/left-side')).toBe(length(plain, 'case/left-side') - 36);
    const sizes = (piece: typeof plain) =>
      piece!.openings.map((o) => [o.width, o.height, o.depth].map((t) => toMm(piece!.ledger.ticks(t))));
    expect(sizes(through)).toEqual(sizes(plain));
  });

  test('screws through a bottom that runs under the sides are out of sight', () => {
    const piece = setOut(jobWith('face-screws', 'applied', BOTH));
    const sight = (id: string) => piece.joints.find((j) => j.id === id)!.heads!.sight;
    expect(sight('case/bottom>case/left-side')).toBe('out-of-sight');
    expect(sight('case/lid>case/left-side')).toBe('seen');
  });

  test('an applied top leaves no lid to speak of', () => {
    const job = smallJob();
    recordOf(job, 'case').lid = 'over';
    const read = checkJob(job);
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.lid-and-top']);
  });
});

describe('which panel runs through, at each corner by itself', () => {
  test.each([
    ['pocket-screws', 'rabbet', { bottom: 'under-left' }],
    ['face-screws', 'groove', { bottom: 'under-right', lid: 'over-right' }],
    ['rabbet', 'rabbet', { bottom: 'under-left', lid: 'over-right' }],
    ['dado', 'groove', { lid: 'over-left' }],
    ['stopped-dado', 'rabbet', { bottom: 'under-right', lid: 'over-left' }],
    ['tongue', 'rabbet', { lid: 'over-left' }],
    ['tongue', 'applied', { bottom: 'under-right', lid: 'over-right' }],
    ['dowels', 'applied', { bottom: 'under-left', lid: 'over' }],
    ['biscuits', 'rabbet', { lid: 'over-right' }],
  ])('%s, the back by %s, %j: it is built as drawn', isBuiltAsDrawn);

  test('a side stands on the bottom at one corner, and beside it at the other', () => {
    const piece = setOut(jobWith('pocket-screws', 'applied', { bottom: 'under-left', lid: 'over-right' }));
    const mm = (t: Traced) => toMm(piece.ledger.ticks(t));
    const box = (id: string) => {
      const { min, max } = boxOf(piece, piece.parts.find((p) => p.id === id)!);
      return [min[0], max[0], min[2], max[2]].map((t) => t / 3200);
    };
    expect(box('case/bottom')).toEqual([0, 982, 80, 98]);
    expect(box('case/lid')).toEqual([18, 1000, 782, 800]);
    expect(box('case/left-side')).toEqual([0, 18, 98, 800]);
    expect(box('case/right-side')).toEqual([982, 1000, 80, 782]);
    expect(piece.openings.map((o) => mm(o.height))).toEqual([684, 684, 684]);
    const joined = piece.joints.map((j) => j.id).filter((id) => /^case.*>case/.test(id));
    expect(joined).toEqual([
      'case/left-side>case/bottom',
      'case/bottom>case/right-side',
      'case/lid>case/left-side',
      'case/right-side>case/lid',
    ]);
  });

  test('rabbets for the back end where the bottom and the lid end at a side, and run out where it stands under them', () => {
    const piece = setOut(jobWith('pocket-screws', 'rabbet', { bottom: 'under-left', lid: 'over-left' }));
    const run = (id: string) => {
      const side = piece.parts.find((p) => p.id === id)!;
      const rabbet = side.features.find((f) => f.kind === 'rabbet')!;
      const { from, to } = rabbet as { from: Traced; to: Traced };
      return [from, to, side.length].map((t) => toMm(piece.ledger.ticks(t)));
    };
    expect(run('case/left-side')).toEqual([0, 684, 684]);
    expect(run('case/right-side')).toEqual([18, 702, 720]);
  });

  test.each([
    ['rabbet', '18.1 mm'],
    ['tongue', '17.9 mm'],
  ])(
    '%s in boards of %s: they run into what takes the lid’s end on a side with cases on both faces',
    (joints, nominal) => {
      const job = equipped(smallJob()) as PlainJob;
      // The router is set to tenths, a stop is marked to halves.
      lotOf(job, 'birch18').nominal = nominal;
      const box = { kind: 'case', parent: 'row', board: 'birch18', joints };
      const back = { kind: 'back', board: 'birch6', fitting: 'rabbet' };
      job.design.records = [
        job.design.records[0]!,
        { id: 'row', kind: 'group', parent: 'cupboard', lay: 'across' },
        { ...box, id: 'a', rightSide: 'shared' },
        { ...box, id: 'b', bottom: 'under-right', lid: 'over-right' },
        { ...back, id: 'back-b', parent: 'b' },
      ];
      const plan = planned(job);
      expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
      expect(plan.dryFit.faults).toEqual([]);
    },
  );

  test.each(['dowels', 'biscuits'])(
    '%s point two ways where each panel runs past the next all round',
    (joints) => {
      const piece = setOut(jobWith(joints, 'applied', { bottom: 'under-left', lid: 'over-right' }));
      const stops = piece.snags.filter((s) => s.level === 'stop').map((s) => s.code);
      expect(stops).toEqual(['joints.cannot-close']);
    },
  );

  test.each([
    ['tongue', 'groove', { lid: 'over-left' }, 'no clamp gets past the back'],
    ['biscuits', 'groove', { bottom: 'under', lid: 'over-right' }, 'no clamp gets past the back'],
    ['tongue', 'applied', { bottom: 'under-left' }, 'The left side stands in the bottom'],
    ['tongue', 'applied', { bottom: 'under', lid: 'over-left' }, 'the tongue of the left side'],
  ] as const)(
    '%s, the back by %s, %j: it is told why not, and each cure mends it',
    (joints, fitting, corners, why) => {
      const job = jobWith(joints, fitting, corners);
      const [stop, ...others] = setOut(job).snags.filter((s) => s.level === 'stop');
      expect(others).toEqual([]);
      expect(stop).toMatchObject({ code: 'joints.cannot-close', sentence: expect.stringContaining(why) });
      for (const cure of stop!.cures) {
        const edited = applyEdit(job, editOfCure(cure.edits!));
        const read = edited.ok ? checkJob(edited.job) : edited;
        expect(read.ok && setOut(read.job).snags.filter((s) => s.level === 'stop')).toEqual([]);
      }
    },
  );

  test.each([
    ['tongue', { bottom: 'under-left', lid: 'over-left' }],
    ['tongue', { bottom: 'under-right', lid: 'over-right' }],
    ['biscuits', { bottom: 'under-left', lid: 'over-left' }],
  ])(
    '%s, %j: a back in grooves slides in before the lid and the side that closes on it',
    (joints, corners) => {
      const job = equipped(smallJob()) as PlainJob;
      const kept = ['cupboard', 'case', 'back', 'lipping'].map((id) => recordOf(job, id));
      const shelf = { id: 'shelf', kind: 'shelf', parent: 'inside', at: '300 mm' };
      Object.assign(recordOf(job, 'case'), { joints, ...corners });
      recordOf(job, 'back').fitting = 'groove';
      job.design.records = [...kept, { id: 'inside', kind: 'opening', parent: 'case' }, shelf];
      const plan = planned(job);
      expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
      expect(plan.dryFit.fits).toBe(true);
    },
  );

  test('dividers for trays stand before the lid, which can’t slide in over their tongues: that is told', () => {
    const job = equipped(smallJob()) as PlainJob;
    const kept = ['cupboard', 'case', 'lipping'].map((id) => recordOf(job, id));
    const trays = { id: 'trays', kind: 'trays', parent: 'inside', board: 'birch6', count: 2 };
    const whole = { id: 'inside', kind: 'opening', parent: 'case' };
    Object.assign(recordOf(job, 'case'), { joints: 'tongue' });
    job.design.records = [...kept, whole, trays];
    const stops = (bottom: string) => {
      recordOf(job, 'case').bottom = bottom;
      const read = checkJob(job);
      if (!read.ok) throw new Error(read.snags[0]!.sentence);
      return setOut(read.job).snags.flatMap((s) => (s.level === 'stop' ? [s.code] : []));
    };
    expect(stops('under-left')).toEqual(['joints.cannot-close']);
    expect(stops('between')).toEqual([]);
  });

  test('a side that has a case on either face is run past by neither, but their other sides may be', () => {
    const job = smallJob();
    const box = { kind: 'case', parent: 'row', board: 'birch18' };
    job.design.records = [
      job.design.records[0]!,
      { id: 'row', kind: 'group', parent: 'cupboard', lay: 'across' },
      { ...box, id: 'a', bottom: 'under-left', lid: 'over' },
      { ...box, id: 'b', bottom: 'under-right', leftSide: 'shared' },
    ];
    const read = checkJob(job);
    const snags = read.ok ? [] : read.snags;
    expect(snags.map((s) => s.where.path)).toEqual(['design/records/a/lid']);
    const [edit] = snags[0]!.cures[0]!.edits!;
    expect(edit).toEqual({ record: 'a', field: 'lid', value: 'over-left' });
    recordOf(job, 'a').lid = 'over-left';
    const mended = checkJob(job);
    expect(mended.ok && setOut(mended.job).snags.filter((s) => s.level === 'stop')).toEqual([]);
  });

  test('sides that run to the floor can’t stand on a bottom, not even one of them', () => {
    const job = smallJob();
    recordOf(job, 'case').bottom = 'under-right';
    Object.assign(recordOf(job, 'base'), { form: 'toe-kick' });
    const read = checkJob(job);
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.base-form']);
  });

  test('sides of two lengths are no blank of both, but go with a lid over one of them into one strip', () => {
    const codes = (more: object) =>
      setOut(jobWith('dado', 'applied', { lid: 'over-left', ...more })).snags.map((s) => s.code);
    expect(codes({ oneBlank: 'sides' })).toContain('blanks.cut-apart');
    expect(codes({ oneStrip: 'sides-and-lid' })).not.toContain('cases.no-strip');
  });

  test('only the side beside the lid shows its upper end, and it alone is edged there', () => {
    const job = jobWith('pocket-screws', 'applied', { lid: 'over-left' });
    Object.assign(job.design.records.find((r) => r.id === 'lipping')!, { sides: ['front', 'left', 'upper'] });
    const piece = setOut(job);
    const on = piece.parts.map((p) => p.id).filter((id) => /(left|upper)-on:/.test(id));
    expect(on).toEqual(['lipping/upper-on:case/right-side', 'lipping/left-on:case/lid']);
  });

  test('holes mirrored into the other side are as high there, though it stands on the bottom', () => {
    const job = jobWith('pocket-screws', 'applied', { bottom: 'under-right' });
    const row = { id: 'row', kind: 'holes', parent: 'case', panel: 'left-side', mirror: true, face: 'left' };
    const more = {
      count: 2,
      diameter: '5 mm',
      depth: '8 mm',
      lay: 'up',
      fromBelow: '300 mm',
      apart: '64 mm',
    };
    job.design.records.push({ ...row, ...more, fromFront: '60 mm' } as never);
    const read = checkJob(job);
    if (!read.ok) throw new Error(read.snags[0]!.sentence);
    expect(rowFaults(read.job, setOut(read.job))).toEqual([]);
  });

  test('backs of bays some in rabbets and some in grooves: one in grooves keeps clamps out where a jaw would stand before it', () => {
    const stops = (left: string, right: string) => {
      const job = equipped(smallJob()) as PlainJob;
      job.design.records = job.design.records.filter((r) => r.id !== 'top' && r.id !== 'back');
      Object.assign(recordOf(job, 'case'), { joints: 'dowels', lid: 'over-left' });
      const back = { kind: 'back', board: 'birch6' };
      job.design.records.push(
        { ...back, id: 'back-left', parent: 'left', fitting: left },
        { ...back, id: 'back-right', parent: 'right', fitting: right },
      );
      const { snags, dryFit } = planned(job);
      const codes = snags.filter((s) => s.level === 'stop').map((s) => s.code);
      return {
        told: codes.includes('joints.cannot-close'),
        clamped: !dryFit.faults.some((f) => f.code === 'no-clamp'),
      };
    };
    // The right side comes last: the other jaw stands in the left bay, beyond the divider that the shelf ends at.
    expect(stops('rabbet', 'groove')).toEqual({ told: false, clamped: true });
    expect(stops('groove', 'rabbet')).toEqual({ told: true, clamped: false });
  });
});
