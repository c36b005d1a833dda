import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fewestSheets } from '../../../test/fewest-sheets.ts';
import { readCutProblem } from '../cut-contract.ts';
import type { CutNode, CutPlan } from '../cut-plan.ts';
import { cutPlanJson } from '../cut-plan-json.ts';
import type { CutProblem } from '../cut-problem.ts';
import { judgeCuts } from '../judge/judge-cuts.ts';
import { readCutPlan } from '../judge/read-cut-plan.ts';
import { lowerBound } from './lower-bound.ts';
import { type CutOptions, planCuts } from './plan-cuts.ts';

function problem(json: unknown): CutProblem {
  const r = readCutProblem(json);
  if (!r.ok) throw new Error(r.snags.map((s) => s.sentence).join('\n'));
  return r.problem;
}

function planned(p: CutProblem, options: CutOptions = { effort: 300_000 }): CutPlan {
  const steps = planCuts(p, options);
  for (;;) {
    const s = steps.next();
    if (s.done) return s.value;
  }
}

function findings(p: CutProblem, plan: CutPlan): string[] {
  const read = readCutPlan(p, JSON.parse(JSON.stringify(cutPlanJson(p, plan))));
  const again = read.plan ? judgeCuts(p, read.plan).findings : [];
  return [...judgeCuts(p, plan).findings, ...read.findings, ...again].map((f) => `${f.code}: ${f.says}`);
}

const size = (most: number) => fc.integer({ min: 1, max: most });
const sheets = fc.record({
  kerf_mm: fc.constantFrom(0, 1, 2.2, 3.175),
  stock: fc
    .array(
      fc.record(
        {
          length_mm: size(60),
          width_mm: size(60),
          count: fc.integer({ min: 0, max: 3 }),
          cost: fc.integer({ min: 0, max: 50 }),
          trim_mm: fc.constantFrom(0, 1, 2.5),
        },
        { requiredKeys: ['length_mm', 'width_mm'] },
      ),
      { minLength: 1, maxLength: 3 },
    )
    .map((s) =>
      s.map((x, i) => ({ id: `s${i}`, ...x, length_mm: x.length_mm + 6, width_mm: x.width_mm + 6 })),
    ),
  pieces: fc
    .array(fc.record({ length_mm: size(40), width_mm: size(40), count: size(4), turn: fc.boolean() }), {
      maxLength: 6,
    })
    .map((p) => p.map((x, i) => ({ id: `p${i}`, ...x }))),
});
const bars = fc.record({
  kerf_mm: fc.constantFrom(0, 3, 3.175),
  stock: fc
    .array(
      fc.record(
        { length_mm: size(90), count: fc.integer({ min: 0, max: 3 }) },
        { requiredKeys: ['length_mm'] },
      ),
      { minLength: 1, maxLength: 3 },
    )
    .map((s) => s.map((x, i) => ({ id: `s${i}`, ...x }))),
  pieces: fc
    .array(fc.record({ length_mm: size(60), count: size(6) }), { maxLength: 6 })
    .map((p) => p.map((x, i) => ({ id: `p${i}`, ...x }))),
});

