import { describe, expect, test } from 'vitest';
import { moistureIn, movementBetween } from './moisture.ts';

describe('the moisture that wood comes to', () => {
  // Wood Handbook, FPL-GTR-190 (2010), ch. 4, Table 4-2: humidity and moisture at 70 °F (21.1 °C) and 30 °F (-1.1 °C).
  test.each([
    [21.1, 30, 6.2],
    [21.1, 50, 9.2],
    [21.1, 65, 12.0],
    [21.1, 80, 16.0],
    [-1.1, 40, 7.9],
    [-1.1, 65, 12.4],
    [37.8, 60, 10.3],
  ])('at %d °C and %d %% is %d %% within a tenth', (celsius, humidity, percent) => {
    expect(Math.abs(moistureIn(humidity, celsius) - percent)).toBeLessThanOrEqual(0.1 + 1e-9);
  });
});

describe('how much a board moves', () => {
  test('white ash from 35 to 60 %: 0.00274 a point (Wood Handbook, ch. 13, Table 13-5), over four points', () => {
    const points = moistureIn(60, 20) - moistureIn(35, 20);
    const [over, under] = movementBetween('ash-white', 35, 60)!.of;
    expect(over / under).toBeCloseTo(0.00274 * points, 10);
    // 500 mm of it: about 5.5 mm.
    expect((500 * over) / under).toBeGreaterThan(5);
    expect((500 * over) / under).toBeLessThan(6);
  });

  test('is not reckoned for panels', () => {
    expect(movementBetween('birch-plywood', 35, 60)).toBeUndefined();
  });
});
