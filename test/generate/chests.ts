import fc from 'fast-check';
import { optional, withoutAbsent } from './optional.ts';

type Field = Readonly<Record<string, unknown>>;

/** What a chest says of its fixed front. */
export type ChestWish = Field;

/** Now and then a case becomes a chest. */
export function chestWishes(
  text: (from: number, to: number) => fc.Arbitrary<string>,
): fc.Arbitrary<ChestWish | undefined> {
  return fc.option(
    fc
      .record({ gap: optional(text(0, 20)), board: optional(fc.constantFrom('board', 'other')) })
      .map(withoutAbsent),
    { nil: undefined, freq: 2 },
  );
}

/** Nobody reaches down further than this into a chest, mm. */
const DEEP = 900;

/** Makes a lid of the top of a low case without drawers, and closes it in front; its back is then a thick one. */
export function chestOf(wish: ChestWish | undefined, list: Field[], mmHigh: number): void {
  const at = (kind: string) => list.findIndex((r) => r.kind === kind);
  const [top, back] = [at('top'), at('back')];
  if (mmHigh > DEEP) return;
  if (!wish || top < 0 || back < 0 || at('opening') < 0 || at('drawers') >= 0 || list[top]!.fit !== undefined)
    return;
  const { overhangBack: _, edgedSides: __, moves: ___, buttons: ____, ...lid } = list[top]!;
  list[top] = { ...lid, hinged: true, hinge: 'lid-butt' };
  list[back] = { id: 'back', kind: 'back', parent: 'case', board: 'other', fitting: 'applied' };
  list.push({ id: 'front', kind: 'front', parent: 'case', ...wish });
}
