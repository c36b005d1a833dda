import fc from 'fast-check';

type Field = Readonly<Record<string, unknown>>;

/** Sliding doors before all of the inside, or before two neighbours of its split. */
export interface SlidingWish {
  readonly before: 'all' | 'neighbours';
  readonly closes: 'all' | 'each';
  readonly door: Field;
}

/** Sliding doors in many ways: thin ones that run as they are, thick ones on tongues, on two tracks or three. */
export const slidingWish: fc.Arbitrary<SlidingWish> = fc.record({
  before: fc.constantFrom('all' as const, 'neighbours' as const),
  closes: fc.constantFrom('all' as const, 'each' as const),
  door: fc
    .record({
      board: fc.constantFrom('thin', 'thin', 'board'),
      count: fc.option(fc.integer({ min: 2, max: 4 }), { nil: undefined }),
      tracks: fc.option(fc.constantFrom(2, 3), { nil: undefined }),
      fingerHole: fc.option(fc.constantFrom('25 mm', '1 1/4"'), { nil: undefined }),
      overlap: fc.option(fc.constantFrom('30 mm', '1"', 'gap * 10'), { nil: undefined }),
    })
    .map((d) => ({ ...d, ...(d.board === 'board' ? { tongue: '8 mm' } : {}) })),
});

/** The record of a wish, before bays that stand side by side or one above the other. */
export function slidingRecord(wish: SlidingWish, bays: readonly string[], across: boolean): Field {
  const each = wish.closes === 'each' && across && bays.length > 1;
  const over =
    each || (wish.before === 'neighbours' && bays.length > 1) ? bays.slice(0, each ? 4 : 2) : ['inside'];
  const fields = Object.fromEntries(Object.entries(wish.door).filter(([, v]) => v !== undefined));
  return {
    id: 'slides',
    kind: 'sliding-doors',
    parent: 'case',
    over,
    ...fields,
    ...(each ? { closes: 'each', count: Math.min(Number(fields.count ?? 2), over.length) } : {}),
  };
}
