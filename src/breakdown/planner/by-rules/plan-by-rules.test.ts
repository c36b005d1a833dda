import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestPlans, type Counted } from '../../../../test/best-plan.ts';
import { readCutProblem } from '../../cut-contract.ts';
import type { CutPlan } from '../../cut-plan.ts';
import { cutPlanJson } from '../../cut-plan-json.ts';
import type { CutProblem } from '../../cut-problem.ts';
import { judgeCuts } from '../../judge/judge-cuts.ts';
import { readCutPlan } from '../../judge/read-cut-plan.ts';
import { type CutOptions, planCuts } from '../plan-cuts.ts';

function problem(json: unknown): CutProblem {
  const r = readCutProblem(json);
  if (!r.ok) throw new Error(r.snags.map((s) => s.sentence).join('\n'));
  return r.problem;
}

function planned(p: CutProblem, options: CutOptions = { effort: 900_000 }): CutPlan {
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
const flaw = fc.record({ x_mm: size(50), y_mm: size(50), length_mm: size(15), width_mm: size(15) });
const grain = fc.constantFrom('along', 'across', 'free');
const optional = { requiredKeys: ['length_mm', 'width_mm'] as ('length_mm' | 'width_mm')[] };

/** Small problems with any of the rules. */
const ruled = fc
  .record(
    {
      kerf_mm: fc.constantFrom(0, 1, 2.2),
      stock: fc.array(
        fc.record(
          {
            length_mm: size(60),
            width_mm: size(60),
            count: fc.integer({ min: 0, max: 3 }),
            cost: fc.integer({ min: 0, max: 50 }),
            trim_mm: fc.constantFrom(0, 1, 2.5),
            grain,
            faces: fc.integer({ min: 0, max: 2 }),
            flaws: fc.array(flaw, { maxLength: 3 }),
            yard: fc.boolean(),
          },
          optional,
        ),
        { minLength: 1, maxLength: 3 },
      ),
      pieces: fc.array(
        fc.record(
          {
            length_mm: size(40),
            width_mm: size(40),
            grain,
            faces: fc.integer({ min: 0, max: 2 }),
            allowance_length_mm: size(4),
          },
          optional,
        ),
        { maxLength: 5 },
      ),
      count: fc.array(size(3), { minLength: 5, maxLength: 5 }),
      groups: fc.array(
        fc.record({
          pieces: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 2, maxLength: 3 }),
          follow: fc.constantFrom('length', 'width'),
          joined: fc.boolean(),
        }),
        { maxLength: 2 },
      ),
      stages: fc.integer({ min: 1, max: 4 }),
      first: fc.constantFrom('length', 'width'),
      longest_cut_mm: fc.integer({ min: 20, max: 70 }),
      hold_mm: fc.integer({ min: 1, max: 15 }),
      carry: fc.record({ area_m2: fc.constantFrom(0.0005, 0.001, 0.002), cuts: size(3) }),
      yard: fc.record({
        cuts: fc.integer({ min: 0, max: 2 }),
        over_mm: fc.integer({ min: 0, max: 3 }),
        length_mm: fc.integer({ min: 20, max: 70 }),
        width_mm: fc.integer({ min: 20, max: 60 }),
      }),
    },
    { requiredKeys: ['kerf_mm', 'stock', 'pieces', 'count', 'groups'] },
  )
  .map(({ count, groups, ...p }) => {
    const left = p.pieces.map((_, i) => count[i]!);
    const fitting = groups.map((g, i) => ({
      ...g,
      id: `g${i}`,
      pieces: g.pieces.flatMap((n) => (left[n] !== undefined && left[n]-- > 0 ? [`p${n}`] : [])),
    }));
    return {
      ...p,
      stock: p.stock.map((s, i) => ({
        ...s,
        id: `s${i}`,
        length_mm: s.length_mm + 6,
        width_mm: s.width_mm + 6,
      })),
      pieces: p.pieces.map((x, i) => ({ grain: 'along', ...x, id: `p${i}`, count: count[i]! })),
      groups: fitting.filter((g) => g.pieces.length > 1),
    };
  });

const ORDERS = [
  ['cost', 'leftover', 'settings', 'cuts', 'alike'],
  ['leftover', 'cost', 'settings'],
  ['settings', 'cost', 'cuts'],
  ['cuts', 'alike', 'cost'],
  ['alike', 'settings', 'leftover'],
  ['cost', 'cuts'],
] as const;

const few = fc.record({
  kerf: fc.integer({ min: 0, max: 1 }),
  length: fc.integer({ min: 4, max: 7 }),
  width: fc.integer({ min: 4, max: 6 }),
  kinds: fc
    .array(fc.record({ length: size(4), width: size(4), count: size(6), turn: fc.boolean() }), {
      minLength: 1,
      maxLength: 2,
    })
    .filter((k) => k.reduce((n, x) => n + x.count, 0) <= 6 && k.every((x) => x.length * x.width > 2)),
  order: fc.constantFrom(...ORDERS),
});

