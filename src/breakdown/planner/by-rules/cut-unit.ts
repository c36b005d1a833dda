import { type Ticks, ticks } from '../../../measure/index.ts';
import type { CutNode } from '../../cut-plan.ts';
import type { CutGroup, CutPiece, CutProblem, CutStock } from '../../cut-problem.ts';

/** What is laid on a sheet at once: a piece, or a group of pieces in one strip. */
export interface CutUnit {
  readonly pieces: readonly CutPiece[];
  readonly group?: CutGroup;
  readonly count: number;
  readonly ways: readonly UnitWay[];
  /** In mm², for weighing what finds no place. */
  readonly area: number;
}

/** One way in which a unit may lie, on the stocks (by index) where it may. */
export interface UnitWay {
  readonly length: number;
  readonly width: number;
  readonly turned: boolean;
  readonly stocks: ReadonlySet<number>;
}

/** All units of a problem: groups, and the pieces that are in none. A unit without ways fits no stock. */
export function unitsOf(problem: CutProblem): readonly CutUnit[] {
  const piece = new Map(problem.pieces.map((p) => [p.id, p]));
  const loose = new Map(problem.pieces.map((p) => [p.id, p.count]));
  const groups = (problem.groups ?? []).map((group) => {
    const pieces = group.pieces.map((id) => piece.get(id)!);
    for (const id of group.pieces) loose.set(id, loose.get(id)! - 1);
    return unit(problem, pieces, 1, group);
  });
  const singles = problem.pieces.flatMap((p) => {
    const count = loose.get(p.id)!;
    return count > 0 ? [unit(problem, [p], count)] : [];
  });
  return [...groups, ...singles];
}

function unit(problem: CutProblem, pieces: readonly CutPiece[], count: number, group?: CutGroup): CutUnit {
  const ways: UnitWay[] = [];
  for (const turned of [false, true]) {
    const { length, width } = outer(pieces, group, turned, problem.kerf);
    const stocks = problem.stock.flatMap((s, i) =>
      pieces.every((p) => mayLie(p, s, turned)) &&
      length <= s.length - 2 * s.trim &&
      width <= (s.width === undefined ? 0 : s.width - 2 * s.trim)
        ? [i]
        : [],
    );
    if (stocks.length > 0) ways.push({ length, width, turned, stocks: new Set(stocks) });
  }
  const area = pieces.reduce(
    (sum, p) => sum + (p.length / 3200) * (p.width === undefined ? 1 : p.width / 3200),
    0,
  );
  return { pieces, count, ways, area, ...(group ? { group } : {}) };
}

/** Whether grain and faces allow a piece on a stock, lying this way round. */
function mayLie(p: CutPiece, s: CutStock, turned: boolean): boolean {
  return facesDo(p, s) && grainDoes(p, s, turned);
}

export function facesDo(p: CutPiece, s: CutStock): boolean {
  return (p.faces ?? 0) <= (s.faces ?? 2);
}

function grainDoes(p: CutPiece, s: CutStock, turned: boolean): boolean {
  if (s.width === undefined) return !turned;
  if (p.turn || s.grain === 'free') return true;
  return turned === ((p.across === true) !== (s.grain === 'across'));
}

/** Whether a piece lies inside a stock's usable part, this way round, as its grain allows. */
export function lies(p: CutPiece, s: CutStock, turned: boolean): boolean {
  const { length, width } = sizeOf(p, turned);
  return (
    grainDoes(p, s, turned) &&
    length <= s.length - 2 * s.trim &&
    width <= (s.width === undefined ? 0 : s.width - 2 * s.trim)
  );
}

/** A piece's size as it is cut and as it lies. */
export function sizeOf(p: CutPiece, turned: boolean): { readonly length: number; readonly width: number } {
  const length = p.length + (p.allowance?.length ?? 0);
  const width = (p.width ?? 0) + (p.allowance?.width ?? 0);
  return turned ? { length: width, width: length } : { length, width };
}

