import { expect, test } from 'vitest';
import { builtExample } from '../../../test/build/built.ts';
import { exposedFaces } from '../../setting-out/index.ts';
import { Bench } from '../bench.ts';
import { betweenCases } from './between-cases.ts';

const of = (name: string) => {
  const { job, drawn } = builtExample(name);
  return { job, drawn, faces: betweenCases(new Bench(job, drawn), exposedFaces(drawn)) };
};

test('cases of a run hide as much of one another as their sides lie against each other, on both', () => {
  const { drawn, faces } = of('hall-kitchen');
  const mm = (t: Parameters<typeof drawn.ledger.ticks>[0]) => drawn.ledger.ticks(t) / 3200;
  const sides = drawn.parts
    .filter((p) => p.hand !== 'none' && p.role.endsWith('-side'))
    .map(({ hand, length, width, place }) => ({
      hand,
      x: mm(place.origin[0]),
      low: mm(place.origin[2]),
      area: (from: number, to: number) => (to - from) * mm(width),
      high: mm(place.origin[2]) + mm(length),
    }));
  const rights = sides.filter((s) => s.hand === 'right').sort((a, b) => a.x - b.x);
  const lefts = sides.filter((s) => s.hand === 'left').sort((a, b) => a.x - b.x);
  const lying = lefts.slice(1).reduce((sum, left, i) => {
    const right = rights[i]!;
    return sum + 2 * left.area(Math.max(left.low, right.low), Math.min(left.high, right.high));
  }, 0);
  const hidden = faces.filter((f) => f.part.role.endsWith('-side')).reduce((sum, f) => sum + f.areaMm2, 0);
  expect(hidden / lying).toBeCloseTo(1, 1);
  expect(hidden).toBeGreaterThan(6e6);
});

test('a single case hides nothing', () => {
  expect(of('glaze-cabinet').faces).toEqual([]);
});
