import { expect, test } from 'vitest';
import { airFlow, freeArea } from './ventilation.ts';

const M3S_PER_CFM = 0.000471947;

test('120 W warms 21.1 cfm by 10 K: cfm = 1.756 P / dT, the heat balance in widespread use', () => {
  expect(airFlow(120, 10) * 1000).toBeCloseTo(9.95, 2);
  expect(airFlow(120, 10) / M3S_PER_CFM).toBeCloseTo((1.756 * 120) / 10, 1);
});

test('and needs 381 cm2 low and high, half a metre apart; 269 cm2 a metre apart (ASHRAE Fundamentals 1997, eq. 37)', () => {
  expect(freeArea(120, 10, 500) / 100).toBeCloseTo(381, 0);
  expect(freeArea(120, 10, 1000) / 100).toBeCloseTo(269, 0);
});
