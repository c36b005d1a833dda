import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

/** What sanding may take of the face veneer of a panel. */
export const VENEER = {
  mayGo: {
    id: 'veneer.may-go',
    of: [1, 4],
    says: 'all sanding together takes no more than a quarter of a face veneer',
    source: 'from memory',
  } satisfies RatioRow as RatioRow,
  byHand: {
    id: 'veneer.by-hand',
    value: fromMm(0.5),
    says: 'a face veneer thinner than this is sanded by hand',
    source: 'from memory',
  } satisfies LengthRow as LengthRow,
} as const;
