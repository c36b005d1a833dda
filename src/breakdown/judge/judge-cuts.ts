import type { CutNode, CutPlan, CutSheet } from '../cut-plan.ts';
import type { CutPiece, CutProblem, CutStock } from '../cut-problem.ts';
import { judgeBound } from './judge-bound.ts';
import { asCut, grainAllows, judgeGroups, judgeRules } from './judge-rules.ts';
import { judgeWorth } from './judge-worth.ts';
import { Notes } from './notes.ts';
import type { Verdict } from './verdict.ts';

/**
 * Judges a cut plan against its problem, from nothing but the two: sizes, grain, kerf, trim, straight
 * through-cuts, counts, stock limits, areas, cost, bound and the claim to be proven. It shares no code with the
 * planner. Every fault is found, not only the first.
 */
export function judgeCuts(problem: CutProblem, plan: CutPlan): Verdict {
  const notes = new Notes();
  const stock = new Map(problem.stock.map((s) => [s.id, s]));
  const pieces = new Map(problem.pieces.map((p) => [p.id, p]));
  const cut = new Map<string, number>();
  const taken = new Map<string, number>();
  let cost = 0;

  plan.sheets.forEach((sheet, i) => {
    const at = `sheets[${i}]`;
    const s = stock.get(sheet.stock);
    if (!s) {
      notes.add('unknown-stock', at, `is cut from "${sheet.stock}", which is not in the problem`);
      return;
    }
    if (!Number.isInteger(sheet.count) || sheet.count < 1) {
      notes.add('sheet-count', at, `is cut ${sheet.count} times`);
      return;
    }
    taken.set(s.id, (taken.get(s.id) ?? 0) + sheet.count);
    cost += s.cost * sheet.count;
    judgeSheet(notes, at, problem, s, sheet, pieces, cut);
    judgeRules(notes, at, problem, s, sheet);
  });

  for (const [id, count] of taken) {
    const limit = stock.get(id)!.count;
    if (limit !== undefined && count > limit)
      notes.add('stock-exceeded', `stock.${id}`, `is used ${count} times; there are ${limit}`);
  }
  const short = judgeCounts(notes, problem, plan, cut, taken);
  judgeGroups(
    notes,
    problem,
    plan.sheets,
    pieces,
    new Map(problem.pieces.map((p) => [p.id, p.count - (cut.get(p.id) ?? 0)])),
  );
  judgeWorth(notes, problem, plan);
  if (plan.cost !== cost) notes.add('cost', 'cost', `is given as ${plan.cost}; the sheets cost ${cost}`);
  judgeBound(notes, problem, plan, cost, short);
  return notes.verdict();
}

/** One sheet: its size, then its tree from the top, every area against the cut that made it. */
function judgeSheet(
  notes: Notes,
  at: string,
  problem: CutProblem,
  s: CutStock,
  sheet: CutSheet,
  pieces: ReadonlyMap<string, CutPiece>,
  cut: Map<string, number>,
): void {
  const flat = s.width === undefined;
  const root = sheet.root;
  const width = s.width === undefined ? 0 : s.width - 2 * s.trim;
  const y = s.width === undefined ? 0 : s.trim;
  if (root.x !== s.trim || root.y !== y || root.length !== s.length - 2 * s.trim || root.width !== width)
    notes.add(
      'sheet-size',
      at,
      `is not the stock less its trim (${s.length - 2 * s.trim} by ${width} ticks)`,
    );

  let leaves = 0n;
  let kerfs = 0n;
  const open: { node: CutNode; at: string }[] = [{ node: root, at: `${at}.cuts` }];
  while (open.length > 0) {
    const { node, at } = open.pop()!;
    if (node.kind === 'cut') {
      const taken = judgeCut(notes, at, problem, node, flat);
      kerfs += flat
        ? whole(taken)
        : whole(taken) * whole(node.across === 'length' ? node.width : node.length);
      open.push({ node: node.parts[1], at: `${at}.parts[1]` }, { node: node.parts[0], at: `${at}.parts[0]` });
      continue;
    }
    leaves += flat ? whole(node.length) : whole(node.length) * whole(node.width);
    if (node.length < 0 || node.width < 0) notes.add('part-size', at, 'has a size below 0');
    if (node.kind !== 'piece') continue;
    const piece = pieces.get(node.piece);
    if (!piece) {
      notes.add('unknown-piece', at, `holds "${node.piece}", which is not in the problem`);
      continue;
    }
    cut.set(piece.id, (cut.get(piece.id) ?? 0) + sheet.count);
    const size = asCut(piece);
    const [l1, w1] = node.turned ? [size.width, size.length] : [size.length, size.width];
    if (node.length !== l1 || node.width !== w1)
      notes.add(
        'piece-size',
        at,
        `is ${node.length} by ${node.width} ticks; "${piece.id}" is ${l1} by ${w1}`,
      );
    if (!grainAllows(piece, s, node.turned))
      notes.add('piece-grain', at, `lays "${piece.id}" as its grain must not lie`);
    if ((piece.faces ?? 0) > (s.faces ?? 2))
      notes.add('faces', at, `cuts "${piece.id}", which needs ${piece.faces} good faces, from "${s.id}"`);
  }
  const all = flat ? whole(root.length) : whole(root.length) * whole(root.width);
  if (leaves + kerfs !== all)
    notes.add('area-sum', at, `is ${all} in all, but pieces, leftovers and kerfs come to ${leaves + kerfs}`);
}

