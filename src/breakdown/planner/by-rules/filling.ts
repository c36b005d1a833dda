import { type Chance, ticks } from '../../../measure/index.ts';
import type { CutNode } from '../../cut-plan.ts';
import type { CutProblem, CutStock, Flaw } from '../../cut-problem.ts';
import { contentsEnd, ending } from './contents.ts';
import { box, type CutUnit, halves, laid, type UnitWay } from './cut-unit.ts';
import { areaOf, mustTravel, obeys, touches, travels } from './obeys.ts';

type Side = 'length' | 'width';
type Box = ReturnType<typeof box>;

/** How often another piece is tried at a place before the place is left over. */
const TRIES = 4;
/** Pieces on one sheet at most. */
const MOST_ON_SHEET = 400;

/** What steers one filling: the order in which units are tried, and how often chance has its way. */
export interface Manner {
  /** Units (by index), the first ones first. */
  readonly order: readonly number[];
  /** How often the piece that fits best is taken rather than the first in the order. */
  readonly best: number;
  /** How often the first cut is made wide enough for two pieces. */
  readonly two: number;
  /** How often the length is divided before the width. */
  readonly lengthFirst: number;
  /** How often an area is left empty for a better one to come. */
  readonly leave: number;
}

/**
 * Fills sheets from the top down, as a person cuts them: a piece goes to the near corner of an area, the cut that
 * frees its strip is made as long as what ends up in the strip, and the rest is filled on. Every cut is checked against
 * the rules when it is made; so is the whole sheet at the end, because cuts move when strips shrink.
 */
export class Filling {
  /** How many of each unit have no place yet. */
  readonly left: number[];
  /** Work done, about what the search of trees calls a node. */
  work = 0;
  private readonly problem: CutProblem;
  private readonly units: readonly CutUnit[];
  private readonly chance: Chance;
  private stock!: CutStock;
  private stockAt = 0;
  private manner!: Manner;
  private readonly taken: number[] = [];
  private heavy = 0;
  private yard = 0;

  constructor(problem: CutProblem, units: readonly CutUnit[], chance: Chance) {
    this.problem = problem;
    this.units = units;
    this.chance = chance;
    this.left = units.map((u) => u.count);
  }

  /** Fills one sheet with what has no place yet; nothing when no piece comes to lie on it. */
  fill(
    stockAt: number,
    manner: Manner,
  ): { readonly root: CutNode; readonly units: readonly number[] } | undefined {
    this.stockAt = stockAt;
    this.stock = this.problem.stock[stockAt]!;
    this.manner = manner;
    this.taken.length = 0;
    this.heavy = 0;
    this.yard = 0;
    const { length, width, trim } = this.stock;
    const flat = width === undefined;
    const root = this.area(
      box(trim, flat ? 0 : trim, length - 2 * trim, flat ? 0 : width - 2 * trim),
      undefined,
      0,
    );
    if (!root || this.taken.length === 0 || !obeys(this.problem, this.stock, root)) {
      this.rollBack(0);
      return undefined;
    }
    return { root, units: [...this.taken] };
  }

  private area(a: Box, before: Side | undefined, stage: number): CutNode | undefined {
    const leftOver: CutNode = { kind: 'left', ...a };
    if (a.length <= 0 || (this.stock.width !== undefined && a.width <= 0)) return leftOver;
    const flaws = (this.stock.flaws ?? []).filter((f) => touches([f], a));
    const aside = flaws.length > 0 && this.chance.share() < 0.5;
    const found = aside ? undefined : this.withPiece(a, before, stage);
    if (found) return found;
    if (flaws.length > 0) {
      const cut = this.round(flaws[this.chance.below(flaws.length)]!, a, before, stage);
      if (cut) return cut;
      const late = aside ? this.withPiece(a, before, stage) : undefined;
      if (late) return late;
    }
    return this.mayTravel(a) ? leftOver : this.apart(a, before, stage);
  }

  /** An area with a piece in its near corner. */
  private withPiece(a: Box, before: Side | undefined, stage: number): CutNode | undefined {
    if (this.taken.length >= MOST_ON_SHEET) return undefined;
    if (before !== undefined && this.manner.leave > 0 && this.chance.share() < this.manner.leave)
      return undefined;
    const from = this.mark();
    for (const [unit, way] of this.candidates(a)) {
      this.take(unit);
      const node = this.around(a, unit, way, before, stage, undefined);
      if (node) return node;
      this.rollBack(from);
    }
    return undefined;
  }

  private candidates(a: Box): readonly (readonly [number, UnitWay])[] {
    const best = this.chance.share() < this.manner.best;
    const found: { unit: number; way: UnitWay; score: number }[] = [];
    let rank = 0;
    for (const i of this.manner.order) {
      this.work += 3;
      if (this.left[i]! <= 0) continue;
      for (const way of this.units[i]!.ways) {
        if (way.length > a.length || way.width > a.width || !way.stocks.has(this.stockAt)) continue;
        if (touches(this.stock.flaws, { x: a.x, y: a.y, length: way.length, width: way.width })) continue;
        const spare = Math.min(a.length - way.length, a.width - way.width);
        found.push({ unit: i, way, score: best ? spare : rank + this.chance.share() });
      }
      rank++;
      if (!best && found.length >= 2 * TRIES) break;
    }
    return found
      .sort((x, y) => x.score - y.score)
      .slice(0, TRIES)
      .map((f) => [f.unit, f.way] as const);
  }

