import fc from 'fast-check';
import { optional, withoutAbsent } from './optional.ts';

type Field = Readonly<Record<string, unknown>>;

/** How handles are made and placed, where anything opens by hand. */
export type HandleWish = Field;

/** Now and then handles. */
export function handleWishes(
  text: (from: number, to: number) => fc.Arbitrary<string>,
): fc.Arbitrary<HandleWish | undefined> {
  const wish = fc.record({
    length: optional(text(90, 130)),
    fromEdge: optional(text(50, 60)),
    fromBelow: optional(text(80, 100)),
    bought: fc.boolean(),
    lay: optional(fc.constantFrom('across', 'up')),
  });
  return fc.option(wish, { nil: undefined, freq: 3 });
}

/** Handles on the first doors or drawers among the records of a design. */
export function handleRecords(wish: HandleWish | undefined, list: readonly Field[]): Field[] {
  // Drawers behind doors are drawn without.
  const parent =
    list.find((r) => r.kind === 'door' || r.kind === 'sliding-doors') ??
    list.find((r) => r.kind === 'drawers');
  if (!wish || !parent || parent.fingerHole !== undefined) return [];
  // A row of holes goes through where a handle would lie.
  if (list.some((r) => r.kind === 'holes' && r.parent === parent.id)) return [];
  // Every other time bought ones.
  if (wish.bought === true && parent.kind !== 'sliding-doors')
    return [{ id: 'pull', kind: 'pull', parent: parent.id }];
  const own = { id: 'handle', kind: 'handle', parent: parent.id, strip: 'foot' };
  if (parent.kind === 'drawers') return [{ ...own, ...(wish.length ? { length: wish.length } : {}) }];
  // Lying across, a handle needs to be further in.
  const { lay, fromEdge, bought: _, ...more } = wish;
  return [
    {
      ...own,
      ...withoutAbsent(more),
      ...(lay === 'across' ? { lay, fromEdge: '90 mm' } : withoutAbsent({ fromEdge })),
    },
  ];
}