/** One cut: straight through its area, with both parts exactly what the kerf leaves. Gives what the kerf takes. */
function judgeCut(
  notes: Notes,
  at: string,
  problem: CutProblem,
  node: CutNode & { readonly kind: 'cut' },
  flat: boolean,
): number {
  const [a, b] = node.parts;
  const along = node.across === 'length';
  if (flat && !along) notes.add('cut-direction', at, 'divides the width of a bar');
  const from = along ? node.x : node.y;
  const end = from + (along ? node.length : node.width);
  if (!(node.at > from && node.at < end))
    notes.add('cut-outside', at, `is at ${node.at}, not inside ${from} to ${end}`);
  // A rough cut also takes what the yard may be out, on either side.
  const taken = problem.kerf + (node.yard ? 2 * (problem.rules?.yard?.over ?? 0) : 0);
  const resumes = Math.min(node.at + taken, end);
  const right = along
    ? a.x === node.x && a.length === node.at - from && b.x === resumes && b.length === end - resumes
    : a.y === node.y && a.width === node.at - from && b.y === resumes && b.width === end - resumes;
  const across = along
    ? a.y === node.y && b.y === node.y && a.width === node.width && b.width === node.width
    : a.x === node.x && b.x === node.x && a.length === node.length && b.length === node.length;
  if (!right || !across) notes.add('part-size', at, 'has parts that are not its area less the kerf');
  return resumes - node.at;
}

/** Every piece as often as asked, or unplaced for a reason that is true. True when stock ran out for some. */
function judgeCounts(
  notes: Notes,
  problem: CutProblem,
  plan: CutPlan,
  cut: ReadonlyMap<string, number>,
  taken: ReadonlyMap<string, number>,
): boolean {
  const unplaced = new Map<string, number>();
  let short = false;
  for (const u of plan.unplaced) {
    const at = `unplaced.${u.piece}`;
    const piece = problem.pieces.find((p) => p.id === u.piece);
    if (!piece) {
      notes.add('unknown-piece', at, 'is not in the problem');
      continue;
    }
    if (!Number.isInteger(u.count) || u.count < 1)
      notes.add('piece-count', at, `is unplaced ${u.count} times`);
    unplaced.set(u.piece, (unplaced.get(u.piece) ?? 0) + u.count);
    const homes = problem.stock.filter((s) => holds(s, piece));
    if (u.why !== 'larger-than-all-stock') short = true;
    const mild = problem.stock.filter((s) => sized(s, piece));
    if (u.why === 'rules' && (mild.length === 0 || !isRuled(problem)))
      notes.add(
        'false-reason',
        at,
        mild.length === 0 ? 'fits no stock at all' : 'is said to be kept out by rules; there are none',
      );
    if (u.why === 'larger-than-all-stock' && mild.length > 0)
      notes.add(
        'false-reason',
        at,
        `is said to be larger than all stock, but "${mild[0]!.id}" would hold it`,
      );
    const spare = homes.find((s) => s.count === undefined || (taken.get(s.id) ?? 0) < s.count);
    if (u.why === 'stock-used-up' && (homes.length === 0 || spare))
      notes.add(
        'false-reason',
        at,
        spare ? `could be cut from "${spare.id}", which is not used up` : 'fits no stock at all',
      );
  }
  for (const p of problem.pieces) {
    const there = (cut.get(p.id) ?? 0) + (unplaced.get(p.id) ?? 0);
    if (there !== p.count)
      notes.add('piece-count', `pieces.${p.id}`, `is in the plan ${there} times; ${p.count} are asked for`);
  }
  return short;
}

/** Whether a piece lies inside the usable part of a stock as its grain allows. */
function sized(s: CutStock, p: CutPiece): boolean {
  return [false, true].some((t) => grainAllows(p, s, t) && inside(s, p, t));
}

/** The same, with faces that are good enough. */
function holds(s: CutStock, p: CutPiece): boolean {
  return (p.faces ?? 0) <= (s.faces ?? 2) && sized(s, p);
}

/** Whether anything but sizes, grain and counts can keep a piece out. */
function isRuled(problem: CutProblem): boolean {
  return (
    problem.rules !== undefined ||
    problem.groups !== undefined ||
    problem.stock.some((s) => s.flaws !== undefined || s.faces !== undefined)
  );
}

function inside(s: CutStock, p: CutPiece, turned: boolean): boolean {
  const size = asCut(p);
  const [l, w] = turned ? [size.width, size.length] : [size.length, size.width];
  if ((s.width === undefined) !== (p.width === undefined)) return false;
  return l <= s.length - 2 * s.trim && w <= (s.width === undefined ? 0 : s.width - 2 * s.trim);
}

/** For sums: what isn't whole is found elsewhere. */
function whole(x: number): bigint {
  return BigInt(Math.round(x));
}
