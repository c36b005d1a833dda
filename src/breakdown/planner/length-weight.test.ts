import fc from 'fast-check';
import { expect, it } from 'vitest';
import { weigh } from './length-weight.ts';

it('never weighs lengths less together than apart, for any parameter the bound may use', () => {
  const c = 60;
  const weight = fc.constantFrom('size' as const, 'large' as const, 'halves' as const);
  fc.assert(
    fc.property(weight, fc.integer({ min: 1, max: c / 2 }), fc.nat(c), fc.nat(c), (kind, parameter, x, y) => {
      fc.pre(x + y <= c);
      const f = (length: number) => weigh(kind, parameter, c, length);
      expect(f(x) + f(y)).toBeLessThanOrEqual(f(x + y));
    }),
    { seed: 1, numRuns: 5000 },
  );
});
