import { describe, expect, test } from 'vitest';
import type { Act } from '../src/build/index.ts';
import { checkJob } from '../src/job/index.ts';
import { fromMm, type Traced, toMm } from '../src/measure/index.ts';
import type { Plan } from '../src/plan/index.ts';
import { dryFaults } from './build/dry-faults.ts';
import { planned } from './build/planned.ts';
import { equipped } from './generate/equipped.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

type Change = (job: PlainJob) => void;

function jobWith(change: Change): PlainJob {
  const job = equipped(smallJob()) as PlainJob;
  job.design.records = job.design.records.filter((r) => r.id !== 'lipping');
  Object.assign(recordOf(job, 'case'), { joints: 'mitre', inMitres: 'spline', splineBoard: 'ply4' });
  job.shop.rack.lots.push({
    id: 'ply4',
    name: 'Birch plywood 4 mm',
    material: 'birch-plywood',
    form: 'sheet',
    nominal: '4 mm',
    thickness: '3.9 mm',
    stock: [{ id: 'ply4-sheet', length: '1200 mm', width: '600 mm', price: 20 }],
  });
  const rack = job.shop.rack as unknown as { bits: object[] };
  rack.bits.push({ id: 'straight-4', kind: 'straight', diameter: '4 mm' });
  change(job);
  return job;
}

