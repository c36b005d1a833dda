import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ledger, type LengthRow, OPERATIONS, type RatioRow, type Traced } from './ledger.ts';
import { leavesOf, recompute } from './recompute.ts';
import { fromMm, type Rounding, type Ticks, ticks } from './ticks.ts';

const half: RatioRow = { id: 'half', of: [1, 2], says: 'half the thickness', source: 'common practice' };
const clear: LengthRow = { id: 'clear', value: fromMm(50), says: 'ends clear', source: 'common practice' };

describe('the ledger', () => {
  test('knows every operation', () => {
    const l = new Ledger();
    const a = l.document('case/width', fromMm(1580), '1580 mm');
    const t = l.measured('lot/birch/thickness', fromMm(17.6));
    const row = l.row(clear);
    expect(l.ticks(l.sum('s', a, t, row))).toBe(fromMm(1580 + 17.6 + 50));
    expect(l.ticks(l.less('l', a, t, t))).toBe(fromMm(1580 - 2 * 17.6));
    expect(l.ticks(l.times('t', t, 3))).toBe(fromMm(52.8));
    expect(l.ticks(l.ratio('r', t, half))).toBe(fromMm(8.8));
    expect(l.ticks(l.greatest('g', t, a, row))).toBe(fromMm(1580));
    expect(l.ticks(l.least('m', a, t, row))).toBe(fromMm(17.6));
    const step = l.document('tool/step', fromMm(0.5), '0.5 mm');
    expect(l.ticks(l.round('d', t, step, 'down'))).toBe(fromMm(17.5));
    expect(l.ticks(l.round('u', t, step, 'up'))).toBe(fromMm(18));
    expect(l.ticks(l.round('n', t, step, 'nearest'))).toBe(fromMm(17.5));
  });

  test('a leaf is entered once, and never with two values', () => {
    const l = new Ledger();
    const a = l.document('w', fromMm(10), '10');
    expect(l.document('w', fromMm(10), '10')).toBe(a);
    expect(l.measured('w', fromMm(11))).not.toBe(a);
    expect(() => l.document('w', fromMm(12), '12')).toThrow('two values');
  });

  test('an entry opens with its reason, operands and numbers', () => {
    const l = new Ledger();
    const a = l.document('w', fromMm(10), '10 mm');
    const s = l.share('a bay', a, [1, 2, 1], 1);
    expect(l.entry(s)).toEqual({
      operation: 'share',
      value: fromMm(5),
      reason: 'a bay',
      operands: [a],
      numbers: [1, 1, 2, 1],
      note: '',
    });
    expect(l.entry(l.ratio('half', a, half)).note).toBe('half: half the thickness (common practice)');
    expect(() => l.ticks(99 as Traced)).toThrow('no such ledger entry');
  });

  test('a length past 671 m is our own mistake and throws', () => {
    const l = new Ledger();
    const a = l.document('w', fromMm(600_000), '600 m');
    expect(() => l.times('too long', a, 2)).toThrow('not a whole tick');
  });

  test('each entry of a long one keeps its own reason and note, in a copy as well', () => {
    const l = new Ledger();
    const a = l.document('w', fromMm(10), '10 mm');
    for (let i = 1; i <= 5000; i++)
      if (i % 7 === 0) l.ratio(`half ${i}`, a, half);
      else l.sum(`sum ${i}`, a, a);
    for (const ledger of [l, Ledger.from(l.data())])
      for (let i = 1; i <= 5000; i++) {
        const { reason, note } = ledger.entry(i as Traced);
        expect(reason).toBe(i % 7 === 0 ? `half ${i}` : `sum ${i}`);
        expect(note).toBe(i % 7 === 0 ? 'half: half the thickness (common practice)' : '');
      }
  });

  test('goes on from a copy as if nothing had happened', () => {
    const l = new Ledger();
    const a = l.document('w', fromMm(10), '10 mm');
    l.sum('twice', a, a);
    const copy = Ledger.from(l.data());
    for (const one of [l, copy]) one.less('on', one.document('w', fromMm(10), '10 mm'), one.row(clear));
    expect(copy.data()).toEqual(l.data());
  });
});

/** A ledger of random numbers, from a recipe of random choices. */
const step = fc.record({
  kind: fc.constantFrom(...OPERATIONS),
  picks: fc.array(fc.nat(), { minLength: 1, maxLength: 5 }),
  value: fc.integer({ min: -3_000_000, max: 3_000_000 }),
  weights: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 6 }),
  over: fc.integer({ min: -7, max: 7 }),
  under: fc.integer({ min: 1, max: 12 }),
  how: fc.constantFrom<Rounding>('down', 'up', 'nearest'),
});
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

