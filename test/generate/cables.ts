import fc from 'fast-check';

type Field = Readonly<Record<string, unknown>>;

/** A hole for a cable: through which panel, for what plug, and where, in mm or by the shop's own lengths. */
export interface CableWish {
  readonly through: 'back' | 'bottom' | 'top' | 'side' | 'shelf' | 'divider';
  readonly plug: string;
  readonly inOpening: boolean;
  readonly place: Field;
}

/** Now and then a hole or two, mostly where there is room for it. */
export function cableWishes(
  text: (from: number, to: number) => fc.Arbitrary<string>,
): fc.Arbitrary<readonly CableWish[]> {
  const wish = fc.record({
    through: fc.constantFrom(
      'back' as const,
      'back' as const,
      'bottom' as const,
      'top' as const,
      'side' as const,
      'shelf' as const,
      'divider' as const,
    ),
    plug: fc.oneof(fc.constantFrom('europlug', 'usb-a', 'aerial-uhf', 'jack'), text(8, 45)),
    inOpening: fc.boolean(),
    place: fc.oneof(
      fc.record({ fromBelow: text(45, 70) }),
      fc.record({ fromLeft: text(60, 90), fromAbove: text(45, 80) }),
      fc.constant({}),
    ),
  });
  return fc.oneof(
    { weight: 4, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.array(wish, { minLength: 1, maxLength: 2 }) },
  );
}

/** The records of the holes whose panels are among the records of a design. */
export function cableRecords(wishes: readonly CableWish[], list: readonly Field[]): Field[] {
  const of = (kind: string) => list.find((r) => r.kind === kind)?.id;
  const leaf = list.find((r) => r.kind === 'opening' && r.split === undefined);
  return wishes.flatMap(({ through, plug, inOpening, place }, i): Field[] => {
    const inCase = through === 'bottom' || through === 'side';
    const parent = inCase ? 'case' : of(through);
    if (parent === undefined) return [];
    // Along the thickness of its panel a place says nothing.
    const upright = through === 'side' || through === 'back' || through === 'divider';
    const kept = Object.entries(place).filter(([field]) =>
      field === 'fromLeft' ? through !== 'side' && through !== 'divider' : upright,
    );
    return [
      {
        id: `cable.${i + 1}`,
        kind: 'cable',
        parent,
        plug,
        ...(inCase ? { panel: through === 'side' ? 'right-side' : 'bottom' } : {}),
        ...(inOpening && leaf && through === 'back' ? { in: leaf.id } : {}),
        ...Object.fromEntries(kept),
      },
    ];
  });
}
