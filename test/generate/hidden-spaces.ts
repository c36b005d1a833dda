import fc from 'fast-check';

type Field = Readonly<Record<string, unknown>>;

/** Which opening is to hide a space behind a panel, and how deep that is. */
export interface HiddenWish {
  readonly which: number;
  readonly deep: string;
}

/** Now and then one. */
export function hiddenWishes(
  text: (from: number, to: number) => fc.Arbitrary<string>,
): fc.Arbitrary<HiddenWish | undefined> {
  return fc.oneof(
    { weight: 7, arbitrary: fc.constant(undefined) },
    { weight: 1, arbitrary: fc.record({ which: fc.nat(), deep: text(40, 90) }) },
  );
}

/** The records with one of the openings that aren’t split parted from front to back; what was in it stands before the panel. */
export function withHiddenSpace(list: readonly Field[], wish: HiddenWish | undefined): readonly Field[] {
  const open = list.filter((r) => r.kind === 'opening' && r.split === undefined);
  const chosen = wish && open[wish.which % open.length];
  if (!wish || !chosen) return list;
  const [front, behind] = [`${chosen.id}.front`, `${chosen.id}.hidden`];
  return list.flatMap((r) => {
    if (r === chosen)
      return [
        { ...r, split: 'back' },
        { id: front, kind: 'opening', parent: chosen.id },
        { id: behind, kind: 'opening', parent: chosen.id, size: wish.deep },
      ];
    // A back of the bay is behind all of it.
    return r.parent === chosen.id && r.kind !== 'back' ? [{ ...r, parent: front }] : [r];
  });
}
