import fc from 'fast-check';
import { optional, withoutAbsent } from './optional.ts';
import { type Field, length, type Units } from './typed-length.ts';

/** Thin dividers for trays, in an opening that takes so many. */
export function trayDividers(
  units: Units,
  most: number,
): fc.Arbitrary<{ readonly fill: 'trays'; readonly trays: Field }> {
  return fc
    .record({
      board: fc.constantFrom('thin', 'thin', 'other'),
      count: optional(fc.integer({ min: 1, max: Math.max(1, most) })),
      setback: optional(length(units, 0, 40).map((t) => t.text)),
    })
    .map((trays) => ({ fill: 'trays', trays: withoutAbsent(trays) }));
}

/**
 * Takes out dividers for trays right under a top that is laid on last, which has no dados for them.
 */
export function withoutTraysUnderTop(list: Field[]): void {
  const top = list.find((r) => r.kind === 'top');
  const reachesTop = (id: unknown): boolean => {
    const opening = list.find((r) => r.kind === 'opening' && r.id === id);
    const parent = opening && list.find((r) => r.id === opening.parent);
    if (!opening || parent?.kind === 'case') return true;
    const highest = list.filter((r) => r.kind === 'opening' && r.parent === parent!.id).at(-1);
    return (parent!.split !== 'down' || highest === opening) && reachesTop(parent!.id);
  };
  for (const trays of list.filter((r) => r.kind === 'trays'))
    if (top && top.fit !== 'inset' && reachesTop(trays.parent)) list.splice(list.indexOf(trays), 1);
}
