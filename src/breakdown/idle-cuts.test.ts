import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromMm } from '../measure/index.ts';
import type { CutNode } from './cut-plan.ts';
import type { CutProblem } from './cut-problem.ts';
import { withoutIdleCuts } from './idle-cuts.ts';
import { judgeCuts } from './judge/judge-cuts.ts';
import { planCuts } from './planner/plan-cuts.ts';

const size = (least: number, most: number) => fc.integer({ min: least, max: most }).map(fromMm);

const problems: fc.Arbitrary<CutProblem> = fc
  .array(
    fc.record({
      length: size(60, 900),
      width: size(40, 500),
      count: fc.integer({ min: 1, max: 5 }),
      turn: fc.boolean(),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((pieces) => ({
    kerf: fromMm(4.5),
    stock: [{ id: 'sheet', length: fromMm(2500), width: fromMm(1250), cost: 100, trim: fromMm(10) }],
    pieces: pieces.map((p, i) => ({ ...p, id: `p${i}` })),
  }));

/** Cuts at the saw: those of the tree, and one for each piece or area that reaches the far side of a cut's second half. */
function sawn(node: CutNode): number {
  if (node.kind !== 'cut') return 0;
  const [, second] = node.parts;
  const trimmed = second.kind === 'piece' || (second.kind === 'cut' && fills(second, node.across));
  return 1 + (trimmed && !(second.kind === 'cut' && second.across === node.across) ? 1 : 0) + below(node);
}

function below(node: CutNode & { readonly kind: 'cut' }): number {
  return node.parts.reduce((sum, p) => sum + sawn(p), 0);
}

function fills(node: CutNode, side: 'length' | 'width'): boolean {
  if (node.kind !== 'cut') return node.kind === 'piece';
  const [a, b] = node.parts;
  return node.across === side ? fills(b, side) : fills(a, side) || fills(b, side);
}

test('sheets without idle cuts hold the same, are judged sound, and are never sawn more often', () => {
  let saved = 0;
  fc.assert(
    fc.property(problems, (problem) => {
      const search = planCuts(problem, { effort: 60_000 });
      let step = search.next();
      while (!step.done) step = search.next();
      const { worth: _, ...plan } = step.value;
      const lean = { ...plan, sheets: plan.sheets.map((s) => withoutIdleCuts(problem, s)) };
      expect(judgeCuts(problem, lean).findings).toEqual([]);
      const all = (sheets: typeof plan.sheets) => sheets.reduce((sum, s) => sum + s.count * sawn(s.root), 0);
      expect(all(lean.sheets)).toBeLessThanOrEqual(all(plan.sheets));
      saved += all(plan.sheets) - all(lean.sheets);
    }),
    { seed: 5, numRuns: 60 },
  );
  expect(saved).toBeGreaterThan(0);
});
