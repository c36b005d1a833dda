import type { CutNode, CutPlan } from '../cut-plan.ts';
import type { CutProblem } from '../cut-problem.ts';
import type { Notes } from './notes.ts';

const PER_MM = 3200;

/** What the plan says of its leftovers, settings, cuts and equal parts, counted again. */
export function judgeWorth(notes: Notes, problem: CutProblem, plan: CutPlan): void {
  if (!plan.worth) return;
  const settings = new Set<string>();
  const ways = new Map<string, Set<string>>();
  const flat = problem.stock.every((s) => s.width === undefined);
  let cuts = 0;
  let leftover = 0n;
  const walk = (node: CutNode, last: string, times: number): void => {
    const todo: { node: CutNode; last: string }[] = [{ node, last }];
    for (let next = todo.pop(); next; next = todo.pop()) {
      const n = next.node;
      if (n.kind === 'piece') {
        const way = `${n.turned ? 'across' : 'along'}, ${next.last}`;
        ways.set(n.piece, (ways.get(n.piece) ?? new Set()).add(way));
      } else if (n.kind === 'left') {
        if (!useful(problem, flat, n.length, n.width)) continue;
        leftover += square(flat, n) * BigInt(times);
      } else {
        cuts += times;
        if (n.yard !== true) settings.add(`${n.across}: ${n.across === 'length' ? n.at - n.x : n.at - n.y}`);
        for (const p of n.parts) todo.push({ node: p, last: n.across });
      }
    }
  };
  for (const { root, count } of plan.sheets) {
    const times = Number.isInteger(count) ? count : 0;
    walk(root, '', times);
    // What the sheet was worth before it was cut is lost.
    if (useful(problem, flat, root.length, root.width)) leftover -= square(flat, root) * BigInt(times);
  }
  let alike = 0;
  for (const w of ways.values()) alike += w.size - 1;
  const right = { leftover: Number(leftover), settings: settings.size, cuts, alike };
  for (const key of ['leftover', 'settings', 'cuts', 'alike'] as const)
    if (plan.worth[key] !== right[key])
      notes.add('worth', `worth.${key}`, `is given as ${plan.worth[key]}; it comes to ${right[key]}`);
}

function square(flat: boolean, a: { readonly length: number; readonly width: number }): bigint {
  const mm = BigInt(Math.floor(a.length / PER_MM)) * (flat ? 1n : BigInt(Math.floor(a.width / PER_MM)));
  return mm * mm;
}

/** Does it hold something the rack wants? If nothing is said, 300 by 100 mm; of a bar, 300 mm. */
function useful(problem: CutProblem, flat: boolean, length: number, width: number): boolean {
  const wanted = problem.wanted ?? [{ length: 300 * PER_MM, width: 100 * PER_MM }];
  for (const w of wanted) {
    if (flat ? length >= w.length : length >= w.length && width >= w.width) return true;
    if (!flat && width >= w.length && length >= w.width) return true;
  }
  return false;
}
