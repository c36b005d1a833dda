import fc from 'fast-check';

/** What a shop may ask of the cutting, and what its sheets may be like: every field of it, each now and then. */
export interface CuttingWays {
  readonly cutting: Readonly<Record<string, unknown>>;
  /** Of a sheet of its own in every lot of sheets: places that no part may touch. */
  readonly flaws: readonly Readonly<Record<string, string>>[];
  readonly value: number | undefined;
}

const mm = (least: number, most: number) => fc.integer({ min: least, max: most }).map((n) => `${n} mm`);

const cutting = fc.record(
  {
    objectives: fc.shuffledSubarray(['cost', 'leftover', 'settings', 'cuts', 'alike'], { minLength: 1 }),
    stages: fc.integer({ min: 3, max: 8 }),
    first: fc.constantFrom('rip', 'crosscut'),
    hold: mm(20, 80),
    carryAfter: fc.integer({ min: 1, max: 6 }),
    yard: fc.record({
      cuts: fc.integer({ min: 0, max: 3 }),
      over: mm(5, 15),
      vehicle: fc.record({ length: mm(1500, 3200), width: mm(900, 2000) }),
    }),
    wanted: fc.constant([{ length: '400 mm', width: '150 mm' }]),
  },
  { requiredKeys: [] },
);

const flaw = fc.record({ x: mm(0, 1500), y: mm(0, 900), length: mm(5, 120), width: mm(5, 120) });

export const cuttingWays: fc.Arbitrary<CuttingWays> = fc.record({
  cutting,
  flaws: fc.array(flaw, { maxLength: 3 }).map((list) => list.map((f, i) => ({ id: `flaw-${i}`, ...f }))),
  value: fc.option(fc.integer({ min: 0, max: 200 }), { nil: undefined }),
});

/** A document whose shop cuts that way. */
export function cutThatWay(document: unknown, { cutting, flaws, value }: CuttingWays): unknown {
  const job = document as {
    shop: { rack: { lots: { id: string; form: string; stock: { [field: string]: unknown }[] }[] } };
  };
  const lots = job.shop.rack.lots.map((lot) =>
    lot.form !== 'sheet'
      ? lot
      : {
          ...lot,
          stock: [
            ...lot.stock,
            {
              ...lot.stock[0],
              id: `${lot.id}-on-the-rack`,
              price: undefined,
              have: 1,
              flaws,
              ...(value === undefined ? {} : { value }),
            },
          ],
        },
  );
  return JSON.parse(
    JSON.stringify({ ...job, shop: { ...job.shop, cutting, rack: { ...job.shop.rack, lots } } }),
  );
}
