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
    several: fc.option(
      fc.record({
        how: fc.constantFrom('shares', 'apart', 'sides', 'about', 'measured'),
        apart: text(165, 190),
        side: text(85, 100),
      }),
      { nil: undefined, freq: 2 },
    ),
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
    return [{ id: 'pull', kind: 'pull', parent: parent.id, ...inRow(wish.several as Several, parent, list) }];
  const own = { id: 'handle', kind: 'handle', parent: parent.id, strip: 'foot' };
  const row = inRow(wish.several as Several, parent, list);
  if (parent.kind === 'drawers') return [{ ...own, ...row, ...(wish.length ? { length: wish.length } : {}) }];
  const { length, lay, fromEdge, fromBelow } = wish;
  // On a flap the edge that opens is the lower or the upper one.
  if (isFlap(parent))
    return [
      {
        ...own,
        ...row,
        ...withoutAbsent({
          length,
          [fromBelow && !row ? 'fromBelow' : 'fromEdge']: fromBelow && !row ? fromBelow : fromEdge,
        }),
      },
    ];
  // Lying across, a handle needs to be further in.
  return [
    {
      ...own,
      ...withoutAbsent({ length }),
      ...(row ?? withoutAbsent({ fromBelow })),
      ...(lay === 'across' ? { lay, fromEdge: '90 mm' } : withoutAbsent({ fromEdge })),
    },
  ];
}

type Several = { readonly how: string; readonly apart: string; readonly side: string } | undefined;

/** Two in a row: along the edge of a door that opens, or across. */
function inRow(several: Several, parent: Field, list: readonly Field[]): Field | undefined {
  if (!several) return undefined;
  const { how, apart, side } = several;
  const across = parent.kind === 'drawers' || isFlap(parent);
  const [low, high] = across ? ['fromLeft', 'fromRight'] : ['fromBelow', 'fromAbove'];
  // What a front closes is before the middle of it; a drawer stands in its own opening.
  const over = (parent.over as readonly string[] | undefined)?.[0] ?? parent.parent;
  const shelf = list.find((r) => r.kind === 'shelf' && r.parent === over);
  if (how === 'about') return { count: 2, apart, about: (across ? undefined : shelf?.id) ?? over };
  if (how === 'measured') return { count: 2, apart, measured: 'middle', [low!]: '180 mm' };
  if (how === 'apart') return { count: 2, apart };
  return { count: 2, ...(how === 'sides' ? { [low!]: side, [high!]: side } : {}) };
}

function isFlap({ kind, hand }: Field): boolean {
  return kind === 'door' && (hand === 'above' || hand === 'below');
}
