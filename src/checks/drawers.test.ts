import { describe, expect, test } from 'vitest';
import { toolChest } from '../../test/drawers/chest-job.ts';
import { setOut } from '../setting-out/index.ts';
import { drawers } from './drawers.ts';
import { PLATE_TABLE, plateSagMm } from './plate.ts';

function codes(changes: Parameters<typeof toolChest>[0]): readonly string[] {
  const job = toolChest(changes);
  const weigh = () => ({ kg: 0.5, centreMm: [0, 0, 0] as const });
  return drawers({ job, setOut: setOut(job), weigh }).map((s) => s.code);
}

describe('a plate on four edges', () => {
  test('sags as the series of Navier says, for every row of the table to 2 %', () => {
    // w = 16 q / (pi^6 D) sum over odd m, n of sin sin / (m n (m^2/a^2 + n^2/b^2)^2), D = E t^3 / (12 (1 - 0.3^2)).
    for (const { ratio, alpha } of PLATE_TABLE) {
      let sum = 0;
      for (let m = 1; m < 80; m += 2)
        for (let n = 1; n < 80; n += 2) {
          const sign = ((m + n) / 2 - 1) % 2 === 0 ? 1 : -1;
          sum += sign / (m * n * (m ** 2 + (n / ratio) ** 2) ** 2);
        }
      const series = (16 / Math.PI ** 6) * sum * 12 * (1 - 0.09);
      expect(Math.abs(alpha / series - 1)).toBeLessThan(0.02);
    }
  });

  test('a long one sags as a strip of it would: 5/384 of a beam, 12 (1 - 0.09) for a plate', () => {
    const long = plateSagMm(0.002, [300, 6000], 6, 5000);
    const strip = (((5 * 12 * 0.91) / 384) * 0.002 * 300 ** 4) / (5000 * 6 ** 3);
    expect(long / strip).toBeCloseTo(1, 2);
  });
});

describe('drawers in use', () => {
  test('nothing to say of those of the example', () => {
    expect(codes({})).toEqual([]);
  });

  test('more in them than runners and bottoms are made for', () => {
    expect(codes({ planes: { load: '60 kg' } })).toContain('drawers.runner-overloaded');
    expect(codes({ planes: { load: '200 kg' } })).toContain('drawers.bottom-sags');
  });
});
