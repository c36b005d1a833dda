import type { CutNode, CutSheet } from '../cut-plan.ts';
import type { CutPiece, CutProblem, CutStock } from '../cut-problem.ts';
import type { Notes } from './notes.ts';

type Cut = CutNode & { readonly kind: 'cut' };

interface Seen {
  readonly node: CutNode;
  readonly at: string;
  /** The cut it comes from, and how many directions were taken up to there. */
  readonly from: Cut | undefined;
  readonly stage: number;
}

/** One sheet against the rules for cuts, its flaws, the yard and the way home. */
export function judgeRules(
  notes: Notes,
  at: string,
  problem: CutProblem,
  stock: CutStock,
  sheet: CutSheet,
): void {
  const rules = problem.rules ?? {};
  const seen = everyNode(sheet.root, `${at}.cuts`);
  const cuts = seen.filter((s): s is Seen & { node: Cut } => s.node.kind === 'cut');
  const flat = stock.width === undefined;

  for (const { node, at, stage } of cuts) {
    if (rules.stages !== undefined && stage > rules.stages)
      notes.add('stages', at, `is of stage ${stage}; ${rules.stages} are allowed`);
    const long = node.across === 'length' ? node.width : node.length;
    if (rules.longest !== undefined && !flat && node.yard !== true && long > rules.longest)
      notes.add('cut-too-long', at, `is a cut of ${long} ticks; the rail guides ${rules.longest}`);
    const sides = node.parts.map((p) => (node.across === 'length' ? p.length : p.width));
    if (rules.hold !== undefined && sides.every((size) => size < rules.hold!))
      notes.add('hold', at, `leaves ${sides.join(' and ')} ticks; ${rules.hold} are needed to hold it by`);
  }

  if (rules.carry) {
    const most = rules.carry.area;
    const heavy = cuts.filter(({ node }) => (node.length * node.width) / (3200 * 3200) > most);
    if (heavy.length > rules.carry.cuts)
      notes.add(
        'carry',
        at,
        `needs ${heavy.length} cuts until everything can be carried; ${rules.carry.cuts} are allowed`,
      );
  }

  const top = sheet.root;
  if (
    rules.first !== undefined &&
    top.kind === 'cut' &&
    top.across !== rules.first &&
    opens(problem, top, rules.first)
  )
    notes.add(
      'first-cut',
      `${at}.cuts`,
      `divides the ${top.across} first, though the ${rules.first} could be`,
    );

  for (const { node, at } of seen)
    if (node.kind === 'piece')
      for (const f of stock.flaws ?? [])
        if (meets(node.x, node.length, f.x, f.length) && (flat || meets(node.y, node.width, f.y, f.width)))
          notes.add('flaw', at, `lies on a flaw at ${f.x}, ${f.y}`);

  judgeYard(notes, at, problem, stock, seen);
}

/** Rough cuts come first, as few as allowed; then every piece of the sheet goes into the vehicle. */
function judgeYard(
  notes: Notes,
  at: string,
  problem: CutProblem,
  stock: CutStock,
  seen: readonly Seen[],
): void {
  const yard = problem.rules?.yard;
  const rough = seen.filter((s) => s.node.kind === 'cut' && s.node.yard === true);
  if (rough.length > 0 && (!yard || stock.yard !== true)) {
    notes.add('yard-cuts', at, 'is cut at the yard, where it does not lie');
    return;
  }
  if (!yard || stock.yard !== true) return;
  if (rough.length > yard.cuts)
    notes.add('yard-cuts', at, `has ${rough.length} cuts at the yard; ${yard.cuts} are allowed`);
  for (const s of rough)
    if (s.from !== undefined && s.from.yard !== true)
      notes.add('yard-cuts', s.at, 'is cut at the yard after a cut at home');
  // With its rough sides still on: `over` beside a rough cut, all of the trim at the sheet's own sides.
  const reach = (from: number, size: number, all: number) =>
    (from + size >= all - stock.trim ? all : from + size + yard.over) -
    (from <= stock.trim ? 0 : from - yard.over);
  for (const { node, at, from } of seen) {
    if ((node.kind === 'cut' && node.yard === true) || (from !== undefined && from.yard !== true)) continue;
    if (node.length <= 0 || (stock.width !== undefined && node.width <= 0)) continue;
    const l = reach(node.x, node.length, stock.length);
    const w = stock.width === undefined ? 0 : reach(node.y, node.width, stock.width);
    if (!((l <= yard.length && w <= yard.width) || (w <= yard.length && l <= yard.width)))
      notes.add(
        'vehicle',
        at,
        `is ${l} by ${w} ticks on the way home; the vehicle takes ${yard.length} by ${yard.width}`,
      );
  }
}

