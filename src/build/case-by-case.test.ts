import { expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';

const { build } = builtExample('hall-kitchen');
const at = (id: string) => build.operations.findIndex((o) => o.id === id);

test('a case is begun when the one before is together: no floor is full of bottoms', () => {
  for (let n = 2; n <= 9; n++) expect(at(`B${n}/set`)).toBeGreaterThan(at(`F${n - 1}/set`));
});

test('a row of cases is carried case by case, none larger than the largest', () => {
  const carry = build.operations[at('home/carry')]!;
  expect(carry.lines[0]).toMatch(/^Its 9 cases go one by one/);
});

test('every card of a base says which', () => {
  const titles = build.operations.map((o) => o.title).filter((t) => t.includes('against the bottom'));
  expect(new Set(titles).size).toBe(9);
});
