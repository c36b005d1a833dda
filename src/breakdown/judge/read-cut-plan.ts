import { TICKS_PER_MM, type Ticks } from '../../measure/index.ts';
import type {
  BoundProof,
  CutNode,
  CutPlan,
  CutSheet,
  LengthWeight,
  PlanWorth,
  Unplaced,
} from '../cut-plan.ts';
import type { CutProblem } from '../cut-problem.ts';
import { Notes } from './notes.ts';
import type { Finding } from './verdict.ts';

/** A plan file as read: the plan, and what is already wrong with the file (its lists against its trees). */
export interface ReadCutPlan {
  readonly plan: CutPlan | undefined;
  readonly findings: readonly Finding[];
}

class Malformed extends Error {}

/**
 * Reads a cut plan from parsed JSON, so that a plan file can be judged. The lists `placed`, `left` and `bought`
 * are compared with the cut trees. A file that isn't a plan at all gives a finding `format` and no plan.
 */
export function readCutPlan(problem: CutProblem, json: unknown): ReadCutPlan {
  const notes = new Notes();
  try {
    const plan = read(notes, problem, json);
    return { plan, findings: notes.verdict().findings };
  } catch (e) {
    if (!(e instanceof Malformed)) throw e;
    notes.add('format', e.message, 'is missing or not of the right kind');
    return { plan: undefined, findings: notes.verdict().findings };
  }
}

type Fields = Readonly<Record<string, unknown>>;

function read(notes: Notes, problem: CutProblem, json: unknown): CutPlan {
  const top = object(json, 'plan');
  const scale = problem.costScale ?? 1;
  const money = (v: unknown, at: string) => {
    const whole = number(v, at) * scale;
    return Math.abs(whole - Math.round(whole)) < 1e-6 ? Math.round(whole) : whole;
  };
  const sheets = list(top.sheets, 'sheets').map((s, i) => readSheet(notes, s, `sheets[${i}]`));
  const bound = object(top.bound, 'bound');
  const plan: CutPlan = {
    sheets,
    cost: money(top.cost, 'cost'),
    bound: {
      sheets: number(bound.sheets, 'bound.sheets'),
      cost: money(bound.cost, 'bound.cost'),
      ...(bound.proof === undefined ? {} : { proof: readProof(bound.proof) }),
    },
    proven: flag(top.proven, 'proven'),
    endedByClock: top.ended_by_clock === true,
    ...(top.worth === undefined ? {} : { worth: readWorth(top.worth) }),
    unplaced: list(top.unplaced, 'unplaced').map((u, i) => readUnplaced(u, `unplaced[${i}]`)),
  };
  judgeBought(notes, problem, plan, list(top.bought, 'bought'), money);
  return plan;
}

function readSheet(notes: Notes, json: unknown, at: string): CutSheet {
  const o = object(json, at);
  const root = readNode(o.cuts, `${at}.cuts`);
  const inTree = { placed: [] as string[], left: [] as string[] };
  const open = [root];
  while (open.length > 0) {
    const n = open.pop()!;
    if (n.kind === 'cut') open.push(...n.parts);
    else if (n.kind === 'piece') inTree.placed.push(`${n.piece} ${n.turned} ${corner(n)}`);
    else if (n.length > 0 && (n.width > 0 || root.width === 0)) inTree.left.push(corner(n));
  }
  const placed = list(o.placed, `${at}.placed`).map((p, i) => {
    const f = object(p, `${at}.placed[${i}]`);
    return `${f.piece} ${f.turned} ${corner(area(f, `${at}.placed[${i}]`))}`;
  });
  const left = list(o.left, `${at}.left`).map((l, i) =>
    corner(area(object(l, `${at}.left[${i}]`), `${at}.left[${i}]`)),
  );
  if (!sameSet(placed, inTree.placed))
    notes.add('placed-list', `${at}.placed`, 'does not list the pieces of the cuts');
  if (!sameSet(left, inTree.left))
    notes.add('left-list', `${at}.left`, 'does not list what the cuts leave over');
  return {
    stock: text(o.stock, `${at}.stock`),
    count: o.count === undefined ? 1 : number(o.count, `${at}.count`),
    root,
  };
}

function readNode(json: unknown, at: string): CutNode {
  const o = object(json, at);
  const own = area(o, at);
  if (o.cut !== undefined) {
    const cut = object(o.cut, `${at}.cut`);
    const across = text(cut.across, `${at}.cut.across`);
    if (across !== 'length' && across !== 'width') throw new Malformed(`${at}.cut.across`);
    const parts = list(o.parts, `${at}.parts`);
    if (parts.length !== 2) throw new Malformed(`${at}.parts`);
    return {
      ...own,
      kind: 'cut',
      across,
      at: length(cut.at_mm, `${at}.cut.at_mm`),
      ...(cut.yard === undefined ? {} : { yard: true }),
      ...(o.group === undefined ? {} : { group: text(o.group, `${at}.group`) }),
      parts: [readNode(parts[0], `${at}.parts[0]`), readNode(parts[1], `${at}.parts[1]`)],
    };
  }
  if (o.piece !== undefined)
    return {
      ...own,
      kind: 'piece',
      piece: text(o.piece, `${at}.piece`),
      turned: flag(o.turned ?? false, `${at}.turned`),
    };
  if (o.left !== true) throw new Malformed(at);
  return { ...own, kind: 'left' };
}

