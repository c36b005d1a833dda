import { Chance } from '../../measure/index.ts';
import type { ScaledProblem } from './scaled-problem.ts';
import { ACROSS, ALONG, SheetTrees } from './sheet-trees.ts';

/** Parameters of the search, one set for all problems; found on instances of our own draw. */
const BLINK = 0.02;
const HISTORY = 200;
const MOST_SHEETS = 3;
const MOST_TREES = 3;

/**
 * Ruin and recreate on guillotine trees with a cost that must be beaten: all pieces are to go on sheets that
 * together cost no more than the goal; what is measured is the area still unplaced.
 */
export class RuinRecreate {
  readonly trees: SheetTrees;
  readonly n: number;
  readonly pieceLength: Int32Array;
  readonly pieceWidth: Int32Array;
  readonly pieceTurn: Uint8Array;
  readonly pieceKind: Int32Array;
  readonly pieceArea: Float64Array;
  /** Work done so far, in tree nodes looked at. */
  work = 0;
  /** Slots in use below this; a slot holds the block and stock of an open sheet, or block -1. */
  slots = 0;
  readonly block: Int32Array;
  readonly stock: Int32Array;
  readonly stockLeft: Float64Array;
  cost = 0;
  readonly loose: Int32Array;
  looseCount = 0;
  looseWeight = 0;
  readonly weight: Float64Array;
  /** Of all pieces. */
  readonly area: number;

  private readonly p: ScaledProblem;
  readonly chance: Chance;
  // The best spot found by `look`.
  private spotScore = 0;
  private spotSlot = -1;
  private spotNode = -1;
  private spotSide = 0;
  private spotTurned = 0;
  // Sheets changed in this step: slot, block and stock before.
  private readonly changedSlot: Int32Array;
  private readonly changedBlock: Int32Array;
  private readonly changedStock: Int32Array;
  private changed = 0;
  private readonly slotStep: Int32Array;
  private step = 0;
  private readonly oldLoose: Int32Array;
  private oldLooseCount = 0;
  private readonly key: Float64Array;
  private readonly late: Float64Array;
  private lateAt = 0;

  constructor(p: ScaledProblem, seed: number) {
    this.p = p;
    this.chance = new Chance(seed);
    let n = 0;
    for (const k of p.kinds) n += k.count;
    this.n = n;
    this.pieceLength = new Int32Array(n);
    this.pieceWidth = new Int32Array(n);
    this.pieceTurn = new Uint8Array(n);
    this.pieceKind = new Int32Array(n);
    this.pieceArea = new Float64Array(n);
    this.weight = new Float64Array(n);
    let i = 0;
    p.kinds.forEach((k, kind) => {
      for (let c = 0; c < k.count; c++, i++) {
        this.pieceLength[i] = k.length;
        this.pieceWidth[i] = k.width;
        this.pieceTurn[i] = k.turn ? 1 : 0;
        this.pieceKind[i] = kind;
        this.pieceArea[i] = k.length * k.width;
        this.weight[i] = k.length * k.width;
      }
    });
    this.area = this.pieceArea.reduce((a, b) => a + b, 0);
    const most = mostPerSheet(p, this.pieceArea);
    let sheets = 0;
    for (const s of p.stocks) sheets += Math.min(s.count, n);
    sheets = Math.min(sheets, n);
    this.trees = new SheetTrees(16, most, p.kinds.length);
    this.block = new Int32Array(sheets).fill(-1);
    this.stock = new Int32Array(sheets);
    this.stockLeft = Float64Array.from(p.stocks, (s) => s.count);
    this.loose = new Int32Array(n);
    this.oldLoose = new Int32Array(n);
    this.key = new Float64Array(n);
    this.changedSlot = new Int32Array(sheets);
    this.changedBlock = new Int32Array(sheets);
    this.changedStock = new Int32Array(sheets);
    this.slotStep = new Int32Array(sheets).fill(-1);
    this.late = new Float64Array(HISTORY);
  }

