import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { dryFit } from '../src/dry-fit/index.ts';
import { checkJob } from '../src/job/index.ts';
import { fromMm, toMm } from '../src/measure/index.ts';
import { dryFitInput, type Plan, planJob } from '../src/plan/index.ts';
import { glueAreaMm2 } from '../src/setting-out/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { equipped } from './generate/equipped.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function jobWith(change: (job: PlainJob) => void): PlainJob {
  const job = equipped(smallJob()) as PlainJob;
  recordOf(job, 'case').joints = 'mitre';
  job.design.records = job.design.records.filter((r) => r.id !== 'lipping');
  change(job);
  return job;
}

function planOf(change: (job: PlainJob) => void = () => {}): Plan {
  const read = checkJob(jobWith(change));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

const withLid = (fitting: string) => (job: PlainJob) => {
  job.design.records = job.design.records.filter((r) => r.id !== 'top');
  recordOf(job, 'back').fitting = fitting;
};

describe('a case with mitred corners', () => {
  test.each([
    ['under an applied top', () => {}],
    ['with a lid, its back in rabbets', withLid('rabbet')],
    ['with a lid, its back in grooves', withLid('groove')],
    ['with a lid, its back laid on', withLid('applied')],
  ])('%s: it is built as drawn', (_, change) => {
    const plan = planOf(change);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults.map((f) => f.sentence)).toEqual([]);
  });

  test.each([
    ['under an applied top', () => {}],
    ['with a lid', withLid('rabbet')],
  ])('%s: corners that are folded and never left to set are noticed', (_, change) => {
    const plan = planOf(change);
    const cured = plan.build.operations.find((o) => o.id === 'case/cure')!;
    const cards = {
      ...plan.build,
      operations: plan.build.operations.map((o) =>
        o === cured ? { ...o, kind: 'adjust' as const, lengths: [] } : o,
      ),
    };
    const run = dryFit(dryFitInput(plan.job, plan.setOut, plan.breakdown, cards, solids));
    let step = run.next();
    while (!step.done) step = run.next();
    const wet = step.value.faults.filter((f) => f.code === 'still-wet');
    expect(wet.map((f) => f.on)).toContain('A1');
    expect(wet.find((f) => f.on === 'A1')!.sentence).toContain('let it set after “Set A1');
  });

  test.each([
    ['under an applied top', () => {}],
    ['with a lid, its back in rabbets', withLid('rabbet')],
    ['with a lid, its back in grooves', withLid('groove')],
  ])('%s, with biscuits in its mitres: it is built as drawn', (_, change) => {
    const plan = planOf((job) => {
      change(job);
      Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' });
    });
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults.map((f) => f.sentence)).toEqual([]);
    const corners = plan.setOut.joints.filter((j) => j.kind === 'mitre' && j.duty === 'carries');
    for (const j of corners) expect(j.pegs!.length).toBeGreaterThan(1);
  });

  test('every panel is as long as the case is over its tips; a 45 degree face is 1.414 times the thickness (geometry)', () => {
    const plan = planOf(withLid('applied'));
    const { ledger, parts, joints } = plan.setOut;
    const mm = (id: string) => toMm(ledger.ticks(parts.find((p) => p.id === id)!.length));
    expect(mm('case/bottom')).toBe(1000);
    expect(mm('case/lid')).toBe(1000);
    expect(mm('case/left-side')).toBe(720);
    const corners = joints.filter((j) => j.kind === 'mitre' && j.duty === 'carries');
    expect(corners).toHaveLength(4);
    const depth = toMm(ledger.ticks(parts.find((p) => p.id === 'case/left-side')!.width));
    for (const j of corners) expect(glueAreaMm2(plan.setOut, j)).toBeCloseTo(depth * 18 * Math.SQRT2, -1);
  });

  test('a mitre on the wrong face, or a blank without its allowance, is noticed', () => {
    const plan = planOf(withLid('applied'));
    const { build, setOut, breakdown } = plan;
    const codes = (of: (act: (typeof build.operations)[number]['does']) => typeof act) => {
      const operations = build.operations.map((o) => ({ ...o, does: of(o.does) }));
      const run = dryFit({
        ...dryFitInput(plan.job, setOut, breakdown, build, solids),
        build: { ...build, operations },
      });
      let step = run.next();
      while (!step.done) step = run.next();
      return step.value.faults.map((f) => f.code);
    };
    const isPanel = (marks: readonly string[]) => marks.includes('A1');
    expect(
      codes((a) =>
        a.act === 'bevel' && isPanel(a.workpieces)
          ? { ...a, fullFace: a.fullFace === 'show' ? 'under' : 'show' }
          : a,
      ),
    ).not.toEqual([]);
    const more = setOut.ledger.row({
      id: 'mistake',
      value: fromMm(3),
      says: 'a mistake',
      source: 'the test',
    });
    expect(
      codes((a) =>
        a.act === 'bevel' && isPanel(a.workpieces) ? { ...a, at: setOut.ledger.sum('off', a.at, more) } : a,
      ),
    ).not.toEqual([]);
  });

  test('a slot too far down a slope, or as far from its mate’s, is noticed', () => {
    const plan = planOf((job) => {
      withLid('applied')(job);
      Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' });
    });
    const { build, setOut, breakdown } = plan;
    const more = (mm: number) =>
      setOut.ledger.row({ id: `mistake ${mm}`, value: fromMm(mm), says: 'a mistake', source: 'the test' });
    const sentences = (mm: number) => {
      const operations = build.operations.map((o) => {
        const { does } = o;
        if (does.act !== 'biscuit-slot' || !does.workpieces.includes('B1')) return o;
        const at = does.at.map(([a, b]) => [a, setOut.ledger.sum('off', b, more(mm))] as const);
        return { ...o, does: { ...does, at } };
      });
      const run = dryFit({
        ...dryFitInput(plan.job, setOut, breakdown, build, solids),
        build: { ...build, operations },
      });
      let step = run.next();
      while (!step.done) step = run.next();
      return step.value.faults.map((f) => f.sentence).join('\n');
    };
    expect(sentences(0)).toBe('');
    expect(sentences(4)).toContain('are to go between');
    expect(sentences(12)).toContain('comes through the outer face');
  });

  test.each([
    ['with a lid', withLid('applied'), ['A1', 'A2', 'B1', 'C1'], 'all corners'],
    ['under an applied top', () => {}, ['A1', 'A2', 'B1'], 'both corners'],
  ])(
    '%s: its mitres on biscuits are closed in one glue-up, however short the glue’s time',
    (_, change, parts, corners) => {
      const { build, setOut, snags } = planOf((job) => {
        change(job);
        Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' });
      });
      const first = build.glueUps.find((g) => g.operations.includes('A1/set'))!;
      expect([...first.parts].sort()).toEqual(parts);
      expect(first.minutes).toBeGreaterThan(2);
      expect(snags.some((s) => s.code === 'glue-up.outruns-glue')).toBe(first.minutes > first.leaves);
      const rehearsal = build.operations.find((o) => o.id === `${first.id}/rehearse`)!;
      expect(rehearsal.lines[0]).toContain(first.parts.length === 4 ? 'B1, A1, A2, C1' : 'B1, A1, A2');
      expect(rehearsal.lines[1]).toContain('a band clamp');
      const last = build.operations.find(
        (o) => o.id === first.operations.findLast((id) => id.endsWith('/set')),
      )!;
      expect(last.lines.join(' ')).toContain(`close ${corners} together`);
      const drink = build.operations.filter((o) => o.lines.some((line) => line.includes('Wait two minutes')));
      expect(drink.map((o) => o.id)).toEqual(['A1/set']);
      // The box of 1000 mm less its sides of 18 mm: where no lid holds them, a stick does.
      const stick = last.lines.flatMap((line) => /spacer stick, {(\d+)} long/.exec(line)?.[1] ?? []);
      expect(stick.map((n) => toMm(setOut.ledger.ticks(last.lengths[Number(n)]!)))).toEqual(
        parts.length === 3 ? [toMm(setOut.ledger.ticks(setOut.dimensions.get('inside.width')!))] : [],
      );
    },
  );

  test('glue that sets while a corner on biscuits stands open is noticed', () => {
    const plan = planOf((job) => {
      withLid('applied')(job);
      Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' });
    });
    const { build, setOut, breakdown } = plan;
    const cure = build.operations.find((o) => o.id === 'case/cure')!;
    const operations = build.operations
      .filter((o) => o !== cure)
      .flatMap((o) => (o.id === 'C1/set' ? [cure, o] : [o]));
    const run = dryFit({
      ...dryFitInput(plan.job, setOut, breakdown, build, solids),
      build: { ...build, operations },
    });
    let step = run.next();
    while (!step.done) step = run.next();
    expect(step.value.faults.map((f) => f.sentence).join(' ')).toContain('is still open when its glue sets');
  });

  test('biscuits stand near the inside: a slot there leaves wood, square to the slope, at the outer face (geometry)', () => {
    const { setOut } = planOf((job) => Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' }));
    const mm = (t: (typeof setOut.pegs)[number]['spare']) => toMm(setOut.ledger.ticks(t));
    for (const peg of setOut.pegs) {
      const panel = setOut.parts.find((p) => p.id === peg.parts[1])!;
      const slot = panel.features.find((f) => f.kind === 'biscuit-slot');
      if (slot?.kind !== 'biscuit-slot') throw new Error('no slot');
      const [down, half] = [mm(slot.at[1]), mm(slot.kerf) / 2];
      expect(down - half).toBeGreaterThanOrEqual(3);
      expect(mm(peg.spare)).toBeCloseTo(mm(panel.thickness) * Math.SQRT2 - down - half - mm(slot.depth), 2);
      expect(mm(peg.spare)).toBeGreaterThanOrEqual(3);
    }
  });

  test('biscuits in corners that aren’t mitred are refused; boards too thin for any are told', () => {
    const read = checkJob(
      jobWith((job) => Object.assign(recordOf(job, 'case'), { joints: 'rabbet', inMitres: 'biscuits' })),
    );
    expect(read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}`)).toEqual([
      'design.mitred-case design/records/case/inMitres',
    ]);
    const plan = planOf((job) => {
      Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' });
      lotOf(job, 'birch18').thickness = '12 mm';
    });
    expect(plan.setOut.snags.filter((s) => s.level === 'stop').map((s) => s.code)).toContain(
      'pegs.none-suits',
    );
  });

  test.each([
    ['none on the rack', [], 'and the rack has none'],
    ['too large a one', [['70 mm', '36 mm', '3.9 mm']], 'is too large for mitres in boards of 18 mm'],
    ['one thicker than the slot', [['47 mm', '15 mm', '6 mm']], 'goes into the joiner’s slot of 4 mm'],
  ])('biscuits for mitres, %s: the stop says which', (_, sizes, words) => {
    const { setOut } = planOf((job) => {
      Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' });
      const rack = job.shop.rack as unknown as { fixings: { kind: string }[] };
      const others = rack.fixings.filter((f) => f.kind !== 'biscuit');
      const own = sizes.map(([length, width, thickness], i) => ({
        ...{ id: `own-${i}`, kind: 'biscuit' },
        ...{ length, width, thickness },
      }));
      rack.fixings = [...others, ...own];
    });
    expect(setOut.snags.find((s) => s.code === 'pegs.none-suits')?.sentence).toContain(words);
  });

  test('biscuits for mitres without a joiner: they may be left out', () => {
    const { snags } = planOf((job) => {
      Object.assign(recordOf(job, 'case'), { inMitres: 'biscuits' });
      job.shop.tools.splice(
        0,
        job.shop.tools.length,
        ...job.shop.tools.filter((t) => t.kind !== 'biscuit-joiner'),
      );
    });
    const cures = snags.filter((s) => s.code === 'tools.missing').flatMap((s) => s.cures.map((c) => c.says));
    expect(cures.join(' ')).toContain('Leave “inMitres” out');
  });

  test.each([
    [
      'a bottom that runs through',
      (job: PlainJob) => Object.assign(recordOf(job, 'case'), { bottom: 'under' }),
    ],
    ['a kick board', (job: PlainJob) => Object.assign(recordOf(job, 'base'), { form: 'toe-kick' })],
    [
      'edging',
      (job: PlainJob) =>
        job.design.records.push({ id: 'lipping', kind: 'edging', parent: 'case', strip: 'ash6' }),
    ],
  ])('%s is refused', (_, change) => {
    const read = checkJob(jobWith(change));
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.mitred-case']);
  });

  test('a saw that can’t reach through at 45 degrees is told', () => {
    const plan = planOf((job) => {
      withLid('applied')(job);
      lotOf(job, 'birch18').thickness = '18 mm';
      const saw = job.shop.tools.find((t) => t.kind === 'circular-saw')!;
      saw.reach45 = '15 mm';
    });
    expect(plan.snags.map((s) => s.code)).toContain('tools.saw-shallow-tilted');
  });
});