  /** Cuts a unit, which lies in the near corner, out of its area. `not`: the direction that would only repeat a cut. */
  private around(
    a: Box,
    unit: number,
    way: UnitWay,
    before: Side | undefined,
    stage: number,
    not: Side | undefined,
  ): CutNode | undefined {
    this.work += 20;
    if (way.length === a.length && way.width === a.width)
      return this.mayTravel(a) ? laid(this.units[unit]!, way, a.x, a.y, this.problem.kerf) : undefined;
    const lengthFirst = this.chance.share() < this.manner.lengthFirst;
    const sides: readonly Side[] = lengthFirst ? ['length', 'width'] : ['width', 'length'];
    const from = this.mark();
    for (const side of sides) {
      if (side === not || way[side] === a[side]) continue;
      const node = this.strip(a, unit, way, side, before, stage);
      if (node) return node;
      this.rollBack(from);
    }
    return undefined;
  }

  /** A cut that frees the strip in which a unit lies, and what comes of both sides. */
  private strip(
    a: Box,
    unit: number,
    way: UnitWay,
    side: Side,
    before: Side | undefined,
    stage: number,
  ): CutNode | undefined {
    const start = side === 'length' ? a.x : a.y;
    const end = start + a[side];
    const rough = !this.mayTravel(a);
    const { first: begins } = this.problem.rules ?? {};
    const spans = begins !== undefined && way[begins] === a[begins];
    if (!this.mayCut(a, side, before, stage, rough, spans)) return undefined;
    const kerf = rough ? this.roughKerf() : this.problem.kerf;
    const other: Side = side === 'length' ? 'width' : 'length';
    let room = way[side];
    let least: number = start;
    if (rough) {
      const [near, far] = this.homeward(a, side);
      if (far < start + room || near > far) return undefined;
      least = near;
      room = Math.max(room, far - start);
    } else if (way[other] < a[other] && this.chance.share() < this.manner.two)
      room = this.roomForTwo(room, a[side], side);
    const first = side === 'length' ? box(a.x, a.y, room, a.width) : box(a.x, a.y, a.length, room);
    const within = way[other] < a[other] && room > way[side] ? side : undefined;
    const now = side === before ? stage : stage + 1;
    const filled = this.around(first, unit, way, side, now, within);
    if (!filled) return undefined;
    return this.divide(a, side, kerf, rough, Math.max(contentsEnd(filled, side)!, least), filled, now, end);
  }

  /** Puts a strip and the rest of its area together; the rest is filled. */
  private divide(
    a: Box,
    side: Side,
    kerf: number,
    rough: boolean,
    at: number,
    filled: CutNode,
    stage: number,
    end: number,
  ): CutNode | undefined {
    const yardUsed = this.problem.rules?.yard?.over ?? 0;
    const kerfOf = (n: CutNode) =>
      n.kind === 'cut' && n.yard ? this.problem.kerf + 2 * yardUsed : this.problem.kerf;
    const first = ending(filled, side, at, kerfOf);
    if (at >= end) return first;
    const [, second] = halves(a, side, at, kerf);
    const hold = this.problem.rules?.hold ?? 0;
    if (Math.max(first[side], second[side]) < hold) return undefined;
    const rest = this.area(second, side, stage);
    if (!rest) return undefined;
    return {
      kind: 'cut',
      ...a,
      across: side,
      at: ticks(at),
      parts: [first, rest],
      ...(rough ? { yard: true as const } : {}),
    };
  }

  /** Cuts beside a flaw: before it, so that what is clear comes off first, or behind it. */
  private round(flaw: Flaw, a: Box, before: Side | undefined, stage: number): CutNode | undefined {
    if (!this.mayTravel(a) || !this.anyFits(a)) return undefined;
    const flat = this.stock.width === undefined;
    const tries: readonly (readonly [Side, boolean])[] = [
      ['length', true],
      ['length', false],
      ['width', true],
      ['width', false],
    ];
    const turn = this.chance.below(4);
    const from = this.mark();
    for (let i = 0; i < 4; i++) {
      const [side, ahead] = tries[(i + turn) % 4]!;
      if ((flat && side === 'width') || !this.mayCut(a, side, before, stage, false, false)) continue;
      const start = side === 'length' ? a.x : a.y;
      const end = start + a[side];
      const low = side === 'length' ? flaw.x : flaw.y;
      const high = low + flaw[side];
      const { kerf } = this.problem;
      const now = side === before ? stage : stage + 1;
      const at = ahead ? low : high - kerf > start ? high - kerf : high;
      if (at > start && at < end) {
        const [first] = halves(a, side, at, kerf);
        const count = this.taken.length;
        const filled = this.area(first, side, now);
        const kept = filled && contentsEnd(filled, side);
        if (filled && (!ahead || kept !== undefined)) {
          const node = this.divide(a, side, kerf, false, ahead ? kept! : at, filled, now, end);
          if (node && this.taken.length > count) return node;
        }
      }
      this.rollBack(from);
    }
    return undefined;
  }