describe('planByRules', () => {
  it('finds what trying everything finds, up to six pieces, whichever objective comes first', () => {
    fc.assert(
      fc.property(few, ({ kerf, length, width, kinds, order }) => {
        const wanted = { length: 3, width: 2 };
        const p = problem({
          kerf_mm: kerf,
          stages: 20,
          objectives: order,
          wanted: [{ length_mm: 3, width_mm: 2 }],
          stock: [{ id: 's', length_mm: length, width_mm: width, cost: 1 }],
          pieces: kinds.map((k, i) => ({
            id: `p${i}`,
            length_mm: k.length,
            width_mm: k.width,
            count: k.count,
            turn: k.turn,
          })),
        });
        const plan = planned(p, { effort: 16_000_000 });
        const told = { cost: plan.cost, ...plan.worth!, leftover: -plan.worth!.leftover };
        const rank = (c: Counted) => order.map((o) => c[o]);
        const best = bestPlans({ length, width, kerf, kinds, wanted })
          .map(rank)
          .reduce((a, b) => (less(b, a) ? b : a));
        expect(rank(told)).toEqual(best);
      }),
      { seed: 8, numRuns: 25 },
    );
  }, 240_000);

  it('ends in bounded time with a million pieces, and with rules that nothing can keep', () => {
    const p = problem({
      kerf_mm: 3,
      stages: 2,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220, count: 100 }],
      pieces: [{ id: 'tile', length_mm: 100, width_mm: 100, count: 1_000_000, turn: true }],
    });
    const start = performance.now();
    expect(findings(p, planned(p))).toEqual([]);
    const q = problem({
      kerf_mm: 3,
      hold_mm: 5000,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220 }],
      pieces: [{ id: 'shelf', length_mm: 800, width_mm: 300, count: 500_000, turn: true }],
    });
    const none = planned(q);
    expect(none.unplaced).toEqual([{ piece: 'shelf', count: 500_000, why: 'rules' }]);
    expect(findings(q, none)).toEqual([]);
    expect(performance.now() - start).toBeLessThan(5_000);
  });

  it('has a first plan of 100 parts at its first pause', () => {
    const p = problem({
      kerf_mm: 3,
      stages: 3,
      first: 'width',
      hold_mm: 60,
      longest_cut_mm: 2600,
      stock: [{ id: 's', length_mm: 2440, width_mm: 1220 }],
      pieces: Array.from({ length: 100 }, (_, i) => ({
        id: `p${i}`,
        length_mm: 150 + ((i * 37) % 600),
        width_mm: 80 + ((i * 53) % 400),
        count: 1,
        turn: i % 3 === 0,
      })),
    });
    const first = planCuts(p, { effort: 1e9 }).next().value as { plan(): CutPlan; unplaced: number };
    expect(first.unplaced).toBe(0);
    expect(findings(p, first.plan())).toEqual([]);
  });

  it('cuts what the rules let through: strips in order from one strip, round a knot, home in a small car', () => {
    const p = problem({
      kerf_mm: 3,
      yard: { cuts: 1, over_mm: 10, length_mm: 1500, width_mm: 1250 },
      stock: [
        {
          id: 'ply',
          length_mm: 2500,
          width_mm: 1250,
          yard: true,
          flaws: [{ x_mm: 300, y_mm: 300, length_mm: 40, width_mm: 30 }],
        },
      ],
      pieces: [
        { id: 'low', length_mm: 500, width_mm: 250, count: 1, turn: false },
        { id: 'mid', length_mm: 500, width_mm: 200, count: 1, turn: false },
        { id: 'top', length_mm: 500, width_mm: 150, count: 1, turn: false },
        { id: 'side', length_mm: 900, width_mm: 400, count: 2, turn: false },
      ],
      groups: [{ id: 'fronts', pieces: ['low', 'mid', 'top'], follow: 'width' }],
    });
    const plan = planned(p, { effort: 32_000_000 });
    expect(findings(p, plan)).toEqual([]);
    expect(plan.unplaced).toEqual([]);
    expect(plan.sheets).toHaveLength(1);
  });

  it('makes plans that the judge accepts, whatever the rules', () => {
    fc.assert(
      fc.property(ruled, (json) => {
        const p = problem(json);
        expect(findings(p, planned(p))).toEqual([]);
      }),
      { seed: 5, numRuns: 250 },
    );
  });
});

function less(a: readonly number[], b: readonly number[]): boolean {
  const i = a.findIndex((x, n) => x !== b[n]);
  return i >= 0 && a[i]! < b[i]!;
}