  /** Puts every piece in `loose`, no sheet open. */
  clear(): void {
    for (let s = 0; s < this.slots; s++) if (this.block[s]! >= 0) this.trees.close(this.block[s]!);
    this.block.fill(-1);
    this.slots = 0;
    this.cost = 0;
    this.p.stocks.forEach((s, j) => {
      this.stockLeft[j] = s.count;
    });
    for (let i = 0; i < this.n; i++) this.loose[i] = i;
    this.looseCount = this.n;
    this.changed = 0;
    this.step++;
  }

  /** Lays every loose piece it can, in the order of a key (0 chance, 1 area, 2 longer side, 3 length, 4 width). */
  fill(key: number, goal: number): void {
    this.step++;
    this.changed = 0;
    this.recreate(key, goal, Number.POSITIVE_INFINITY, 0);
    this.settle();
  }

  /** Area-like weight of what is loose. */
  measure(): number {
    let w = 0;
    for (let i = 0; i < this.looseCount; i++) w += this.weight[this.loose[i]!]!;
    return w;
  }

  /** Leaves so many sheets of each stock to be opened, and takes apart those that are more, the emptiest first. */
  allow(counts: Int32Array): void {
    const left = counts.slice();
    const bySpace = [...this.block.subarray(0, this.slots).keys()]
      .filter((slot) => this.block[slot]! >= 0)
      .sort((a, b) => this.trees.used[this.block[b]!]! - this.trees.used[this.block[a]!]! || a - b);
    for (const slot of bySpace) {
      if (left[this.stock[slot]!]! > 0) left[this.stock[slot]!]!--;
      else this.drop(slot);
    }
    this.stockLeft.set(left);
  }

  /** Takes a whole sheet apart. */
  drop(slot: number): void {
    const b = this.block[slot]!;
    if (this.trees.top[b]! >= 0)
      this.looseCount = this.trees.remove(b, this.trees.top[b]!, this.loose, this.looseCount);
    this.trees.close(b);
    this.shut(slot);
  }

  /** Starts late acceptance from the present state. */
  begin(): void {
    this.looseWeight = this.measure();
    this.late.fill(this.looseWeight);
    this.lateAt = 0;
  }

  /** One ruin and recreate; true when nothing is loose after it. */
  improve(goal: number): boolean {
    this.step++;
    this.changed = 0;
    this.oldLooseCount = this.looseCount;
    for (let i = 0; i < this.looseCount; i++) this.oldLoose[i] = this.loose[i]!;
    const oldCost = this.cost;
    const before = this.looseWeight;

    this.work += 20;
    this.ruin();
    const late = this.late[this.lateAt]!;
    const most = Math.max(late, before);
    const after = this.recreate(this.chance.below(5), goal, most, BLINK);
    if (after <= most) {
      this.looseWeight = after;
      this.settle();
    } else {
      for (let i = 0; i < this.changed; i++) {
        const slot = this.changedSlot[i]!;
        if (this.block[slot]! >= 0) this.trees.close(this.block[slot]!);
        if (this.block[slot]! >= 0) this.stockLeft[this.stock[slot]!]!++;
        this.block[slot] = this.changedBlock[i]!;
        this.stock[slot] = this.changedStock[i]!;
        if (this.block[slot]! >= 0) this.stockLeft[this.stock[slot]!]!--;
      }
      this.cost = oldCost;
      this.looseCount = this.oldLooseCount;
      for (let i = 0; i < this.looseCount; i++) this.loose[i] = this.oldLoose[i]!;
    }
    this.late[this.lateAt] = this.looseWeight;
    if (++this.lateAt === this.late.length) this.lateAt = 0;
    return this.looseCount === 0;
  }

  /** Forgets the blocks that the last step replaced. */
  private settle(): void {
    for (let i = 0; i < this.changed; i++)
      if (this.changedBlock[i]! >= 0) this.trees.close(this.changedBlock[i]!);
    this.changed = 0;
  }

