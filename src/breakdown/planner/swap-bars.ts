import type { Chance } from '../../measure/index.ts';

/** Bars kept open, where there are so many: what has no place yet must go into these. */
const OPEN = 2;
/** Swaps between bars after each sweep. */
const SWAPS = 300;
/** Groups of two and of three loose pieces are looked at while at most so many are loose. */
const MOST_FOR_TWO = 60;
const MOST_FOR_THREE = 16;
/** Pieces of a bar that are tried for a swap of two. */
const MOST_IN_PAIRS = 12;
/** Sweeps over the bars before the next swaps. */
const SWEEPS = 20;
/** Branches of one try to bring the loose pieces into the open bars. */
const MOST_BRANCHES = 3000;
/** A group of loose pieces and its length in one number: length * PACK + three places of 8 bits. */
const PACK = 1 << 24;
const NONE = 255;

/**
 * Tries to bring all pieces into a given number of bars. All but two bars hold some of the pieces; the others are
 * loose. By turns, one or two pieces of a bar change places with up to three loose ones, so that the loose ones
 * come to fit two bars and then become many small ones rather than few long ones; whenever they fit by length it is tried
 * to lay them in the two bars exactly; and pieces change places between bars, mostly so that waste gathers.
 * After the consistent neighbourhood search of M. Buljubasic and M. Vasquez, Computers & OR 76, 2016.
 */
export class SwapBars {
  work = 0;
  private readonly length: Int32Array;
  private readonly room: number;
  private readonly chance: Chance;
  private readonly bars: number;
  private readonly open: number;
  /** Pieces of bar b stand from b * most. */
  private readonly most: number;
  private readonly held: Int32Array;
  private readonly count: Int32Array;
  private readonly load: Int32Array;
  private loose: number[] = [];
  private looseLength = 0;
  /** Groups of one, two and three loose pieces in the order of length. */
  private readonly groups: [Float64Array, Float64Array, Float64Array] = [
    new Float64Array(0),
    new Float64Array(0),
    new Float64Array(0),
  ];
  private closing: number[] | undefined;
  private branches = 0;
  /** The best exchange seen so far. */
  private readonly best = { score: 0, group: 0, outA: -1, outB: -1, gain: 0, more: 0 };

  /** Pieces by their lengths, longest first. */
  constructor(lengths: Int32Array, room: number, bars: number, chance: Chance) {
    this.length = lengths;
    this.room = room;
    this.chance = chance;
    this.open = Math.min(OPEN, bars);
    this.bars = bars - this.open;
    this.most = Math.floor(room / lengths[lengths.length - 1]!) + 3;
    this.held = new Int32Array(this.bars * this.most);
    this.count = new Int32Array(this.bars);
    this.load = new Int32Array(this.bars);
    for (let i = 0; i < lengths.length; i++) {
      let at = -1;
      for (let b = 0; b < this.bars; b++)
        if (this.load[b]! + lengths[i]! <= room && (at < 0 || this.load[b]! > this.load[at]!)) at = b;
      if (at < 0) {
        this.loose.push(i);
        this.looseLength += lengths[i]!;
      } else {
        this.held[at * this.most + this.count[at]!++] = i;
        this.load[at]! += lengths[i]!;
      }
    }
    this.work += lengths.length * this.bars;
  }

  /** Pieces of every bar, once `improve` has found a place for all. */
  found(): number[][] {
    const first = this.closing ?? [];
    return [...this.full(), first, this.loose.filter((i) => !first.includes(i))].filter((b) => b.length > 0);
  }

  /** Pieces of the bars that are filled now. */
  full(): number[][] {
    return Array.from({ length: this.bars }, (_, b) => [
      ...this.held.subarray(b * this.most, b * this.most + this.count[b]!),
    ]);
  }

  /** One turn of sweeps and swaps; true when every piece has a place. */
  improve(): boolean {
    if (this.closes()) return true;
    for (let sweep = 0, better = true; better && sweep < SWEEPS; sweep++) {
      better = false;
      this.listGroups();
      const first = this.bars > 0 ? this.chance.below(this.bars) : 0;
      for (let q = 0; q < this.bars; q++) {
        const gain = this.exchange((first + q) % this.bars);
        if (gain === undefined) continue;
        if (gain > 0 && this.looseLength + gain > this.open * this.room) better = true;
        if (this.closes()) return true;
        this.listGroups();
      }
    }
    this.swap();
    return false;
  }

