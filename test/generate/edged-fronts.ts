import fc from 'fast-check';
import { withoutAbsent } from './optional.ts';
import type { Field } from './typed-length.ts';

/** What edges a door or a drawer's front, and on which sides. */
export interface Edged {
  readonly strip: 'veneer' | 'lip';
  readonly sides?: readonly string[] | undefined;
}

/** Now and then, tape for the most part: thick strips leave cups no board. */
export const edgedFront: fc.Arbitrary<Edged | undefined> = fc.oneof(
  { weight: 2, arbitrary: fc.constant(undefined) },
  {
    weight: 1,
    arbitrary: fc.record({
      strip: fc.oneof(
        { weight: 7, arbitrary: fc.constant('veneer' as const) },
        { weight: 1, arbitrary: fc.constant('lip' as const) },
      ),
      sides: fc.constantFrom(undefined, undefined, ['upper', 'lower'], ['left', 'right', 'upper'], ['right']),
    }),
  },
);

/** The record of an edging. */
export function edgingRecord(parent: string, edged: Edged): Field {
  return { id: `${parent}.edge`, kind: 'edging', parent, ...withoutAbsent({ ...edged }) };
}