  /** Notes how a slot was before this step. True when it was not noted yet. */
  private note(slot: number): boolean {
    if (this.slotStep[slot] === this.step) return false;
    this.slotStep[slot] = this.step;
    this.changedSlot[this.changed] = slot;
    this.changedBlock[this.changed] = this.block[slot]!;
    this.changedStock[this.changed++] = this.stock[slot]!;
    return true;
  }

  /** Makes a slot's block one that may be changed in this step. */
  private touch(slot: number): void {
    if (this.note(slot)) this.block[slot] = this.trees.copy(this.block[slot]!);
  }

  private shut(slot: number): void {
    this.block[slot] = -1;
    this.stockLeft[this.stock[slot]!]!++;
    this.cost -= this.p.stocks[this.stock[slot]!]!.cost;
  }

  private ruin(): void {
    const sheets = 1 + this.chance.below(MOST_SHEETS);
    for (let i = 0; i < sheets; i++) {
      const slot = this.chance.below(this.slots);
      if (this.block[slot]! < 0) continue;
      this.touch(slot);
      const b = this.block[slot]!;
      const cuts = 1 + this.chance.below(MOST_TREES);
      for (let c = 0; c < cuts && this.trees.size[b]! > 0; c++) {
        const node = b * this.trees.capacity + this.chance.below(this.trees.size[b]!);
        this.looseCount = this.trees.remove(b, node, this.loose, this.looseCount);
      }
      this.work += this.trees.size[b]! + 10;
      if (this.trees.size[b] === 0) {
        this.trees.close(b);
        this.shut(slot);
      }
    }
  }

  /** Lays loose pieces; stops early when more than `most` stays loose. Gives the weight of what stays loose. */
  private recreate(order: number, goal: number, most: number, blink: number): number {
    this.sort(order);
    const count = this.looseCount;
    let kept = 0;
    let keptWeight = 0;
    for (let i = 0; i < count; i++) {
      const piece = this.loose[i]!;
      if (!this.lay(piece, goal, blink)) {
        this.loose[kept++] = piece;
        keptWeight += this.weight[piece]!;
        if (keptWeight > most) return keptWeight;
      }
    }
    this.looseCount = kept;
    return keptWeight;
  }

  /** Lays one piece at the best spot of all open sheets, or on a new sheet. */
  private lay(piece: number, goal: number, blink: number): boolean {
    const l = this.pieceLength[piece]!;
    const w = this.pieceWidth[piece]!;
    const turn = this.pieceTurn[piece]!;
    const kind = this.pieceKind[piece]!;
    const area = this.pieceArea[piece]!;
    const trees = this.trees;
    this.spotScore = Number.POSITIVE_INFINITY;
    this.spotSlot = -1;
    for (let s = 0; s < this.slots; s++) {
      const b = this.block[s]!;
      if (b < 0 || trees.refuses(b, kind)) continue;
      if (area > trees.sheetLength[b]! * trees.sheetWidth[b]! - trees.used[b]!) continue;
      this.found = false;
      this.look(s, b, l, w, 0, blink);
      if (turn === 1) this.look(s, b, w, l, 1, blink);
      if (!this.found) trees.refuse(b, kind);
    }
    if (this.spotSlot < 0) return this.layOnNew(piece, goal);
    this.touch(this.spotSlot);
    const b = this.block[this.spotSlot]!;
    const node = b * trees.capacity + this.spotNode;
    if (this.spotTurned === 1) trees.add(b, node, this.spotSide, piece, w, l, 1);
    else trees.add(b, node, this.spotSide, piece, l, w, 0);
    return true;
  }

  private found = false;

