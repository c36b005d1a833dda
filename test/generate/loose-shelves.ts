import fc from 'fast-check';
import { optional, withoutAbsent } from './optional.ts';
import { type Field, length, type Units } from './typed-length.ts';

/** Loose shelves on pins, in an opening that takes so many. */
export function looseShelves(
  units: Units,
  most: number,
): fc.Arbitrary<{ readonly fill: 'pins'; readonly pins: Field }> {
  const text = (from: number, to: number) => length(units, from, to).map((t) => t.text);
  return fc
    .record({
      count: optional(fc.integer({ min: 1, max: most })),
      pitch: optional(fc.oneof(text(20, 50), fc.constant('gap * 8'))),
      front: optional(text(30, 60)),
      back: optional(text(30, 60)),
      below: optional(text(30, 120)),
      above: optional(text(30, 120)),
      clearance: optional(text(0.5, 2)),
      setback: optional(text(0, 20)),
      board: optional(fc.constantFrom('board', 'other')),
      load: optional(fc.constantFrom('10 kg', '35 lb')),
      edged: fc.boolean(),
    })
    .map((pins) => ({ fill: 'pins', pins: withoutAbsent(pins) }));
}