/** Which size of the sheet the members of a group follow one another along. */
function rowAlong(group: CutGroup, turned: boolean): 'length' | 'width' {
  return (group.follow === 'length') !== turned ? 'length' : 'width';
}

function outer(pieces: readonly CutPiece[], group: CutGroup | undefined, turned: boolean, kerf: number) {
  const sizes = pieces.map((p) => sizeOf(p, turned));
  if (!group) return sizes[0]!;
  const along = rowAlong(group, turned);
  const sum = (of: 'length' | 'width') => sizes.reduce((s, z) => s + z[of], 0) + kerf * (sizes.length - 1);
  const most = (of: 'length' | 'width') => Math.max(...sizes.map((z) => z[of]));
  return along === 'length'
    ? { length: sum('length'), width: most('width') }
    : { length: most('length'), width: sum('width') };
}

/** A unit laid with its corner at a place: a piece, or the cuts that part a group. */
export function laid(u: CutUnit, way: UnitWay, x: number, y: number, kerf: number): CutNode {
  const leaf = (p: CutPiece, x: number, y: number): CutNode => {
    const size = sizeOf(p, way.turned);
    return { kind: 'piece', piece: p.id, turned: way.turned, ...box(x, y, size.length, size.width) };
  };
  if (!u.group) return leaf(u.pieces[0]!, x, y);
  const along = rowAlong(u.group, way.turned);
  const across = along === 'length' ? 'width' : 'length';
  const cell = (p: CutPiece, x: number, y: number): CutNode => {
    const size = sizeOf(p, way.turned);
    const spare = way[across] - size[across];
    const piece = leaf(p, x, y);
    if (spare <= 0) return piece;
    const whole = along === 'length' ? box(x, y, size.length, way.width) : box(x, y, way.length, size.width);
    return divided(whole, across, (across === 'length' ? x : y) + size[across], kerf, (area, first) =>
      first ? piece : { kind: 'left', ...area },
    );
  };
  const row = (i: number, x: number, y: number): CutNode => {
    const p = u.pieces[i]!;
    if (i === u.pieces.length - 1) return cell(p, x, y);
    const size = sizeOf(p, way.turned)[along];
    const end = along === 'length' ? x + size : y + size;
    const rest = u.pieces.slice(i).reduce((s, q) => s + sizeOf(q, way.turned)[along] + kerf, -kerf);
    const whole = along === 'length' ? box(x, y, rest, way.width) : box(x, y, way.length, rest);
    return divided(whole, along, end, kerf, (area, first) =>
      first ? cell(p, x, y) : row(i + 1, area.x, area.y),
    );
  };
  const top = row(0, x, y);
  return top.kind === 'cut' ? { ...top, group: u.group.id } : top;
}

interface Box {
  readonly x: Ticks;
  readonly y: Ticks;
  readonly length: Ticks;
  readonly width: Ticks;
}

/** A rectangle of whole ticks. */
export function box(x: number, y: number, length: number, width: number): Box {
  return { x: ticks(x), y: ticks(y), length: ticks(length), width: ticks(width) };
}

/** An area cut in two; what is less than the kerf behind the cut is shaved off. */
export function divided(
  a: Box,
  across: 'length' | 'width',
  at: number,
  kerf: number,
  part: (area: Box, first: boolean) => CutNode,
): CutNode & { readonly kind: 'cut' } {
  const [first, second] = halves(a, across, at, kerf);
  return {
    kind: 'cut',
    ...box(a.x, a.y, a.length, a.width),
    across,
    at: ticks(at),
    parts: [part(first, true), part(second, false)],
  };
}

/** Both parts of an area that a cut divides. */
export function halves(a: Box, across: 'length' | 'width', at: number, kerf: number): readonly [Box, Box] {
  const end = across === 'length' ? a.x + a.length : a.y + a.width;
  const resumes = Math.min(at + kerf, end);
  return across === 'length'
    ? [box(a.x, a.y, at - a.x, a.width), box(resumes, a.y, end - resumes, a.width)]
    : [box(a.x, a.y, a.length, at - a.y), box(a.x, resumes, a.length, end - resumes)];
}