  /** Takes an area with nothing on it apart, so that it can be brought home. */
  private apart(a: Box, before: Side | undefined, stage: number): CutNode | undefined {
    const sides: readonly Side[] = a.length >= a.width ? ['length', 'width'] : ['width', 'length'];
    const from = this.mark();
    for (const side of sides) {
      if (this.mayCut(a, side, before, stage, true, false)) {
        const start = side === 'length' ? a.x : a.y;
        const [near, at] = this.homeward(a, side);
        const [first] = halves(a, side, at, this.roughKerf());
        const now = side === before ? stage : stage + 1;
        const filled = near <= at && at < start + a[side] ? this.area(first, side, now) : undefined;
        const node = filled && this.divide(a, side, this.roughKerf(), true, at, filled, now, start + a[side]);
        if (node) return node;
      }
      this.rollBack(from);
    }
    return undefined;
  }

  /** Where a rough cut may come: as near as the rest still travels, as far as what comes off does. Nowhere when near is beyond far. */
  private homeward(a: Box, side: Side): readonly [number, number] {
    const { length, width, over } = this.problem.rules!.yard!;
    const other: Side = side === 'length' ? 'width' : 'length';
    const spare = (way: readonly [number, number]) => (a[other] + 2 * over <= way[1] ? way[0] : 0);
    const most = Math.max(spare([length, width]), spare([width, length]), Math.min(length, width));
    const { trim } = this.stock;
    const all = side === 'length' ? this.stock.length : this.stock.width!;
    const start = side === 'length' ? a.x : a.y;
    const end = start + a[side];
    const low = start <= trim ? 0 : start - over;
    const high = end >= all - trim ? all : end + over;
    const last = this.yard >= this.problem.rules!.yard!.cuts;
    const least = last ? high - most - this.problem.kerf - over : start;
    // What stays of a piece that was cut off before is not made to measure: no place could be told for the cut.
    const near = least <= start ? start : end >= all - trim ? least : Number.POSITIVE_INFINITY;
    return [near, Math.min(end, low + most - over)];
  }

  /** Whether a cut may be made here; counts it. */
  private mayCut(
    a: Box,
    side: Side,
    before: Side | undefined,
    stage: number,
    rough: boolean,
    spans: boolean,
  ): boolean {
    const rules = this.problem.rules;
    if (!rules) return true;
    const other: Side = side === 'length' ? 'width' : 'length';
    if (rules.stages !== undefined && (side === before ? stage : stage + 1) > rules.stages) return false;
    if (before === undefined && rules.first !== undefined && rules.first !== side && !spans) return false;
    if (!rough && rules.longest !== undefined && this.stock.width !== undefined && a[other] > rules.longest)
      return false;
    if (rules.hold !== undefined && a[side] <= rules.hold) return false;
    if (rough && ++this.yard > rules.yard!.cuts) return false;
    if (rules.carry && areaOf(a) > rules.carry.area && ++this.heavy > rules.carry.cuts) return false;
    return true;
  }

  private roomForTwo(one: number, most: number, side: Side): number {
    const { order } = this.manner;
    for (let t = 0; t < TRIES; t++) {
      const i = order[this.chance.below(order.length)]!;
      const { ways } = this.units[i]!;
      if (this.left[i]! <= 0 || ways.length === 0) continue;
      const room = one + this.problem.kerf + ways[this.chance.below(ways.length)]![side];
      if (room <= most) return room;
    }
    return one;
  }

  private anyFits(a: Box): boolean {
    return this.units.some(
      (u, i) =>
        this.left[i]! > 0 &&
        u.ways.some((w) => w.length <= a.length && w.width <= a.width && w.stocks.has(this.stockAt)),
    );
  }

  private mayTravel(a: Box): boolean {
    return !mustTravel(this.problem, this.stock) || travels(this.problem, this.stock, a);
  }

  private roughKerf(): number {
    return this.problem.kerf + 2 * this.problem.rules!.yard!.over;
  }

  private take(unit: number): void {
    this.left[unit]!--;
    this.taken.push(unit);
  }

  private mark(): readonly [number, number, number] {
    return [this.taken.length, this.heavy, this.yard];
  }

  /** Back to how it was at a mark. */
  private rollBack(to: readonly [number, number, number] | 0): void {
    const [taken, heavy, yard] = to === 0 ? [0, 0, 0] : to;
    while (this.taken.length > taken) this.left[this.taken.pop()!]!++;
    this.heavy = heavy;
    this.yard = yard;
  }
}
