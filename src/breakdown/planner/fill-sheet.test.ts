import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FillSheet, rowsOf } from './fill-sheet.ts';
import { type KeptNode, tally } from './kept-sheet.ts';
import { ACROSS, ALONG, LEAF } from './sheet-trees.ts';

const kind = fc.record({
  length: fc.integer({ min: 1, max: 12 }),
  width: fc.integer({ min: 1, max: 12 }),
  count: fc.integer({ min: 1, max: 20 }),
  turn: fc.boolean(),
  worth: fc.integer({ min: 1, max: 30 }),
});
const sheets = fc.record({
  length: fc.integer({ min: 12, max: 24 }),
  width: fc.integer({ min: 12, max: 24 }),
  kinds: fc.array(kind, { minLength: 1, maxLength: 4 }),
});

test('fills a sheet with what is worth most, as cuts at every whole size would, and shows how it is cut', () => {
  fc.assert(
    fc.property(sheets, ({ length, width, kinds }) => {
      // Enough of each that no count keeps a filling back.
      const many = kinds.map((k, piece) => ({ ...k, piece, count: 1000 }));
      const fill = new FillSheet(many, { stock: 0, length, width, count: 1, cost: 1 });
      const worth = Float64Array.from(kinds, (k) => k.worth);
      fill.solve(
        worth,
        Int32Array.from(many, (k) => k.count),
      );
      expect(fill.value).toBe(mostWorth(length, width, kinds));
      const counts = new Int32Array(kinds.length);
      tally(fill.tree!, counts);
      expect([...fill.count]).toEqual([...counts]);
      expect(counts.reduce((a, c, i) => a + c * kinds[i]!.worth, 0)).toBe(fill.value);
      expect(sizeOf(fill.tree!, kinds)).toEqual([fill.tree!.length, fill.tree!.width]);
      expect(fill.tree!.length <= length && fill.tree!.width <= width).toBe(true);
    }),
  );
});

test('keeps to the kinds that are still asked for', () => {
  const kinds = [
    { piece: 0, length: 5, width: 5, count: 9, turn: false },
    { piece: 1, length: 4, width: 4, count: 9, turn: false },
  ];
  const fill = new FillSheet(kinds, { stock: 0, length: 10, width: 10, count: 1, cost: 1 });
  fill.solve(Float64Array.of(25, 16), Int32Array.of(9, 9));
  expect([...fill.count]).toEqual([4, 0]);
  fill.solve(Float64Array.of(25, 16), Int32Array.of(0, 9));
  expect([...fill.count]).toEqual([0, 4]);
});

test('lays a kind in rows, the way round that holds more, and not many more than are asked for', () => {
  const stock = { stock: 0, length: 10, width: 7, count: 1, cost: 1 };
  const kind = { piece: 0, length: 3, width: 5, count: 100, turn: true };
  const held = (k: typeof kind) => {
    const counts = new Int32Array(1);
    const tree = rowsOf(0, k, stock);
    tally(tree, counts);
    expect(sizeOf(tree, [k])).toEqual([tree.length, tree.width]);
    expect(tree.length <= 10 && tree.width <= 7).toBe(true);
    return counts[0];
  };
  expect(held(kind)).toBe(4);
  expect(held({ ...kind, turn: false })).toBe(3);
  expect(held({ ...kind, length: 1, width: 8 })).toBe(7);
  expect(held({ ...kind, length: 1, width: 1, count: 12 })).toBe(20);
  expect(held({ ...kind, length: 1, width: 1, count: 1 })).toBe(1);
});

/** The most that a sheet holds, by trying every cut at every whole size. */
function mostWorth(
  length: number,
  width: number,
  kinds: readonly { length: number; width: number; turn: boolean; worth: number }[],
): number {
  const best = Array.from({ length: length + 1 }, () => new Array<number>(width + 1).fill(0));
  for (let x = 1; x <= length; x++)
    for (let y = 1; y <= width; y++) {
      let most = 0;
      for (const k of kinds) {
        const fits = (k.length <= x && k.width <= y) || (k.turn && k.width <= x && k.length <= y);
        if (fits) most = Math.max(most, k.worth);
      }
      for (let c = 1; c < x; c++) most = Math.max(most, best[c]![y]! + best[x - c]![y]!);
      for (let c = 1; c < y; c++) most = Math.max(most, best[x]![c]! + best[x]![y - c]!);
      best[x]![y] = most;
    }
  return best[length]![width]!;
}

/** A tree's size, worked out anew from its pieces. */
function sizeOf(node: KeptNode, kinds: readonly { length: number; width: number }[]): [number, number] {
  if (node.side === LEAF) {
    const { length, width } = kinds[node.kind]!;
    return node.turned ? [width, length] : [length, width];
  }
  const parts = node.parts.map((part) => sizeOf(part, kinds));
  const sum = (k: 0 | 1) => parts.reduce((a, p) => a + p[k], 0);
  const most = (k: 0 | 1) => Math.max(...parts.map((p) => p[k]));
  expect([ALONG, ACROSS]).toContain(node.side);
  return node.side === ALONG ? [sum(0), most(1)] : [most(0), sum(1)];
}
