import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: PRACTICE };
}

/** The lengths and proportions that doors and their hinges are set out by. Each stands in a trace as a leaf. */
export const DOORS = {
  insetGap: length('door.gap.inset', 2, 'the gap round an inset door is 1.5 to 2.5 mm'),
  overlayGap: length('door.gap.overlay', 3, 'the gap between overlay doors is about 3 mm'),
  standOff: length('door.stand-off', 1.5, 'an overlay door closes on bumpers of about this thickness'),
  floorClear: length('door.floor', 6, 'a door that reaches down to the floor stays this far above it'),
  behindClear: length('door.behind', 3, 'what is behind an inset door stays this far from its back'),

  hingeEnd: length('hinge.end', 100, 'the outer hinges of a door stand about this far from its ends'),
  hingeEndShare: {
    id: 'hinge.end-share',
    of: [1, 4],
    says: 'the outer hinges of a low door stand a quarter of its height from its ends',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  hingeClear: length('hinge.clear', 45, 'the middle of a hinge stays this far from a shelf, for its plate'),
  hingeAside: length('hinge.aside', 10, 'a hinge that has no room is moved along the door in steps of this'),
  cupRim: length(
    'hinge.rim',
    1,
    'at least this much of the board stays between a hinge’s cup and its edging',
  ),
  cupSkin: length('hinge.skin', 2, 'at least this much wood stays in front of a hinge’s cup'),
} as const;

/** So many hinges are enough up to a height and a mass of the door. */
export interface HingeCount extends Sourced {
  readonly hinges: number;
  readonly heightMm: number;
  readonly kg: number;
}

const COUNTS: readonly (readonly [hinges: number, heightMm: number, kg: number])[] = [
  [2, 900, 6],
  [3, 1600, 12],
  [4, 2000, 17],
  [5, 2400, 22],
];

/** How many hinges a door of usual width hangs on. */
export const HINGE_COUNTS: readonly HingeCount[] = COUNTS.map(([hinges, heightMm, kg]) => ({
  hinges,
  heightMm,
  kg,
  source: 'common practice, from memory; the hinge maker’s own table comes first',
  confirmed: false,
}));

/** The hinges for a door: by its height and its mass, whichever asks for more; undefined beyond the table. */
export function hingeCount(heightMm: number, kg: number): HingeCount | undefined {
  return HINGE_COUNTS.find((row) => heightMm <= row.heightMm && kg <= row.kg);
}
