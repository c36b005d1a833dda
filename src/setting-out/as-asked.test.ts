import { expect, test } from 'vitest';
import { asAsked } from './as-asked.ts';

test('a field is worked out when it is first read, once, and others stay unread', () => {
  const asked: string[] = [];
  const ways = (n: number) => ({
    width: () => asked.push(`width ${n}`) * 0 + n,
    depth: () => asked.push(`depth ${n}`) * 0 + n * 10,
  });
  const [first, second] = [asAsked(ways(1)), asAsked(ways(2))];
  expect([first.width, second.width, first.width, second.depth]).toEqual([1, 2, 1, 20]);
  expect(asked).toEqual(['width 1', 'width 2', 'depth 2']);
});

test('a field may rest on another, and on one that comes to nothing', () => {
  let times = 0;
  const fields: { readonly back: undefined; readonly depth: number } = asAsked<{
    back: undefined;
    depth: number;
  }>({
    back: () => {
      times++;
      return undefined;
    },
    depth: () => (fields.back ?? 3) + 1,
  });
  expect([fields.depth, fields.back, times]).toEqual([4, undefined, 1]);
});