function build(steps: readonly Step[]): { ledger: Ledger; leaves: Map<string, number> } {
  const ledger = new Ledger();
  const leaves = new Map<string, number>();
  const size: Traced[] = [];
  const leaf = (kind: 'document' | 'measured' | 'row', value: number): Traced => {
    const id = `leaf ${leaves.size}`;
    leaves.set(`${kind} ${id}`, value);
    if (kind === 'document') return ledger.document(id, ticks(value), String(value));
    if (kind === 'measured') return ledger.measured(id, ticks(value));
    return ledger.row({ id, value: ticks(value), says: 'a rule', source: 'from memory' });
  };
  size.push(leaf('document', 1));
  for (const s of steps) {
    const some = s.picks.map((p) => size[p % size.length]!);
    const [a] = some as [Traced];
    // Values grow with every sum; what gets too long for a tick is left out.
    const tooLong = some.reduce((n, t) => n + Math.abs(ledger.ticks(t)), 0) * 7 > 2e9;
    const kind = tooLong ? 'document' : s.kind;
    const positive = leaf('row', Math.abs(s.value) + 1);
    const made: Record<(typeof OPERATIONS)[number], () => Traced> = {
      document: () => leaf('document', s.value),
      measured: () => leaf('measured', s.value),
      row: () => leaf('row', s.value),
      sum: () => ledger.sum('sum', ...some),
      less: () => ledger.less('less', a, ...some.slice(1)),
      times: () => ledger.times('times', a, s.over),
      ratio: () =>
        ledger.ratio('ratio', a, { id: 'r', of: [s.over, s.under], says: 'r', source: 'from memory' }),
      share: () => ledger.share('share', a, s.weights, s.picks[0]! % s.weights.length),
      greatest: () => ledger.greatest('greatest', ...some),
      least: () => ledger.least('least', ...some),
      round: () => ledger.round('round', a, positive, s.how),
      fraction: () => ledger.fraction('fraction', a, s.over, s.under, s.how, 'a/size: a * 2 / 3'),
    };
    size.push(made[kind]());
  }
  return { ledger, leaves };
}

test('a second evaluator finds every number again from its leaves alone', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
      const { ledger, leaves } = build(steps);
      const data = ledger.data();
      for (let id = 0; id < ledger.size; id++) {
        const asked = new Set<string>();
        const again = recompute(data, id, (kind, text) => {
          asked.add(`${kind} ${text}`);
          return leaves.get(`${kind} ${text}`)!;
        });
        expect(again).toBe(ledger.ticks(id as Traced) as number);
        const named = leavesOf(data, id);
        expect(new Set(named.map((n) => `${n.kind} ${n.id}`))).toEqual(asked);
        for (const n of named) expect(['document', 'measured', 'row']).toContain(n.kind);
      }
    }),
    { numRuns: 200 },
  );
});

test('shares sum to the whole, and equal ones differ by a tick at most', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -9_000_000, max: 9_000_000 }),
      fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 1, maxLength: 12 }),
      (total, weights) => {
        const l = new Ledger();
        const t = l.document('w', ticks(total), 'w');
        const of = (w: readonly number[]) => w.map((_, i) => l.ticks(l.share('s', t, w, i)) as number);
        const sum = (n: readonly number[]) => n.reduce((a, b) => a + b, 0);
        expect(sum(of(weights))).toBe(l.ticks(t));
        const equal = of(weights.map(() => 1));
        expect(sum(equal)).toBe(l.ticks(t));
        expect(Math.max(...equal) - Math.min(...equal)).toBeLessThanOrEqual(1);
      },
    ),
  );
});

test('four parts of 12 in fill 48 in, and three thirds of a metre fill a metre', () => {
  const l = new Ledger();
  const w = l.document('w', fromMm(48 * 25.4), '48 in');
  for (let i = 0; i < 4; i++) expect(l.ticks(l.share('s', w, [1, 1, 1, 1], i))).toBe(fromMm(304.8));
  const m = l.document('m', fromMm(1000), '1 m');
  const thirds = [0, 1, 2].map((i) => l.ticks(l.share('s', m, [1, 1, 1], i)));
  expect(thirds).toEqual([1066666, 1066667, 1066667]);
});

test('the second evaluator follows a changed leaf', () => {
  const l = new Ledger();
  const w = l.document('w', fromMm(1000), '1000');
  const t = l.measured('t', fromMm(18));
  const inside = l.less('clear width', w, t, t);
  const at = recompute(l.data(), inside, (kind) => (kind === 'measured' ? fromMm(17.6) : fromMm(1000)));
  expect(at).toBe(fromMm(964.8));
});

test('the second evaluator throws on data that no ledger writes', () => {
  const l = new Ledger();
  const a = l.document('w', 5 as Ticks, '5');
  l.sum('s', a, a);
  const good = l.data();
  expect(() => recompute(good, 2, () => 0)).toThrow('no such ledger entry');
  const bad = { ...good, operation: Uint8Array.of(0, 99) };
  expect(() => recompute(bad, 1, () => 0)).toThrow('unknown operation');
  const ring = { ...good, pool: Float64Array.from(good.pool, (n, i) => (i === 2 ? 1 : n)) };
  expect(() => recompute(ring, 1, () => 0)).toThrow('not earlier');
});