/** Groups: each cut once, its pieces in order, level, with one kerf between and nothing else below the same cut. */
export function judgeGroups(
  notes: Notes,
  problem: CutProblem,
  sheets: readonly CutSheet[],
  pieces: ReadonlyMap<string, CutPiece>,
  unplaced: ReadonlyMap<string, number>,
): void {
  const found = new Map<string, number>();
  sheets.forEach((sheet, i) => {
    for (const { node, at } of everyNode(sheet.root, `sheets[${i}].cuts`)) {
      if (node.kind !== 'cut' || node.group === undefined) continue;
      const group = problem.groups?.find((g) => g.id === node.group);
      if (!group) {
        notes.add('group', at, `is said to be group "${node.group}", which is not in the problem`);
        continue;
      }
      found.set(group.id, (found.get(group.id) ?? 0) + sheet.count);
      const inside = everyNode(node, at).flatMap((s) => (s.node.kind === 'piece' ? [s.node] : []));
      const turned = inside[0]?.turned === true;
      const along = (group.follow === 'length') !== turned ? 'x' : 'y';
      const size = along === 'x' ? 'length' : 'width';
      inside.sort((a, b) => a[along] - b[along]);
      const level = along === 'x' ? 'y' : 'x';
      const right =
        inside.length === group.pieces.length &&
        inside.every((p, n) => {
          const next = inside[n + 1];
          const named = p.piece === group.pieces[n] && p.turned === turned && pieces.has(p.piece);
          return (
            named &&
            (!next || (next[along] === p[along] + p[size] + problem.kerf && next[level] === p[level]))
          );
        });
      if (!right) notes.add('group', at, `does not cut group "${group.id}" from one strip in its order`);
    }
  });
  for (const g of problem.groups ?? []) {
    const times = found.get(g.id) ?? 0;
    const missing = g.pieces.every((id) => (unplaced.get(id) ?? 0) > 0);
    if (times !== (missing ? times : 1) || times > 1)
      notes.add('group', `groups.${g.id}`, `is cut ${times} times`);
  }
}

/** Whether a piece may lie so on a stock, by the grain of both. */
export function grainAllows(p: CutPiece, s: CutStock, turned: boolean): boolean {
  if (s.width === undefined) return !turned;
  if (p.turn || s.grain === 'free') return true;
  const lengthAlongGrain = s.grain === 'across' ? turned : !turned;
  return p.across === true ? !lengthAlongGrain : lengthAlongGrain;
}

/** A piece's sizes as they are cut. */
export function asCut(p: CutPiece): { readonly length: number; readonly width: number } {
  return { length: p.length + (p.allowance?.length ?? 0), width: (p.width ?? 0) + (p.allowance?.width ?? 0) };
}

function everyNode(root: CutNode, at: string): readonly Seen[] {
  const seen: Seen[] = [];
  const open: Seen[] = [{ node: root, at, from: undefined, stage: root.kind === 'cut' ? 1 : 0 }];
  while (open.length > 0) {
    const s = open.pop()!;
    seen.push(s);
    const { node } = s;
    if (node.kind !== 'cut') continue;
    node.parts.forEach((p, i) => {
      const more = p.kind === 'cut' && p.across !== node.across ? 1 : 0;
      open.push({ node: p, at: `${s.at}.parts[${i}]`, from: node, stage: s.stage + more });
    });
  }
  return seen;
}

/** Whether a cut dividing this size would go through a sheet between its pieces, a whole kerf wide or off its end. */
function opens(problem: CutProblem, root: CutNode, across: 'length' | 'width'): boolean {
  const [low, size] = across === 'length' ? (['x', 'length'] as const) : (['y', 'width'] as const);
  const end = root[low] + root[size];
  const placed = everyNode(root, '').flatMap((s) => (s.node.kind === 'piece' ? [s.node] : []));
  // A cut is best made where a piece ends, or just before the first one begins.
  const tries = placed.flatMap((p) => [p[low] + p[size], p[low] - problem.kerf]);
  return tries.some(
    (t) =>
      t > root[low] &&
      t < end &&
      placed.every((p) => p[low] + p[size] <= t || p[low] >= Math.min(t + problem.kerf, end)),
  );
}

function meets(a: number, aSize: number, b: number, bSize: number): boolean {
  return a < b + bSize && b < a + aSize;
}
