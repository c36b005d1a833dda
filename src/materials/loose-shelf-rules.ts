import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: PRACTICE };
}

/** The lengths that loose shelves and the rows of holes for their pins are set out by. Each stands in a trace as a leaf. */
export const LOOSE_SHELVES = {
  pitch: length('pins.pitch', 32, 'holes for shelf pins stand 32 mm apart'),
  pitchInches: length('pins.pitch-inches', 31.75, 'in inches, holes for shelf pins stand 1 1/4 in apart'),
  row: length('pins.row', 37, 'a row of holes for shelf pins stands 37 mm from the edge'),
  margin: length('pins.margin', 100, 'the lowest and the highest hole stay about this far from the ends'),
  marginShare: {
    id: 'pins.margin-share',
    of: [1, 4],
    says: 'in a low opening the outermost holes stay a quarter of its height from the ends',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  rowsApart: length('pins.rows-apart', 30, 'two rows of holes stand at least this far apart'),
  aside: length('pins.aside', 8, 'rows of holes that would meet others are moved inward in steps of this'),
  skin: length('pins.skin', 2, 'at least this much wood stays behind a hole for a pin'),
  clearance: length(
    'loose-shelf.clearance',
    1.5,
    'a loose shelf is about 3 mm (1/8 in) shorter than its opening',
  ),
  behind: length('loose-shelf.behind', 1, 'a loose shelf stays this far from what is behind it'),
  bearing: length(
    'loose-shelf.bearing',
    4,
    'a loose shelf lies on its pins by at least this much, wherever it is pushed',
  ),
  between: length('loose-shelf.between', 25, 'between two loose shelves a hand can reach'),
} as const;
