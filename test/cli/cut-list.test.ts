import { describe, expect, test } from 'vitest';
import { called, DEMO, ROOT } from './called.ts';

const LIST = `${ROOT}examples/garage-shelves.csv`;

describe('cut --list', () => {
  test('cuts every piece of a list, and says card by card how', async () => {
    const { code, out } = await called('cut', '--list', LIST, '--shop', DEMO, '--json');
    expect(code).toBe(0);
    const plan = JSON.parse(out);
    const placed: string[] = [];
    JSON.parse(out, (key, value) => {
      if (key === 'piece') placed.push(value);
      return value;
    });
    expect(plan.parts.map((p: { count: number }) => p.count)).toEqual([4, 5, 2, 3, 5]);
    expect(new Set(placed).size).toBe(19);
    expect(plan.breakdown.lots.every((l: { verified: boolean }) => l.verified)).toBe(true);
    type Cut = { readonly yields?: readonly ({ readonly name: string } | null)[] };
    const named = plan.steps.operations.flatMap(({ does }: { does: Cut & { cuts?: readonly Cut[] } }) =>
      [does, ...(does.cuts ?? [])].flatMap(({ yields = [] }) => yields.flatMap((y) => (y ? [y.name] : []))),
    );
    expect(placed.filter((mark) => !named.includes(mark))).toEqual([]);
  });

  test('says of every lot how far its plan is proven', async () => {
    const { out } = await called('cut', '--list', LIST, '--shop', DEMO);
    expect(out).toMatch(/^Birch plywood 18 mm: 2 used/m);
    expect(out).toMatch(/^Birch plywood 6.5 mm: 1 used/m);
  });

  test('wants a shop, and one thing to cut', async () => {
    expect((await called('cut', '--list', LIST)).err).toContain('--shop');
    expect((await called('cut', DEMO, '--list', LIST)).code).toBe(2);
  });

  test('tells what can’t be read in the shop and in the list', async () => {
    expect((await called('cut', '--list', LIST, '--shop', LIST)).code).toBe(2);
    const wrong = await called('cut', '--list', DEMO, '--shop', DEMO);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('row');
  });
});
