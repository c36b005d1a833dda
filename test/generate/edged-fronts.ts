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

/** Corners at which panels are let into one another: their ends are not edged. */
const LET_IN: readonly unknown[] = ['rabbet', 'dado', 'stopped-dado', 'tongue'];

/** The edging of a case: strips in front; or tape in front and on every end that shows. */
export function edgingOfCase(list: readonly Field[], ends: boolean): Field {
  const of = (kind: string) => list.find((r) => r.kind === kind);
  const [box, back] = [of('case')!, of('back')];
  const bare = back === undefined || back.fitting === 'applied';
  const sides = LET_IN.includes(box.joints)
    ? []
    : [
        ...['left', 'right'].filter((hand) =>
          ['under', 'over', `under-${hand}`, `over-${hand}`].some(
            (so) => so === box.bottom || so === box.lid,
          ),
        ),
        ...(!of('top') && box.lid !== 'over' && bare && !of('hanging') ? ['upper'] : []),
      ];
  const own = { id: 'lipping', kind: 'edging', parent: 'case' };
  return ends && sides.length > 0
    ? { ...own, strip: 'veneer', sides: ['front', ...sides] }
    : { ...own, strip: 'lip' };
}
