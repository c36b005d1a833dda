import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string, source = PRACTICE): LengthRow {
  return { id, value: fromMm(mm), says, source };
}

/** What screws through a panel's face into another's edge are set out by. */
export const FACE_SCREWS = {
  penetration: {
    id: 'face-screws.penetration',
    of: [2, 3],
    says: 'a screw through a face stands with about two thirds of its length in the second part',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  underHead: length('face-screws.skin', 1, 'under a countersunk head at least this much of a panel is left'),
  usualHead: length('face-screws.head', 9, 'a screw’s head is about this wide until one is chosen'),
  plugDepth: {
    id: 'plug.depth',
    of: [1, 3],
    says: 'a plug sits about a third of the board deep',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  plugLeast: length('plug.least', 4, 'a plug that sits less deep than this works loose'),
  plugProud: length('plug.proud', 1, 'a plug stands proud by this much until it is trimmed flush'),
  driverRoom: length(
    'face-screws.driver',
    100,
    'a short drill needs about this much room behind a screw',
    'from memory',
  ),
  lowFace: length('face-screws.low', 1200, 'who stands doesn’t see undersides that are lower', 'from memory'),
  highFace: length(
    'face-screws.high',
    1700,
    'who stands doesn’t see upper faces that are higher',
    'from memory',
  ),
} as const;
