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
  /** The loose pieces, longest first. */
  private readonly loose: Int32Array;
  private many = 0;
  private looseLength = 0;
  /** What is left from the k-th loose piece on. */
  private readonly after: Int32Array;
  /** Groups of one, two and three loose pieces in the order of length, and how many there are. */
  private readonly groups: readonly Float64Array[];
  private readonly listed = [0, 0, 0];
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
    this.loose = new Int32Array(lengths.length + 2);
    this.after = new Int32Array(lengths.length + 3);
    this.groups = [
      NONE,
      (MOST_FOR_TWO * (MOST_FOR_TWO - 1)) / 2,
      (MOST_FOR_THREE * (MOST_FOR_THREE - 1) * (MOST_FOR_THREE - 2)) / 6,
    ].map((n) => new Float64Array(n));
    for (let i = 0; i < lengths.length; i++) {
      let at = -1;
      for (let b = 0; b < this.bars; b++)
        if (this.load[b]! + lengths[i]! <= room && (at < 0 || this.load[b]! > this.load[at]!)) at = b;
      if (at < 0) {
        this.loose[this.many++] = i;
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
    const loose = [...this.loose.subarray(0, this.many)];
    return [...this.full(), first, loose.filter((i) => !first.includes(i))].filter((b) => b.length > 0);
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
      const at = this.atMost(list, this.listed[size - 1]!, free + out);
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
    const { held, loose } = this;
    const base = b * this.most;
    const places = group % PACK;
    const [g0, g1, g2] = [places & 255, (places >>> 8) & 255, places >>> 16];
    let n = this.count[b]!;
    const [late, early] = outA > outB ? [outA, outB] : [outB, outA];
    const one = late < 0 ? -1 : held[base + late]!;
    if (late >= 0) held[base + late] = held[base + --n]!;
    const two = early < 0 ? -1 : held[base + early]!;
    if (early >= 0) held[base + early] = held[base + --n]!;
    let stay = 0;
    let gone = 0;
    for (let at = 0; at < this.many; at++) {
      const i = loose[at]!;
      if (at === g0 || at === g1 || at === g2) {
        held[base + n++] = i;
        gone += this.length[i]!;
      } else loose[stay++] = i;
    }
    this.many = stay;
    this.load[b]! += gone;
    this.looseLength -= gone;
    if (one >= 0) this.loosen(b, one);
    if (two >= 0) this.loosen(b, two);
    this.count[b] = n;
  }

  /** A piece that came out of a bar becomes loose. */
  private loosen(b: number, i: number): void {
    const { loose, length } = this;
    const l = length[i]!;
    this.load[b]! -= l;
    this.looseLength += l;
    let at = this.many++;
    for (; at > 0 && length[loose[at - 1]!]! < l; at--) loose[at] = loose[at - 1]!;
    loose[at] = i;
  }

  /** The last group that is at most so long (one of the equally long ones, by chance), or -1. */
  private atMost(list: Float64Array, listed: number, most: number): number {
    let low = 0;
    let high = listed;
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
    const { loose, length, room, listed } = this;
    const [one, two, three] = this.groups as [Float64Array, Float64Array, Float64Array];
    const n = Math.min(this.many, NONE);
    let [n1, n2, n3] = [0, 0, 0];
    // Loose pieces stand longest first.
    for (let a = n - 1; a >= 0; a--) one[n1++] = length[loose[a]!]! * PACK + (a | (NONE << 8) | (NONE << 16));
    if (n <= MOST_FOR_TWO)
      for (let a = 0; a < n; a++) {
        const la = length[loose[a]!]!;
        for (let b = a + 1; b < n; b++) {
          const lb = la + length[loose[b]!]!;
          if (lb > room) continue;
          two[n2++] = lb * PACK + (a | (b << 8) | (NONE << 16));
          if (n > MOST_FOR_THREE) continue;
          for (let c = b + 1; c < n; c++) {
            const lc = lb + length[loose[c]!]!;
            if (lc <= room) three[n3++] = lc * PACK + (a | (b << 8) | (c << 16));
          }
        }
      }
    two.subarray(0, n2).sort();
    three.subarray(0, n3).sort();
    [listed[0], listed[1], listed[2]] = [n1, n2, n3];
    this.work += 6 * (n1 + n2 + n3);
  }

  /** Whether the loose pieces go into the open bars. */
  private closes(): boolean {
    const { loose, length, after, many } = this;
    if (this.looseLength > this.open * this.room) return false;
    const least = this.looseLength - (this.open - 1) * this.room;
    after[many] = 0;
    for (let k = many - 1; k >= 0; k--) after[k] = after[k + 1]! + length[loose[k]!]!;
    this.branches = 0;
    const picked = this.pick(least, 0, 0);
    this.work += this.branches * 3 + many * 2;
    this.closing = picked;
    return picked !== undefined;
  }

  /** Pieces from the k-th on that bring a sum to between what is asked for and the room of a bar. */
  private pick(least: number, k: number, sum: number): number[] | undefined {
    if (sum > this.room || sum + this.after[k]! < least || ++this.branches > MOST_BRANCHES) return undefined;
    if (sum >= least) return [];
    if (k === this.many) return undefined;
    const i = this.loose[k]!;
    const rest = this.pick(least, k + 1, sum + this.length[i]!);
    if (!rest) return this.pick(least, k + 1, sum);
    rest.push(i);
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