describe('planCuts', () => {
  it('makes plans of sheets that the judge accepts', () => {
    fc.assert(
      fc.property(sheets, (json) => {
        const p = problem(json);
        expect(findings(p, planned(p, { effort: 20_000 }))).toEqual([]);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('makes plans of bars that the judge accepts', () => {
    fc.assert(
      fc.property(bars, (json) => {
        const p = problem(json);
        expect(findings(p, planned(p, { effort: 20_000 }))).toEqual([]);
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('finds the fewest sheets, against trying everything', () => {
    const tiny = fc.record({
      kerf: fc.integer({ min: 0, max: 1 }),
      length: fc.integer({ min: 4, max: 9 }),
      width: fc.integer({ min: 4, max: 9 }),
      turn: fc.boolean(),
      pieces: fc.array(fc.tuple(size(6), size(6)), { minLength: 1, maxLength: 6 }),
    });
    fc.assert(
      fc.property(tiny, ({ kerf, length, width, turn, pieces }) => {
        const fits = pieces.filter(
          ([l, w]) => (l <= length && w <= width) || (turn && w <= length && l <= width),
        );
        const p = problem({
          kerf_mm: kerf,
          stock: [{ id: 's', length_mm: length, width_mm: width, cost: 1 }],
          pieces: fits.map(([l, w], i) => ({ id: `p${i}`, length_mm: l, width_mm: w, count: 1, turn })),
        });
        const plan = planned(p);
        const best = fewestSheets(
          length + kerf,
          width + kerf,
          fits.map(([l, w]) => [l + kerf, w + kerf]),
          turn,
        );
        expect(plan.cost).toBe(best);
        expect(plan.bound.cost).toBeLessThanOrEqual(best);
      }),
      { seed: 3, numRuns: 150 },
    );
  });

  it('gives the same bytes for the same problem', () => {
    fc.assert(
      fc.property(sheets, (json) => {
        const p = problem(json);
        const bytes = () => JSON.stringify(cutPlanJson(p, planned(p, { effort: 50_000, seed: 5 })));
        expect(bytes()).toBe(bytes());
      }),
      { seed: 11, numRuns: 20 },
    );
  });

  it('bounds a problem with kerf like the enlarged problem without', () => {
    fc.assert(
      fc.property(sheets, (json) => {
        const p = problem({ ...json, kerf_mm: 2, stock: json.stock.map((s) => ({ ...s, trim_mm: 0 })) });
        const enlarge = <T extends { length_mm: number; width_mm: number }>(x: T): T => ({
          ...x,
          length_mm: x.length_mm + 2,
          width_mm: x.width_mm + 2,
        });
        const q = problem({
          kerf_mm: 0,
          stock: json.stock.map((s, i) => enlarge({ ...s, cost: p.stock[i]!.cost, trim_mm: 0 })),
          pieces: json.pieces.map(enlarge),
        });
        const [a, b] = [lowerBound(p), lowerBound(q)];
        expect([a.sheets, a.cost]).toEqual([b.sheets, b.cost]);
      }),
      { seed: 2, numRuns: 100 },
    );
  });

  it('plans a problem with kerf like the enlarged problem without', () => {
    fc.assert(
      fc.property(sheets, fc.constantFrom(1, 2.2, 3.175), (json, kerf_mm) => {
        const plain = json.stock.map((s) => ({ ...s, trim_mm: 0, cost: 1 }));
        const enlarge = <T extends { length_mm: number; width_mm: number }>(x: T): T => ({
          ...x,
          length_mm: x.length_mm + kerf_mm,
          width_mm: x.width_mm + kerf_mm,
        });
        const p = problem({ ...json, kerf_mm, stock: plain });
        const q = problem({ kerf_mm: 0, stock: plain.map(enlarge), pieces: json.pieces.map(enlarge) });
        const [a, b] = [planned(p, { effort: 30_000 }), planned(q, { effort: 30_000 })];
        expect([a.cost, a.bound.cost, a.unplaced.length]).toEqual([b.cost, b.bound.cost, b.unplaced.length]);
      }),
      { seed: 6, numRuns: 60 },
    );
  });

  it('takes stock on the rack before stock to buy', () => {
    const p = problem({
      kerf_mm: 3,
      stock: [
        { id: 'new', length_mm: 2440, width_mm: 1220, cost: 80 },
        { id: 'offcut', length_mm: 1250, width_mm: 610, count: 1, cost: 0 },
      ],
      pieces: [{ id: 'shelf', length_mm: 1200, width_mm: 300, count: 2, turn: false }],
    });
    const plan = planned(p);
    expect(plan.sheets.map((s) => s.stock)).toEqual(['offcut']);
    expect(plan.cost).toBe(0);
    expect(plan.proven).toBe(true);
  });

  it('shaves off what is less than a kerf', () => {
    const p = problem({
      kerf_mm: 3,
      stock: [{ id: 's', length_mm: 100, width_mm: 50, cost: 1 }],
      pieces: [{ id: 'p', length_mm: 98, width_mm: 50, count: 1, turn: false }],
    });
    const plan = planned(p);
    expect(findings(p, plan)).toEqual([]);
    expect(plan.sheets[0]!.root).toMatchObject({ kind: 'cut', at: 98 * 3200 });
    expect(cutPlanJson(p, plan)).toMatchObject({ sheets: [{ left: [] }] });
  });

  it('leaves one large offcut rather than several small ones, at the same cost', () => {
    const p = problem({
      kerf_mm: 3,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220, cost: 1 }],
      pieces: [
        { id: 'top', length_mm: 1500, width_mm: 400, count: 1, turn: false },
        { id: 'side', length_mm: 720, width_mm: 380, count: 4, turn: false },
        { id: 'shelf', length_mm: 420, width_mm: 350, count: 6, turn: false },
      ],
    });
    const largest = (plan: CutPlan) => {
      const json = cutPlanJson(p, plan) as { sheets: { left: { length_mm: number; width_mm: number }[] }[] };
      return Math.max(...json.sheets.flatMap((s) => s.left.map((l) => l.length_mm * l.width_mm)));
    };
    const plan = planned(p, { effort: 10_000_000 });
    expect(findings(p, plan)).toEqual([]);
    expect(plan.cost).toBe(planned(p, { effort: 10_000_000, tidy: false }).cost);
    expect(largest(plan)).toBeGreaterThan(largest(planned(p, { effort: 10_000_000, tidy: false })));
  });

  /** How the pieces are cut apart; waste is not told. */
  const shape = (n: CutNode): string => {
    if (n.kind !== 'cut') return n.kind === 'piece' ? n.piece : '';
    const [a, b] = [shape(n.parts[0]), shape(n.parts[1])];
    return a === '' || b === '' ? a + b : `${n.across[0]}(${a},${b})`;
  };
  const cabinet = (bay: number) =>
    problem({
      kerf_mm: 3,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220 }],
      pieces: [
        { id: 'side', length_mm: 780, width_mm: 370, count: 4, turn: false },
        { id: 'deck', length_mm: 1540, width_mm: 370, count: 2, turn: false },
        { id: 'left shelf', length_mm: bay, width_mm: 340, count: 5, turn: false },
        { id: 'right shelf', length_mm: 1450 - bay, width_mm: 340, count: 5, turn: false },
      ],
    });

  it('keeps the cuts of the last plan when a divider moves by a millimetre, and not those of another piece', () => {
    const last = planned(cabinet(700));
    for (const bay of [699, 701, 702]) {
      const p = cabinet(bay);
      const plan = planned(p, { effort: 300_000, last });
      expect(findings(p, plan)).toEqual([]);
      expect(plan.sheets.flatMap((s) => Array(s.count).fill(shape(s.root))).sort()).toEqual(
        last.sheets.flatMap((s) => Array(s.count).fill(shape(s.root))).sort(),
      );
    }
    const fresh = planned(cabinet(500));
    expect(planned(cabinet(500), { effort: 300_000, last }).cost).toBeLessThanOrEqual(fresh.cost);
  });

  it('makes plans near the last one that the judge accepts, whatever the last one was', () => {
    fc.assert(
      fc.property(sheets, sheets, (one, two) => {
        const [p, q] = [problem(one), problem(two)];
        const last = planned(p, { effort: 20_000 });
        const plan = planned(q, { effort: 20_000, last });
        expect(findings(q, plan)).toEqual([]);
        expect(plan.cost + plan.unplaced.length).toBeLessThanOrEqual(
          (({ cost, unplaced }) => cost + unplaced.length)(planned(q, { effort: 20_000 })),
        );
      }),
      { seed: 9, numRuns: 60 },
    );
  });

  it('says which pieces are larger than all stock, and plans the rest', () => {
    const p = problem({
      kerf_mm: 3,
      stock: [{ id: 's', length_mm: 1000, width_mm: 500 }],
      pieces: [
        { id: 'wide', length_mm: 400, width_mm: 600, count: 2, turn: false },
        { id: 'fits', length_mm: 400, width_mm: 500, count: 2, turn: true },
      ],
    });
    const plan = planned(p);
    expect(plan.unplaced).toEqual([{ piece: 'wide', count: 2, why: 'larger-than-all-stock' }]);
    expect(plan.sheets).toHaveLength(1);
    expect(findings(p, plan)).toEqual([]);
  });

  it('plans a million pieces, and says what finds no room, in bounded time', () => {
    const p = problem({
      kerf_mm: 3,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220, count: 100 }],
      pieces: [
        { id: 'tile', length_mm: 100, width_mm: 100, count: 1_000_000, turn: true },
        { id: 'strip', length_mm: 900, width_mm: 40, count: 1_000, turn: false },
      ],
    });
    const start = performance.now();
    const plan = planned(p);
    expect(performance.now() - start).toBeLessThan(5_000);
    expect(plan.unplaced.map((u) => u.why)).toContain('stock-used-up');
    expect(findings(p, plan)).toEqual([]);
  });

  it('cuts thousands of one size in rows, and thousands of a few sizes though some are used up first', () => {
    const blocks = problem({
      kerf_mm: 3,
      stock: [{ id: 's', length_mm: 2500, width_mm: 1250 }],
      pieces: [{ id: 'block', length_mm: 50, width_mm: 40, count: 2600, turn: true }],
    });
    const rows = planned(blocks);
    // A sheet holds 47 rows of 29.
    expect(rows.sheets.reduce((sum, s) => sum + s.count, 0)).toBeLessThanOrEqual(3);
    expect(findings(blocks, rows)).toEqual([]);
    const sizes = [
      [300, 200],
      [180, 90],
      [420, 310],
    ] as const;
    const few = problem({
      kerf_mm: 3,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220 }],
      pieces: sizes.map(([length_mm, width_mm], i) => ({
        ...{ id: `p${i}`, length_mm, width_mm, count: 3000, turn: true },
      })),
    });
    const plan = planned(few);
    expect(plan.unplaced).toEqual([]);
    expect(findings(few, plan)).toEqual([]);
  });

  it('has a first plan of 100 parts at its first pause', () => {
    const p = problem({
      kerf_mm: 2.2,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220 }],
      pieces: Array.from({ length: 100 }, (_, i) => ({
        id: `p${i}`,
        length_mm: 150 + ((i * 37) % 600),
        width_mm: 80 + ((i * 53) % 400),
        count: 1,
        turn: i % 3 === 0,
      })),
    });
    const first = planCuts(p).next().value as { plan(): CutPlan; unplaced: number };
    expect(first.unplaced).toBe(0);
    expect(findings(p, first.plan())).toEqual([]);
  });

  it('stops when asked, with the best plan so far, and says that a clock ended it', () => {
    const p = problem({
      kerf_mm: 0,
      stock: [{ id: 's', length_mm: 100, width_mm: 100 }],
      pieces: Array.from({ length: 40 }, (_, i) => ({
        id: `p${i}`,
        length_mm: 20 + ((i * 37) % 60),
        width_mm: 20 + ((i * 53) % 60),
        count: 1,
        turn: false,
      })),
    });
    const stop = { requested: false };
    const steps = planCuts(p, { effort: 1e9, stop });
    expect(steps.next().done).toBe(false);
    stop.requested = true;
    const end = steps.next();
    expect(end.done).toBe(true);
    expect((end.value as CutPlan).endedByClock).toBe(true);
    expect(findings(p, end.value as CutPlan)).toEqual([]);
  });
});