function readProof(json: unknown): BoundProof {
  const o = object(json, 'bound.proof');
  const weight = (v: unknown, at: string): LengthWeight => {
    const w = object(v, at);
    const kind = text(w.kind, `${at}.kind`);
    if (kind !== 'size' && kind !== 'large' && kind !== 'halves') throw new Malformed(`${at}.kind`);
    return { kind, parameter: length(w.parameter_mm, `${at}.parameter_mm`) };
  };
  if (o.kind === 'weights')
    return {
      kind: 'weights',
      along: weight(o.along, 'bound.proof.along'),
      across: weight(o.across, 'bound.proof.across'),
      both: flag(o.both, 'bound.proof.both'),
    };
  if (o.kind !== 'values') throw new Malformed('bound.proof.kind');
  const values = list(o.values, 'bound.proof.values').map((v, i) => {
    const f = object(v, `bound.proof.values[${i}]`);
    return { piece: text(f.piece, 'bound.proof.values'), value: number(f.value, 'bound.proof.values') };
  });
  return { kind: 'values', values, most: number(o.most, 'bound.proof.most') };
}

function readWorth(json: unknown): PlanWorth {
  const o = object(json, 'worth');
  const of = (key: string) => number(o[key], `worth.${key}`);
  return { leftover: of('leftover'), settings: of('settings'), cuts: of('cuts'), alike: of('alike') };
}

/** The reason is a sentence; which one it is, is told by what it says of the stock. */
function readUnplaced(json: unknown, at: string): Unplaced {
  const o = object(json, at);
  const why = text(o.why, `${at}.why`);
  return {
    piece: text(o.piece, `${at}.piece`),
    count: number(o.count, `${at}.count`),
    why: why.includes('used up')
      ? 'stock-used-up'
      : why.includes('rules')
        ? 'rules'
        : 'larger-than-all-stock',
  };
}

function judgeBought(
  notes: Notes,
  problem: CutProblem,
  plan: CutPlan,
  bought: readonly unknown[],
  money: (v: unknown, at: string) => number,
): void {
  const rows = bought.map((b, i) => {
    const o = object(b, `bought[${i}]`);
    return `${o.stock} ${number(o.count, `bought[${i}].count`)} ${money(o.cost, `bought[${i}].cost`)}`;
  });
  const counts = new Map<string, number>();
  for (const s of plan.sheets) counts.set(s.stock, (counts.get(s.stock) ?? 0) + s.count);
  const cost = new Map(problem.stock.map((s) => [s.id, s.cost]));
  const right = [...counts].map(([id, n]) => `${id} ${n} ${(cost.get(id) ?? Number.NaN) * n}`);
  if (!sameSet(rows, right))
    notes.add('bought-list', 'bought', 'does not list the stock that the sheets use, and its cost');
}

function sameSet(a: readonly string[], b: readonly string[]): boolean {
  const [x, y] = [[...a].sort(), [...b].sort()];
  return x.length === y.length && x.every((v, i) => v === y[i]);
}

function corner(a: { x: number; y: number; length: number; width: number }): string {
  return `${a.x} ${a.y} ${a.length} ${a.width}`;
}

function area(o: Fields, at: string) {
  return {
    x: length(o.x_mm, `${at}.x_mm`),
    y: o.y_mm === undefined ? (0 as Ticks) : length(o.y_mm, `${at}.y_mm`),
    length: length(o.length_mm, `${at}.length_mm`),
    width: o.width_mm === undefined ? (0 as Ticks) : length(o.width_mm, `${at}.width_mm`),
  };
}

function length(v: unknown, at: string): Ticks {
  const exact = number(v, at) * TICKS_PER_MM;
  const near = Math.round(exact);
  // A length that is not a whole tick stays as it is: it will not agree with anything, which is what to find.
  return (Math.abs(exact - near) < 1e-4 ? near : exact) as Ticks;
}

function object(v: unknown, at: string): Fields {
  if (typeof v !== 'object' || v === null || Array.isArray(v)) throw new Malformed(at);
  return v as Fields;
}

function list(v: unknown, at: string): readonly unknown[] {
  if (!Array.isArray(v)) throw new Malformed(at);
  return v;
}

function number(v: unknown, at: string): number {
  if (typeof v !== 'number' || !Number.isFinite(v)) throw new Malformed(at);
  return v;
}

function text(v: unknown, at: string): string {
  if (typeof v !== 'string') throw new Malformed(at);
  return v;
}

function flag(v: unknown, at: string): boolean {
  if (typeof v !== 'boolean') throw new Malformed(at);
  return v;
}
