import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Chance, stackUp, type Ticks, ticks } from '../../measure/index.ts';
import { type VirtualFit, virtualBuilds } from './virtual-builds.ts';

const MM = 3200;
const aFit = (over: Partial<VirtualFit>): VirtualFit => ({
  id: 'f',
  name: 'the fit',
  gap: 3 * MM,
  least: 2 * MM,
  loop: [],
  ...over,
});
const made = (name: string, weight: number, mm: number, error = name) => ({
  name,
  error,
  weight,
  limit: mm * MM,
});

describe('virtual builds', () => {
  // 40 ± 0.10 less 25 ± 0.05, 2 ± 0.03 and 10 ± 0.05 mm leaves 3.00 mm; worst 0.23, root sum square 0.1261:
  // the example of a tolerance stack whose gap of 3.00 is published; its limits follow from F. Scholz, "Tolerance
  // Stack Analysis Methods" (1995).
  it('stay within the worst case, and spread as a stack-up by root sum square says', () => {
    const loop = [made('slot', 1, 0.1), made('a', -1, 0.05), made('b', -1, 0.03), made('c', -1, 0.05)];
    const { fits } = virtualBuilds([aFit({ loop })], 20_000, new Chance(1));
    const { worst, likely } = fits[0]!;
    expect(worst[0] / MM).toBeCloseTo(3 - 0.23, 3);
    expect(worst[1] / MM).toBeCloseTo(3 + 0.23, 3);
    // Ninety-eight of a hundred lie within 2.326 standard deviations, three of which are the root sum square.
    const half = (0.1261 / 3) * 2.326;
    expect(likely[0] / MM).toBeCloseTo(3 - half, 2);
    expect(likely[1] / MM).toBeCloseTo(3 + half, 2);
  });

  it('agree with the worst case of the stack-up, shared errors among them', () => {
    const member = fc.record({
      size: fc.integer({ min: 0, max: 1e6 }),
      limit: fc.integer({ min: 0, max: 5000 }),
      sign: fc.constantFrom<1 | -1>(1, -1),
      lot: fc.constantFrom('a', 'b', undefined),
    });
    const lots = { a: 900, b: 1700 };
    fc.assert(
      fc.property(fc.array(member, { minLength: 1, maxLength: 8 }), (members) => {
        const limitOf = (m: (typeof members)[number]): Ticks => ticks(m.lot ? lots[m.lot] : m.limit);
        const stack = stackUp(
          members.map((m, i) => ({
            name: `${i}`,
            sign: m.sign,
            size: ticks(m.size),
            plus: limitOf(m),
            minus: limitOf(m),
            ...(m.lot ? { sharedBy: m.lot } : {}),
          })),
        );
        const loop = members.map((m, i) => ({
          name: `${i}`,
          error: m.lot ?? `${i}`,
          weight: m.sign,
          limit: limitOf(m),
        }));
        const one = virtualBuilds([aFit({ gap: stack.drawn, loop })], 50, new Chance(2)).fits[0]!;
        expect(one.worst).toEqual([stack.worst.least, stack.worst.greatest]);
        expect(one.likely[0]).toBeGreaterThanOrEqual(one.worst[0]);
        expect(one.likely[1]).toBeLessThanOrEqual(one.worst[1]);
      }),
      { numRuns: 200 },
    );
  });

  it('say which number matters most, and what cutting to the opening is worth', () => {
    const tight = aFit({
      least: 2.8 * MM,
      loop: [made('width of the door', -1, 0.5), made('height of the case', 1, 0.2)],
      cutToFit: 0.1 * MM,
    });
    const easy = aFit({ id: 'g', least: 0, loop: [made('height of the case', 1, 0.2)] });
    const all = virtualBuilds([tight, easy], 5000, new Chance(3));
    expect(all.matters[0]!.name).toBe('width of the door');
    expect(all.fits.map((f) => f.sure)).toEqual([false, true]);
    expect(all.fits[0]!.matters).toEqual(['width of the door', 'height of the case']);
    expect(all.fits[0]!.sureCutToFit).toBe(true);
    expect(all.clean).toBeLessThan(5000);
    expect(all.cleanCutToFit).toBe(5000);
    expect(all.clean).toBeGreaterThan(2500);
  });

  it('are the same for the same seed', () => {
    const fits = [aFit({ loop: [made('a', 1, 1), made('b', -1, 0.4)] })];
    expect(virtualBuilds(fits, 500, new Chance(9))).toEqual(virtualBuilds(fits, 500, new Chance(9)));
  });
});