function snagsOf(change: Change): string[] {
  const read = checkJob(jobWith(change));
  return read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}`);
}

const planOf = (change: Change = () => {}): Plan => planned(jobWith(change));

const withLid =
  (fitting: string): Change =>
  (job) => {
    job.design.records = job.design.records.filter((r) => r.id !== 'top');
    recordOf(job, 'back').fitting = fitting;
  };
const without =
  (kind: string): Change =>
  (job) => {
    job.shop.tools.splice(0, job.shop.tools.length, ...job.shop.tools.filter((t) => t.kind !== kind));
  };

/** What the dry fit says when one operation is another than was planned. */
async function sentences(plan: Plan, change: (does: Act) => Act): Promise<string> {
  const faults = await dryFaults({ ...plan, drawn: plan.setOut }, (o) => ({ ...o, does: change(o.does) }));
  return faults.map((f) => f.sentence).join('\n');
}

describe('a case with splines in its mitres', () => {
  test.each([
    ['under an applied top', () => {}, 2],
    ['with a lid, its back in rabbets', withLid('rabbet'), 4],
    ['with a lid, its back in grooves', withLid('groove'), 4],
    [
      'with a lid, its back laid on, in a shop without a router',
      (job: PlainJob) => {
        withLid('applied')(job);
        without('router')(job);
      },
      4,
    ],
  ] as const)('%s: it is built as drawn', (_, change, count) => {
    const plan = planOf(change);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults.map((f) => f.sentence)).toEqual([]);
    expect(plan.setOut.splines).toHaveLength(count);
    const sawn = plan.breakdown.lots.find((l) => l.lot.id === 'ply4')!;
    const cut = [...sawn.problem.pieces.values()].flat();
    expect(cut.map((x) => x.id).sort()).toEqual(plan.setOut.splines.map((x) => x.id).sort());
    expect(plan.build.operations.filter((o) => o.does.act === 'set' && o.does.splines)).toHaveLength(
      count === 2 ? 2 : 3,
    );
  });

  test('a groove leaves wood to the outer face, square to it: slope of the board less inset, width and depth, over root two (geometry)', () => {
    const { setOut } = planOf();
    const mm = (t: Traced) => toMm(setOut.ledger.ticks(t));
    expect(setOut.pegs).toHaveLength(2);
    for (const peg of setOut.pegs) {
      const panel = setOut.parts.find((p) => p.id === peg.parts[1])!;
      const groove = panel.features.find((f) => f.kind === 'spline-groove');
      if (groove?.kind !== 'spline-groove') throw new Error('no groove');
      const foot = mm(groove.inset) + mm(groove.width) + mm(groove.depth);
      expect(mm(peg.spare)).toBeCloseTo((18 * Math.SQRT2 - foot) / Math.SQRT2, 2);
      expect(mm(peg.spare)).toBeGreaterThanOrEqual(4);
      // Half as deep as the board, from memory; the spline 1.5 mm narrower than both grooves, on the saw's half millimetres.
      expect(mm(groove.depth)).toBe(9);
      expect(mm(peg.across)).toBe(16.5);
    }
  });

  test('its cards print the slope guide, the bit and how far down; the rail and the blade where there is no router', () => {
    const lines = (change: Change) =>
      planOf(change)
        .build.operations.filter((o) => o.does.act === 'spline-groove')
        .flatMap((o) => o.lines)
        .join('\n');
    expect(lines(() => {})).toMatch(
      /From the sharp edge of the strip, .* to the nearer side of the bit: \{2\}/,
    );
    expect(lines(() => {})).toContain('It stops');
    const sawn = lines((job) => {
      withLid('applied')(job);
      without('router')(job);
    });
    expect(sawn).toMatch(/measured along itself: \{0\} and \{1\}; then \{2\} and \{3\}\./);
    expect(sawn).toContain('Right through from edge to edge');
  });

  test('mistakes are noticed: further down, too shallow, through the outer face, no spline, a spline where the back comes', async () => {
    const plan = planOf(withLid('groove'));
    const more = (t: Traced, mm: number, of = plan) => {
      const l = of.setOut.ledger;
      const row = { id: `mistake ${mm}`, value: fromMm(mm), says: 'a mistake', source: 'the test' };
      return l.sum('off', t, l.row(row));
    };
    const grooved = (down: number, deep: number) =>
      sentences(plan, (a) =>
        a.act === 'spline-groove' && 'routed' in a.by && a.workpieces.includes('B1')
          ? {
              ...a,
              by: { ...a.by, routed: a.by.routed.map((t) => more(t, down)), depth: more(a.by.depth, deep) },
            }
          : a,
      );
    expect(await grooved(0, 0)).toBe('');
    expect(await grooved(3, 0)).toContain('no grooves for it meet there');
    expect(await grooved(0, -2)).toContain('too wide: the mitre stays open');
    expect(await grooved(12, 4)).toContain('comes through the outer face');
    const set = (behind: number, of = plan) =>
      sentences(of, (a) =>
        a.act === 'set' && a.splines
          ? {
              ...a,
              splines:
                behind === 0 ? [] : a.splines.map((x) => ({ ...x, behind: more(x.behind, behind, of) })),
            }
          : a,
      );
    expect(await set(0)).toContain('no card puts any in');
    expect(await set(12)).toContain('runs past the end of its groove');
    // The back stands in rabbets behind it.
    expect(await set(12, planOf())).toContain('runs into spline');
  });

  test('a spline that was cut too short, or not cut to its length at all, is noticed', async () => {
    const plan = planOf(withLid('groove'));
    const cut = plan.build.operations.find(
      (o) =>
        o.does.act === 'saw' && o.does.across === 'length' && o.does.yields.some((y) => y?.name === 'Z1'),
    )!;
    const l = plan.setOut.ledger;
    const row = { id: 'mistake', value: fromMm(3), says: 'a mistake', source: 'the test' };
    const short = await sentences(plan, (a) =>
      a === cut.does && a.act === 'saw' ? { ...a, at: l.less('too short', a.at, l.row(row)) } : a,
    );
    expect(short).toMatch(/spline Z1 is [\d.]+ mm long, not/);
  });

  test('its grooves in a side stop short of the rabbet behind', () => {
    const { setOut } = planOf(withLid('rabbet'));
    const t = (x: Traced): number => setOut.ledger.ticks(x);
    const side = setOut.parts.find((p) => p.id === 'case/left-side')!;
    const rabbet = side.features.find((f) => f.kind === 'rabbet' && f.edge !== 'start' && f.edge !== 'end')!;
    if (rabbet.kind !== 'rabbet') throw new Error('no rabbet');
    const grooves = side.features.flatMap((f) => (f.kind === 'spline-groove' ? [f] : []));
    expect(grooves.map((f) => f.edge).sort()).toEqual(['end', 'start']);
    for (const f of grooves)
      expect(
        rabbet.edge === 'far' ? t(side.width) - t(rabbet.width) - t(f.to) : t(f.from) - t(rabbet.width),
      ).toBeGreaterThanOrEqual(0);
  });

  test.each([
    ['no board for them', (job: PlainJob) => delete recordOf(job, 'case').splineBoard],
    ['solid wood', (job: PlainJob) => Object.assign(job.shop.rack.lots.at(-1)!, { material: 'oak-white' })],
    ['a board without splines', (job: PlainJob) => delete recordOf(job, 'case').inMitres],
  ])('%s: refused at the board', (_, change) => {
    expect(snagsOf((job) => void change(job))).toEqual([
      'design.mitred-case design/records/case/splineBoard',
    ]);
  });

  test('strips for splines are told once, as what they are', () => {
    const strip = (job: PlainJob) =>
      Object.assign(recordOf(job, 'case'), {
        splineBoard: job.shop.rack.lots.find((l) => l.form === 'strip')!.id,
      });
    expect(snagsOf(strip)).toEqual(['document.wrong-form design/records/case/splineBoard']);
  });

  test.each([
    ['6.5 mm', '18 mm'],
    ['4.2 mm', '12 mm'],
    // Here the wood left behind the groove tells, before a third of the board does.
    ['2.6 mm', '9 mm'],
  ])(
    'a spline of %s is too thick for boards of %s, told once, with the thickest that does',
    (thick, board) => {
      const stops = (thickness: string) => {
        const { setOut } = planOf((job) => {
          Object.assign(job.shop.rack.lots.at(-1)!, { thickness });
          lotOf(job, 'birch18').thickness = board;
        });
        return setOut.snags.filter((s) => s.code === 'mitres.spline-thick');
      };
      const told = stops(thick);
      expect(told).toHaveLength(1);
      const most = Number(
        /^Name a lot of plywood of at most ([\d.]+) mm\.$/.exec(told[0]!.cures[0]!.says)![1],
      );
      expect(told[0]!.cures[1]!.edits!.map((e) => e.field)).toEqual(['inMitres', 'splineBoard']);
      expect(stops(`${most} mm`)).toEqual([]);
      expect(stops(`${most + 0.3} mm`)).toHaveLength(1);
    },
  );

  test('a blade wider than the spline, or marks too coarse to move it by, is told once', () => {
    const { setOut } = planOf((job) => {
      without('router')(job);
      withLid('applied')(job);
      for (const t of job.shop.tools) if (t.kind === 'circular-saw') t.kerf = '4.6 mm';
    });
    expect(setOut.snags.filter((s) => s.level === 'stop').map((s) => [s.code, s.sentence])).toEqual([
      ['mitres.spline-loose', expect.stringContaining('0.7 mm wider than “Birch plywood 4 mm” is thick')],
    ]);
  });
});
