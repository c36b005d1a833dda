import { toMm } from '../measure/index.ts';
import type { BoundProof, CutNode, CutPlan, LengthWeight, Unplaced } from './cut-plan.ts';
import type { CutProblem } from './cut-problem.ts';

/** A plain JSON value. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/**
 * Writes a cut plan as the documented JSON (docs/cutting-contract.md), in mm. Keys come in a fixed order, so the
 * same plan always gives the same bytes. In one dimension every y and width is 0.
 */
export function cutPlanJson(problem: CutProblem, plan: CutPlan): { readonly [key: string]: Json } {
  const flat = problem.stock.every((s) => s.width === undefined);
  const scale = problem.costScale ?? 1;
  const money = (whole: number) => whole / scale;
  const costOf = new Map(problem.stock.map((s) => [s.id, s.cost]));
  const bought = new Map<string, number>();
  for (const s of plan.sheets) bought.set(s.stock, (bought.get(s.stock) ?? 0) + s.count);

  return {
    sheets: plan.sheets.map((s) => {
      const leaves = leavesOf(s.root);
      return {
        stock: s.stock,
        count: s.count,
        placed: leaves.flatMap((n) =>
          n.kind === 'piece' ? [{ piece: n.piece, ...area(n), turned: n.turned }] : [],
        ),
        cuts: node(s.root),
        left: leaves.flatMap((n) =>
          n.kind === 'left' && n.length > 0 && (flat || n.width > 0) ? [area(n)] : [],
        ),
      };
    }),
    bought: problem.stock.flatMap((s) => {
      const count = bought.get(s.id);
      return count === undefined ? [] : [{ stock: s.id, count, cost: money(costOf.get(s.id)! * count) }];
    }),
    cost: money(plan.cost),
    bound: {
      sheets: plan.bound.sheets,
      cost: money(plan.bound.cost),
      ...(plan.bound.proof ? { proof: proof(plan.bound.proof) } : {}),
    },
    proven: plan.proven,
    ended_by_clock: plan.endedByClock,
    ...(plan.worth ? { worth: { ...plan.worth } } : {}),
    unplaced: plan.unplaced.map((u) => ({ piece: u.piece, count: u.count, why: whyUnplaced(u) })),
  };
}

/** The reason a piece is not in the plan, as a sentence. */
export function whyUnplaced(u: Unplaced): string {
  if (u.why === 'rules')
    return `${u.piece} finds no way: grain, faces, flaws or the rules for cuts allow none on the stock there is.`;
  return u.why === 'larger-than-all-stock'
    ? `${u.piece} fits no stock: it is larger than every sheet or bar less its trim, in every way it may lie.`
    : `${u.piece} finds no room: all stock that could hold it is used up.`;
}

function proof(p: BoundProof): Json {
  if (p.kind === 'values') return { kind: p.kind, values: p.values.map((v) => ({ ...v })), most: p.most };
  const weight = (w: LengthWeight) => ({ kind: w.kind, parameter_mm: toMm(w.parameter) });
  return { kind: p.kind, along: weight(p.along), across: weight(p.across), both: p.both };
}

function node(n: CutNode): Json {
  const own = area(n);
  if (n.kind === 'cut')
    return {
      ...own,
      cut: { across: n.across, at_mm: toMm(n.at), ...(n.yard ? { yard: true } : {}) },
      ...(n.group === undefined ? {} : { group: n.group }),
      parts: [node(n.parts[0]), node(n.parts[1])],
    };
  return n.kind === 'piece' ? { ...own, piece: n.piece, turned: n.turned } : { ...own, left: true };
}

function area(n: CutNode): { [key: string]: Json } {
  return { x_mm: toMm(n.x), y_mm: toMm(n.y), length_mm: toMm(n.length), width_mm: toMm(n.width) };
}

/** The leaves of a cut tree, in the order they are parted off. Trees are deep, so no recursion. */
function leavesOf(root: CutNode): CutNode[] {
  const leaves: CutNode[] = [];
  const open: CutNode[] = [root];
  while (open.length > 0) {
    const n = open.pop()!;
    if (n.kind === 'cut') open.push(n.parts[1], n.parts[0]);
    else leaves.push(n);
  }
  return leaves;
}
