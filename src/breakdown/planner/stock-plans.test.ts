import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Chance } from '../../measure/index.ts';
import { StockPlans } from './stock-plans.ts';

const stock = fc.record({
  cost: fc.integer({ min: 1, max: 50 }),
  area: fc.integer({ min: 1, max: 50 }),
  count: fc.integer({ min: 0, max: 3 }),
});

test('sheets are there, cost no more than is allowed, and are large enough together; none when no sheets are', () => {
  fc.assert(
    fc.property(
      fc.array(stock, { minLength: 1, maxLength: 3 }),
      fc.integer({ min: 1, max: 100 }),
      fc.integer({ min: 1, max: 120 }),
      fc.integer({ min: 1, max: 99 }),
      (stocks, area, goal, seed) => {
        const plan = new StockPlans(stocks, area, new Chance(seed)).next(goal);
        let any = false;
        const all = (j: number, cost: number, had: number): void => {
          if (j === stocks.length) {
            any ||= cost <= goal && had >= area;
            return;
          }
          const s = stocks[j]!;
          for (let c = 0; c <= s.count; c++) all(j + 1, cost + c * s.cost, had + c * s.area);
        };
        all(0, 0, 0);
        // What can't be added to any more is drawn by chance: it may miss a plan, but never makes one up.
        if (!plan) return;
        expect(any).toBe(true);
        expect(plan.cost).toBe(stocks.reduce((sum, s, j) => sum + plan.counts[j]! * s.cost, 0));
        expect(plan.area).toBe(stocks.reduce((sum, s, j) => sum + plan.counts[j]! * s.area, 0));
        expect(plan.cost).toBeLessThanOrEqual(goal);
        expect(plan.area).toBeGreaterThanOrEqual(area);
        stocks.forEach((s, j) => {
          expect(plan.counts[j]!).toBeLessThanOrEqual(s.count);
        });
      },
    ),
  );
});

test('of two sizes the cheap pair comes first where it should do, and the dear one once much stayed loose on it', () => {
  const stocks = [
    { cost: 110, area: 110, count: 1 },
    { cost: 130, area: 130, count: 1 },
  ];
  const plans = new StockPlans(stocks, 100, new Chance(1));
  const first = plans.next(200)!;
  expect([...first.counts]).toEqual([1, 0]);
  plans.note(first, 20);
  expect([...plans.next(200)!.counts]).toEqual([0, 1]);
  expect(plans.next(100)).toBeUndefined();
});
