import { describe, expect, test } from 'vitest';
import { parseMass } from './parse-mass.ts';

describe('masses', () => {
  test.each([
    ['60 kg', 60],
    ['2.5 kg', 2.5],
    ['2,5kg', 2.5],
    ['750 g', 0.75],
    ['0 kg', 0],
    ['1 1/2 kg', 1.5],
  ])('%s', (text, kg) => {
    expect(parseMass(text)).toEqual({ ok: true, value: kg, exact: true });
  });

  test('the pound is 0.45359237 kg exactly (international yard and pound agreement, 1959)', () => {
    expect(parseMass('1 lb')).toEqual({ ok: true, value: 0.45359237, exact: true });
    expect(parseMass('130 lbs')).toEqual({ ok: true, value: 58.9670081, exact: true });
  });

  test('thirds are not exact', () => {
    expect(parseMass('1/3 kg')).toMatchObject({ ok: true, exact: false });
  });
});

test.each([
  ['', 1, 'a mass is missing'],
  ['60', 3, 'the unit is missing'],
  ['-60 kg', 1, 'not below zero'],
  ['4 stone', 3, 'stone is not a unit of mass'],
  ['60 mm', 4, 'mm is not a unit of mass'],
  ['1,500 kg', 1, 'thousands'],
  ['60 kg each', 7, 'left over'],
  ['60/0 kg', 4, 'lower number is 0'],
  ['2000000 kg', 1, 'more than 1000 t'],
])('refuses %s', (text, at, says) => {
  const r = parseMass(text);
  expect(r.ok).toBe(false);
  if (r.ok) return;
  expect(r.problem).toContain(says);
  expect(r.at).toBe(at);
});