  /** The best exchange of a bar with the loose pieces, done; gives by how much the bar is fuller. */
  private exchange(b: number): number | undefined {
    const { length, held, chance, best } = this;
    const base = b * this.most;
    const n = this.count[b]!;
    const free = this.room - this.load[b]!;
    const spare = this.open * this.room - this.looseLength;
    best.score = 0.5;
    this.consider(free, spare, -1, -1, 0, 0);
    for (let x = 0; x < n; x++) this.consider(free, spare, x, -1, length[held[base + x]!]!, 1);
    const shift = n > MOST_IN_PAIRS ? chance.below(n) : 0;
    const pairs = Math.min(n, MOST_IN_PAIRS);
    for (let x = 0; x < pairs; x++) {
      const a = (x + shift) % n;
      const one = length[held[base + a]!]!;
      for (let y = x + 1; y < pairs; y++) {
        const c = (y + shift) % n;
        this.consider(free, spare, a, c, one + length[held[base + c]!]!, 2);
      }
    }
    this.work += 25 * (1 + n + (pairs * (pairs - 1)) / 2);
    if (best.score === 0.5 || (spare >= 0 && best.more <= 0 && chance.below(10) < 7)) return undefined;
    this.change(b, best.group, best.outA, best.outB);
    return best.gain;
  }

  /** Looks at the longest groups of loose pieces that go in when pieces of length `out` come out of a bar. */
  private consider(free: number, spare: number, a: number, c: number, out: number, outs: number): void {
    const { best, chance } = this;
    for (let size = 1; size <= 3; size++) {
      const list = this.groups[size - 1]!;
      const at = this.atMost(list, free + out);
      if (at < 0) continue;
      const gain = Math.floor(list[at]! / PACK) - out;
      const more = outs - size;
      const fits = spare + gain >= 0;
      if (!fits && gain < 0) continue;
      if (gain === 0 && more === 0 && chance.below(2) === 0) continue;
      // While the loose pieces are too long for the open bars their length counts; then that they are many.
      const score = fits ? 1e9 + more * 1000 + chance.below(1500) : gain * 10 + more + chance.share();
      if (score <= best.score) continue;
      best.score = score;
      best.group = list[at]!;
      best.outA = a;
      best.outB = c;
      best.gain = gain;
      best.more = more;
    }
  }

  /** Puts a group of loose pieces into a bar and takes up to two out. */
  private change(b: number, group: number, outA: number, outB: number): void {
    const { held, length, loose } = this;
    const base = b * this.most;
    const places = group % PACK;
    const gone = [places & 255, (places >>> 8) & 255, places >>> 16];
    const out: number[] = [];
    let n = this.count[b]!;
    for (const x of outA > outB ? [outA, outB] : [outB, outA]) {
      if (x < 0) continue;
      out.push(held[base + x]!);
      held[base + x] = held[base + --n]!;
    }
    const stay: number[] = [];
    loose.forEach((i, at) => {
      if (at === gone[0] || at === gone[1] || at === gone[2]) {
        held[base + n++] = i;
        this.load[b]! += length[i]!;
        this.looseLength -= length[i]!;
      } else stay.push(i);
    });
    for (const i of out) {
      this.load[b]! -= length[i]!;
      this.looseLength += length[i]!;
      stay.push(i);
    }
    this.count[b] = n;
    this.loose = stay;
  }

