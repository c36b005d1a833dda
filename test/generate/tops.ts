import fc from 'fast-check';
import { optional } from './optional.ts';
import type { Field } from './typed-length.ts';

/** Tops of every kind, or none: lying on the case, edged or not, level with it, or between its sides. */
export function topWishes(
  text: (from: number, to: number) => fc.Arbitrary<string>,
): fc.Arbitrary<Field | undefined> {
  return optional(
    fc.record({
      overhangFront: optional(text(0, 40)),
      overhangSides: optional(text(0, 40)),
      overhangBack: optional(text(0, 15)),
      // Now and then of solid wood, or glued up from boards, which lies on a lid.
      board: fc.constantFrom(undefined, undefined, 'planks', 'planks', 'planks', 'planks'),
    }),
  ).chain(
    (top): fc.Arbitrary<Field | undefined> =>
      top === undefined
        ? fc.constant(undefined)
        : fc
            .oneof(
              { weight: 5, arbitrary: fc.boolean() },
              { weight: 1, arbitrary: fc.constantFrom('flush' as const, 'inset' as const) },
            )
            .chain(
              (edged): fc.Arbitrary<Field> =>
                edged === 'inset'
                  ? fc.record({ fit: fc.constant('inset'), board: fc.constantFrom(undefined, 'other') })
                  : edged === 'flush'
                    ? fc.record({
                        fit: fc.constant('flush'),
                        board: fc.constantFrom(undefined, undefined, 'other', 'other', 'planks'),
                        edging: optional(fc.constant('strip')),
                        edgedSides: fc.constant('front'),
                      })
                    : edged
                      ? // An edged top that stands out less than its strips are thick leaves its screws no board to find.
                        fc.record({
                          ...Object.fromEntries(Object.entries(top).map(([k, v]) => [k, fc.constant(v)])),
                          overhangSides: text(18, 40),
                          // Nothing is glued across the ends of solid wood.
                          board: fc.constant(undefined),
                          edging: fc.constant('strip'),
                          edgedSides: optional(fc.constantFrom('front-and-sides', 'all-round')),
                        })
                      : fc.constant(top),
            )
            .chain(
              (top): fc.Arbitrary<Field> =>
                // Its screws stand in wide holes or in slots, or buttons hold it.
                top.board === 'planks'
                  ? fc
                      .constantFrom(
                        { moves: 'slots' },
                        { moves: 'buttons', buttons: 'foot' },
                        { moves: 'buttons', buttons: 'foot' },
                        { moves: 'buttons', buttons: 'foot' },
                        {},
                      )
                      .map((held) => ({ ...top, ...held }))
                  : fc.constant(top),
            ),
  );
}

/** What comes close under a top leaves no room for its buttons, or for a driver under them: its screws stand in slots. */
export function roomForButtons(records: readonly Field[]): readonly Field[] {
  const close = (r: Field) =>
    ['drawers', 'trays', 'shelf'].includes(String(r.kind)) || r.split === 'down' || r.split === 'back';
  if (!records.some(close)) return records;
  return records.map((r) => {
    if (r.moves !== 'buttons') return r;
    const { buttons: _, ...top } = r;
    return { ...top, moves: 'slots' };
  });
}
