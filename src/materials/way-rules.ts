import { fromMm, type LengthRow } from '../measure/index.ts';

/** What is carried through a doorway is reckoned with. It stands in a trace as a leaf. */
export const WAY = {
  hands: {
    id: 'way.hands',
    value: fromMm(15),
    says: 'left on either side of what is carried, and above it, for hands and pads',
    source: 'from memory',
  } satisfies LengthRow as LengthRow,
} as const;
