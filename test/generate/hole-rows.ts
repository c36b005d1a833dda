import fc from 'fast-check';

type Field = Readonly<Record<string, unknown>>;

/** A row of holes: in what, how many, how wide and deep, and how far apart. */
export interface HoleWish {
  readonly into: 'sides' | 'shelf' | 'door' | 'top';
  readonly count: number;
  readonly diameter: string;
  readonly depth: string;
  readonly apart: string;
  readonly place: string;
  readonly spaced: 'apart' | 'about' | 'between' | 'from-one-side' | 'middle-from-one-side' | 'equal';
}

/** Now and then a row. */
export function holeWishes(
  text: (from: number, to: number) => fc.Arbitrary<string>,
): fc.Arbitrary<HoleWish | undefined> {
  const wish = fc.record({
    into: fc.constantFrom('sides', 'sides', 'shelf', 'door', 'door', 'top') as fc.Arbitrary<HoleWish['into']>,
    count: fc.integer({ min: 1, max: 4 }),
    diameter: text(3, 14),
    depth: text(4, 9),
    apart: text(24, 36),
    place: text(60, 75),
    spaced: fc.constantFrom(
      'apart',
      'about',
      'between',
      'from-one-side',
      'middle-from-one-side',
      'equal',
    ) as fc.Arbitrary<HoleWish['spaced']>,
  });
  return fc.option(wish, { nil: undefined, freq: 3 });
}

/** The record of the row, where what it goes into is among the records of a design. */
export function holeRecords(wish: HoleWish | undefined, list: readonly Field[]): Field[] {
  if (!wish) return [];
  const { into, count, diameter, depth, apart, place } = wish;
  const box = list.find((r) => r.kind === 'case');
  const parent = into === 'sides' ? box : list.find((r) => r.kind === into);
  if (!parent) return [];
  const own = { id: 'row', kind: 'holes', parent: parent.id, diameter, count };
  const [low, high] = into === 'sides' ? ['fromBelow', 'fromAbove'] : ['fromLeft', 'fromRight'];
  const about = list.find(
    (r) => (r.kind === 'opening' || r.kind === 'shelf' || r.kind === 'divider') && r.id !== parent.id,
  );
  const along: Readonly<Record<HoleWish['spaced'], Field>> = {
    apart: { apart },
    between: { [low!]: place, [high!]: place },
    // What stands in the case, and is no panel that the row itself goes through.
    about: { apart, ...(about ? { about: about.id } : {}) },
    'from-one-side': { [high!]: place, apart },
    'middle-from-one-side': { [high!]: `${place} + ${apart}`, apart, measured: 'middle' },
    equal: {},
  };
  const row = count > 1 ? along[wish.spaced] : {};
  switch (into) {
    case 'sides':
      // In the outer faces, where nothing stands.
      return [
        {
          ...own,
          panel: 'left-side',
          mirror: true,
          lay: 'up',
          face: 'left',
          depth,
          fromFront: place,
          ...row,
        },
      ];
    case 'door':
      return [{ ...own, face: 'front', depth, fromBelow: place, ...row }];
    case 'top':
      return [{ ...own, face: 'above', depth, fromFront: place, ...row }];
    case 'shelf':
      return [{ ...own, fromFront: place, ...row }];
  }
}
