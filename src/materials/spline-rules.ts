import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const PRACTICE = 'common practice';
const MEMORY = 'from memory';

function length(id: string, mm: number, says: string, source = MEMORY): LengthRow {
  return { id, value: fromMm(mm), says, source };
}

/** What splines in the slopes of mitred corners are set out by. */
export const SPLINES = {
  depth: {
    id: 'spline.depth',
    of: [1, 2],
    says: 'a groove for a spline goes half as deep into a mitre as the board is thick, where the wood allows it',
    source: MEMORY,
  } satisfies RatioRow as RatioRow,
  inside: length(
    'spline.inside',
    3,
    'between a groove in a mitre and the inner face at least this much of the slope is left: nearer the outside the groove could be less deep',
  ),
  skin: length(
    'spline.skin',
    4,
    'between the floor of a groove in a mitre and the outer face at least this much wood is left',
  ),
  short: length(
    'spline.short',
    1.5,
    'a spline is this much narrower than both grooves are deep together, so that the slopes close before it comes to the floors',
    PRACTICE,
  ),
  lost: length('spline.lost', 3, 'a spline that is narrower by more than this holds too little of the wood'),
  loose: length(
    'spline.loose',
    0.4,
    'a spline that is thinner by more than this than its groove is wide is loose, and glue won’t fill that',
  ),
  thickest: {
    id: 'spline.thickest',
    of: [1, 3],
    says: 'a spline is at most a third as thick as the board',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  least: {
    id: 'spline.least',
    of: [1, 2],
    says: 'a spline runs along at least half of its corner',
    source: MEMORY,
  } satisfies RatioRow as RatioRow,
} as const;