  /** The last group that is at most so long (one of the equally long ones, by chance), or -1. */
  private atMost(list: Float64Array, most: number): number {
    let low = 0;
    let high = list.length;
    const key = (most + 1) * PACK;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (list[middle]! < key) low = middle + 1;
      else high = middle;
    }
    let at = low - 1;
    if (at < 1) return at;
    const floor = Math.floor(list[at]! / PACK) * PACK;
    let alike = 1;
    while (alike <= at && alike < 4 && list[at - alike]! >= floor) alike++;
    if (alike > 1) at -= this.chance.below(alike);
    return at;
  }

  private listGroups(): void {
    const { loose, length, room } = this;
    const n = Math.min(loose.length, NONE);
    const one: number[] = [];
    const two: number[] = [];
    const three: number[] = [];
    for (let a = 0; a < n; a++) {
      const la = length[loose[a]!]!;
      one.push(la * PACK + (a | (NONE << 8) | (NONE << 16)));
      if (n > MOST_FOR_TWO) continue;
      for (let b = a + 1; b < n; b++) {
        const lb = la + length[loose[b]!]!;
        if (lb > room) continue;
        two.push(lb * PACK + (a | (b << 8) | (NONE << 16)));
        if (n > MOST_FOR_THREE) continue;
        for (let c = b + 1; c < n; c++) {
          const lc = lb + length[loose[c]!]!;
          if (lc <= room) three.push(lc * PACK + (a | (b << 8) | (c << 16)));
        }
      }
    }
    this.groups[0] = Float64Array.from(one).sort();
    this.groups[1] = Float64Array.from(two).sort();
    this.groups[2] = Float64Array.from(three).sort();
    this.work += 6 * (one.length + two.length + three.length);
  }

  /** Whether the loose pieces go into the open bars. */
  private closes(): boolean {
    const { loose, length, room } = this;
    if (this.looseLength > this.open * room) return false;
    const least = this.looseLength - (this.open - 1) * room;
    const order = [...loose].sort((a, b) => length[b]! - length[a]! || a - b);
    const after = new Array<number>(order.length + 1).fill(0);
    for (let k = order.length - 1; k >= 0; k--) after[k] = after[k + 1]! + length[order[k]!]!;
    this.branches = 0;
    const picked = this.pick(order, after, least, 0, 0);
    this.work += this.branches * 3 + order.length * 6;
    this.closing = picked;
    return picked !== undefined;
  }

  /** Pieces from the k-th on that bring a sum to between what is asked for and the room of a bar. */
  private pick(
    order: readonly number[],
    after: readonly number[],
    least: number,
    k: number,
    sum: number,
  ): number[] | undefined {
    if (sum > this.room || sum + after[k]! < least || ++this.branches > MOST_BRANCHES) return undefined;
    if (sum >= least) return [];
    if (k === order.length) return undefined;
    const rest = this.pick(order, after, least, k + 1, sum + this.length[order[k]!]!);
    if (!rest) return this.pick(order, after, least, k + 1, sum);
    rest.push(order[k]!);
    return rest;
  }

  /** Pieces change places between bars; what wastes most may get a little less uneven in every second turn. */
  private swap(): void {
    const { bars, held, count, load, length, chance, room, most } = this;
    if (bars < 2) return;
    const least = chance.below(2) === 0 ? 0 : -0.02 * chance.share() * room * room;
    for (let t = 0; t < SWAPS; t++) {
      const a = chance.below(bars);
      let b = chance.below(bars - 1);
      if (b >= a) b++;
      if (count[a] === 0 || count[b] === 0) continue;
      const x = a * most + chance.below(count[a]!);
      const y = b * most + chance.below(count[b]!);
      const way = chance.below(5);
      let z = -1;
      if (way >= 2 && way < 4) {
        if (count[b]! < 2) continue;
        z = b * most + chance.below(count[b]! - 1);
        if (z >= y) z++;
      }
      const i = held[x]!;
      const back = way < 2 ? length[held[y]!]! : way < 4 ? length[held[y]!]! + length[held[z]!]! : 0;
      const d = length[i]! - back;
      if (d === 0 && way < 2) continue;
      const la = load[a]! - d;
      const lb = load[b]! + d;
      if (la > room || lb > room || la < 0) continue;
      if (la * la + lb * lb - load[a]! * load[a]! - load[b]! * load[b]! < least) continue;
      if (way < 2) {
        held[x] = held[y]!;
        held[y] = i;
      } else if (way < 4) {
        held[x] = held[y]!;
        held[a * most + count[a]!++] = held[z]!;
        held[y] = i;
        held[z] = held[b * most + --count[b]!]!;
      } else {
        held[b * most + count[b]!++] = i;
        held[x] = held[a * most + --count[a]!]!;
      }
      load[a] = la;
      load[b] = lb;
    }
    this.work += SWAPS * 12;
  }
}
