import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Bore, Bores } from './bores.ts';

const MM = 3200;
const at = fc.integer({ min: -40, max: 40 }).map((n) => n * MM);
const point = fc.tuple(at, at, at);
const bore: fc.Arbitrary<Bore> = fc
  .record({ from: point, to: point, radius: fc.integer({ min: 1, max: 5 }).map((n) => n * MM) })
  .map((b) => ({ parts: ['board'], ...b }));

/** Least distance of two segments, looked for on a fine grid: at most `slack` too large. */
function looked(p: Bore, q: Bore, steps: number): { least: number; slack: number } {
  const on = (b: Bore, i: number) => b.from.map((v, k) => v + ((b.to[k]! - v) * i) / steps);
  const length = (b: Bore) => Math.hypot(...b.to.map((v, k) => v - b.from[k]!));
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++) {
    const a = on(p, i);
    for (let j = 0; j <= steps; j++) {
      const b = on(q, j);
      least = Math.min(least, Math.hypot(...a.map((v, k) => v - b[k]!)));
    }
  }
  return { least, slack: (length(p) + length(q)) / (2 * steps) };
}

test('two bores meet when less than 2 mm of wood is left between them (common practice)', () => {
  fc.assert(
    fc.property(bore, bore, (a, b) => {
      const bores = new Bores();
      bores.add(a);
      const { least, slack } = looked(a, b, 60);
      const limit = a.radius + b.radius + 2 * MM;
      if (bores.meets(b)) expect(least - slack).toBeLessThan(limit);
      else expect(least).toBeGreaterThanOrEqual(limit - 1);
    }),
    { seed: 1, numRuns: 300 },
  );
});

test('bores that share no part never meet', () => {
  const bores = new Bores();
  const one: Bore = { parts: ['a', 'b'], from: [0, 0, 0], to: [0, 0, 9], radius: 5 };
  bores.add(one);
  expect(bores.meets({ ...one, parts: ['c'] })).toBe(false);
  expect(bores.meets({ ...one, parts: ['c', 'b'] })).toBe(true);
});
