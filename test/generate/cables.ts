import fc from 'fast-check';

type Field = Readonly<Record<string, unknown>>;

/** A hole for a cable: through which panel, for what plug, and where, in mm or by the shop's own lengths. */
export interface CableWish {
  readonly through: 'back' | 'bottom' | 'top' | 'side' | 'shelf' | 'divider';
  readonly plug: string;
  /** A vent in its stead. */
  readonly vent: Field | undefined;
  readonly place: string;
  readonly far: string;
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
    vent: fc.option(
      fc.oneof(
        fc.record({ form: fc.constantFrom('slots', 'holes'), count: fc.integer({ min: 1, max: 8 }) }),
        fc.record({
          form: fc.constant('slots'),
          heat: fc.constantFrom('2 W', '4.5 W'),
          opening: text(40, 60),
        }),
        fc.record({
          form: fc.constant('holes'),
          heat: fc.constant('3 W'),
          rows: fc.integer({ min: 1, max: 3 }),
        }),
      ),
      { nil: undefined, freq: 3 },
    ),
    place: text(75, 95),
    far: text(125, 140),
  });
  return fc.oneof(
    { weight: 2, arbitrary: fc.constant([]) },
    { weight: 2, arbitrary: fc.array(wish, { minLength: 1, maxLength: 2 }) },
  );
}

/** The records of the holes whose panels are among the records of a design, mostly where there is room for them. */
export function cableRecords(wishes: readonly CableWish[], list: readonly Field[]): Field[] {
  const of = (kind: string) => list.find((r) => r.kind === kind);
  const shelved = new Set(list.filter((r) => r.kind === 'shelf').map((r) => r.parent));
  const leaves = list.filter((r) => r.kind === 'opening' && r.split === undefined);
  const empty = leaves.find((r) => !shelved.has(r.id));
  const taken = new Set<unknown>();
  return wishes.flatMap(({ through: asked, plug, vent, place, far }, i): Field[] => {
    // A vent is a block of openings: in the middle of what has nothing before it.
    const through = vent && asked !== 'shelf' ? 'back' : asked;
    const inCase = through === 'bottom' || through === 'side';
    const leaf = vent ? empty : (empty ?? leaves[0]);
    const panel = inCase ? of('case') : of(through);
    // Feet and kick boards stand where a hole through the bottom would come out.
    if (through === 'bottom' && of('base')?.form !== undefined) return [];
    // Under a top that lies on a lid, as a solid one does, it would come out against this.
    if (through === 'top' && (of('case')?.lid !== undefined || of('top')?.board === 'planks')) return [];
    if (panel === undefined || (through === 'back' && !leaf) || taken.has(through)) return [];
    taken.add(through);
    const from: Readonly<Record<CableWish['through'], Field>> = {
      back: { in: leaf?.id, ...(vent ? {} : { fromBelow: place }) },
      // Clear of a base under it.
      bottom: { fromLeft: far },
      top: { fromRight: place, fromBack: place },
      side: { panel: 'right-side', fromBelow: place },
      shelf: vent ? {} : { fromLeft: place },
      divider: {},
    };
    return [
      {
        id: `through.${i + 1}`,
        parent: panel.id,
        ...(vent ? { kind: 'vent', ...vent } : { kind: 'cable', plug }),
        ...(inCase ? { panel: 'bottom' } : {}),
        ...from[through],
      },
    ];
  });
}