  /** Scores every place for a piece of l by w (as it lies) on a sheet. */
  private look(slot: number, b: number, l: number, w: number, turned: number, blink: number): void {
    const { length, width, spareLength, spareWidth } = this.trees;
    const base = b * this.trees.capacity;
    const n = this.trees.size[b]!;
    this.work += n;
    for (let v = base; v < base + n; v++) {
      const sl = spareLength[v]!;
      const sw = spareWidth[v]!;
      const L = length[v]!;
      const W = width[v]!;
      if (l <= sl && w <= sw + W) {
        this.found = true;
        const score = tightness(W, sl, sw, l, w);
        if (score < this.spotScore && (blink === 0 || this.chance.share() >= blink)) {
          this.spotScore = score;
          this.spotSlot = slot;
          this.spotNode = v - base;
          this.spotSide = ALONG;
          this.spotTurned = turned;
        }
      }
      if (w <= sw && l <= sl + L) {
        this.found = true;
        const score = tightness(L, sw, sl, w, l);
        if (score < this.spotScore && (blink === 0 || this.chance.share() >= blink)) {
          this.spotScore = score;
          this.spotSlot = slot;
          this.spotNode = v - base;
          this.spotSide = ACROSS;
          this.spotTurned = turned;
        }
      }
    }
  }

  private layOnNew(piece: number, goal: number): boolean {
    const l = this.pieceLength[piece]!;
    const w = this.pieceWidth[piece]!;
    const turn = this.pieceTurn[piece]! === 1;
    const stocks = this.p.stocks;
    let pick = -1;
    let pickScore = Number.POSITIVE_INFINITY;
    for (let j = 0; j < stocks.length; j++) {
      const s = stocks[j]!;
      if (this.stockLeft[j]! <= 0 || this.cost + s.cost > goal) continue;
      if (!((l <= s.length && w <= s.width) || (turn && w <= s.length && l <= s.width))) continue;
      const score = stocks.length === 1 ? 0 : this.chance.share();
      if (score < pickScore) {
        pick = j;
        pickScore = score;
      }
    }
    if (pick < 0) return false;
    const s = stocks[pick]!;
    let slot = 0;
    while (slot < this.slots && this.block[slot]! >= 0) slot++;
    if (slot === this.slots) this.slots++;
    this.note(slot);
    this.block[slot] = this.trees.open(s.length, s.width);
    this.stock[slot] = pick;
    this.stockLeft[pick]!--;
    this.cost += s.cost;
    if (
      l <= s.length &&
      w <= s.width &&
      !(turn && w <= s.length && l <= s.width && this.chance.below(2) === 1)
    )
      this.trees.add(this.block[slot]!, -1, ALONG, piece, l, w, 0);
    else this.trees.add(this.block[slot]!, -1, ALONG, piece, w, l, 1);
    return true;
  }

  /** Orders the loose pieces, greatest key first. */
  private sort(order: number): void {
    const { loose, key } = this;
    for (let i = 0; i < this.looseCount; i++) {
      const p = loose[i]!;
      const l = this.pieceLength[p]!;
      const w = this.pieceWidth[p]!;
      let k: number;
      if (order === 0) k = this.chance.share();
      else if (order === 1) k = l * w;
      else if (order === 2) k = Math.max(l, w);
      else if (order === 3) k = l;
      else k = w;
      let j = i;
      while (j > 0 && key[j - 1]! < k) {
        key[j] = key[j - 1]!;
        loose[j] = loose[j - 1]!;
        j--;
      }
      key[j] = k;
      loose[j] = p;
    }
  }
}

/**
 * What would be spare when a piece of l by w goes to the end of a node W wide that may grow by sl and sw: the
 * lesser of both directions, so that the best spot is the one that comes closest to using a direction up.
 */
function tightness(W: number, sl: number, sw: number, l: number, w: number): number {
  const a = sl - l;
  const c = w > W ? sw + W - w : sw;
  return Math.min(a, c);
}

/** The most pieces that one sheet can hold by area. */
function mostPerSheet(p: ScaledProblem, areas: Float64Array): number {
  const room = Math.max(...p.stocks.map((s) => s.length * s.width));
  const sorted = areas.slice().sort();
  let sum = 0;
  let i = 0;
  while (i < sorted.length && sum + sorted[i]! <= room) sum += sorted[i++]!;
  return i;
}
