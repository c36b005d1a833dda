/** A small problem in whole units: sheets of one size, kinds of pieces that don't turn unless `turn`, a kerf. */
export interface SmallProblem {
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
  readonly kinds: readonly {
    readonly length: number;
    readonly width: number;
    readonly count: number;
    readonly turn: boolean;
  }[];
  /** The least that counts as a leftover. */
  readonly wanted: { readonly length: number; readonly width: number };
}

/** What one way of cutting comes to: the settings and the ways of equal pieces as bits. */
interface Way {
  readonly sheets: number;
  readonly leftover: number;
  readonly cuts: number;
  readonly settings: number;
  readonly alike: number;
}

/** Numbers that count, each the less the better. */
export type Counted = Readonly<Record<'cost' | 'leftover' | 'settings' | 'cuts' | 'alike', number>>;

/**
 * The plans of a small problem that no other plan beats in everything, by trying all cut trees whose first parts are
 * just as long as the pieces in them can need. Cost is the number of sheets.
 */
export function bestPlans(p: SmallProblem): readonly Counted[] {
  const known = new Map<string, readonly Way[]>();
  const plans = new Map<string, readonly Way[]>();

  const ways = (l: number, w: number, n: readonly number[], after: number): readonly Way[] => {
    const key = `${l} ${w} ${n} ${after}`;
    const seen = known.get(key);
    if (seen) return seen;
    let found: Way[] = [];
    const total = n.reduce((a, b) => a + b, 0);
    const area = n.reduce((a, c, i) => a + c * p.kinds[i]!.length * p.kinds[i]!.width, 0);
    const { length, width } = p.wanted;
    const useful = (l >= length && w >= width) || (l >= width && w >= length);
    if (total === 0) found = [{ ...NOTHING, leftover: useful ? (l * w) ** 2 : 0 }];
    else if (area <= l * w) {
      if (total === 1) {
        const i = n.indexOf(1);
        const k = p.kinds[i]!;
        for (const turned of k.turn ? [0, 1] : [0])
          if ((turned ? k.width : k.length) === l && (turned ? k.length : k.width) === w)
            found = kept(found, { ...NOTHING, alike: 1 << (i * 6 + turned * 3 + after) });
      }
      for (const side of ['length', 'width'] as const) {
        const size = side === 'length' ? l : w;
        for (const first of parts(n)) {
          const rest = n.map((c, i) => c - first[i]!);
          for (const cut of needs(first, side)) {
            if (cut < 1 || cut >= size) continue;
            const left = Math.max(0, size - cut - p.kerf);
            const now = side === 'length' ? 1 : 2;
            const one = side === 'length' ? ways(cut, w, first, now) : ways(l, cut, first, now);
            if (one.length === 0) continue;
            const two = side === 'length' ? ways(left, w, rest, now) : ways(l, left, rest, now);
            const setting = 1 << (cut + (side === 'length' ? 0 : 10));
            for (const a of one)
              for (const b of two)
                found = kept(found, joined(a, b, { ...NOTHING, cuts: 1, settings: setting }));
          }
        }
      }
    }
    known.set(key, found);
    return found;
  };

  /** Sizes that some pieces end to end can come to. */
  const needs = (n: readonly number[], side: 'length' | 'width'): ReadonlySet<number> => {
    let sums = new Set<number>([-p.kerf]);
    n.forEach((count, i) => {
      const k = p.kinds[i]!;
      const other = side === 'length' ? k.width : k.length;
      for (let c = 0; c < count; c++)
        sums = new Set(
          [...sums].flatMap((s) => [s, s + k[side] + p.kerf, ...(k.turn ? [s + other + p.kerf] : [])]),
        );
    });
    return sums;
  };

  const planned = (n: readonly number[]): readonly Way[] => {
    const seen = plans.get(`${n}`);
    if (seen) return seen;
    let found: Way[] = n.every((c) => c === 0) ? [NOTHING] : [];
    const whole = { ...NOTHING, sheets: 1, leftover: -((p.length * p.width) ** 2) };
    for (const first of parts(n)) {
      const one = ways(p.length, p.width, first, 0);
      if (one.length === 0) continue;
      for (const b of planned(n.map((c, i) => c - first[i]!)))
        for (const a of one) found = kept(found, joined(a, b, whole));
    }
    plans.set(`${n}`, found);
    return found;
  };

  const kinds = p.kinds.filter((k) => k.count > 0).length;
  return planned(p.kinds.map((k) => k.count)).map((w) => ({
    cost: w.sheets,
    leftover: -w.leftover,
    settings: bits(w.settings),
    cuts: w.cuts,
    alike: bits(w.alike) - kinds,
  }));
}

const NOTHING: Way = { sheets: 0, leftover: 0, cuts: 0, settings: 0, alike: 0 };

function joined(...of: readonly Way[]): Way {
  return of.reduce((a, b) => ({
    sheets: a.sheets + b.sheets,
    leftover: a.leftover + b.leftover,
    cuts: a.cuts + b.cuts,
    settings: a.settings | b.settings,
    alike: a.alike | b.alike,
  }));
}

/** With one more way, less what is no better in anything than another. */
function kept(found: Way[], w: Way): Way[] {
  if (found.some((f) => beats(f, w))) return found;
  return [...found.filter((f) => !beats(w, f)), w];
}

function beats(a: Way, b: Way): boolean {
  return (
    a.sheets <= b.sheets &&
    a.leftover >= b.leftover &&
    a.cuts <= b.cuts &&
    (a.settings & ~b.settings) === 0 &&
    (a.alike & ~b.alike) === 0
  );
}

function bits(of: number): number {
  let n = 0;
  for (let x = of; x !== 0; x &= x - 1) n++;
  return n;
}

/** Every choice of some of the pieces, at least one. */
function* parts(n: readonly number[]): Generator<readonly number[]> {
  const take = n.map(() => 0);
  for (;;) {
    let i = 0;
    while (i < n.length && take[i] === n[i]) take[i++] = 0;
    if (i === n.length) return;
    take[i]!++;
    yield [...take];
  }
}
