import { fromInches, fromMm, type LengthRow, type RatioRow, type Ticks } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

const PRACTICE = 'common practice';

function length(id: string, value: Ticks, says: string): LengthRow {
  return { id, value, says, source: PRACTICE };
}

/** What doors that slide in grooves are set out by. Each stands in a trace as a leaf. */
export const SLIDING = {
  setIn: length('sliding.set-in', fromMm(8), 'at least this much wood stands in front of the first groove'),
  runs: length(
    'sliding.runs',
    fromMm(1),
    'a groove is 1/32 to 1/16 in (0.8 to 1.6 mm) wider than what runs in it',
  ),
  passing: length(
    'sliding.passing',
    fromMm(3),
    'doors pass one another with 1/16 to 1/8 in (1.6 to 3 mm) of air',
  ),
  web: length(
    'sliding.web',
    fromMm(4),
    'this much wood is left between two grooves, so that it doesn’t break out',
  ),
  handlePasses: length(
    'sliding.handle-passes',
    fromMm(1),
    'a door passes what stands out of the one behind it with about this much air',
  ),
  overlap: length('sliding.overlap', fromMm(25), 'doors lap by 1 to 1 1/2 in (25 to 38 mm) where they pass'),
  upper: length('sliding.upper', fromMm(10), 'the upper groove is 3/8 to 1/2 in (9.5 to 12.7 mm) deep'),
  upperShare: {
    id: 'sliding.upper-share',
    of: [1, 2],
    says: 'a groove in plywood is never deeper than half the thickness',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  lower: length(
    'sliding.lower',
    fromMm(4),
    'the lower groove is about 3/16 in (4.8 mm) deep, less in thin boards',
  ),
  engagement: length(
    'sliding.engagement',
    fromMm(3),
    'a door that is down still stands 1/8 to 3/16 in (3 to 4.8 mm) in its upper groove',
  ),
  leastEngagement: length(
    'sliding.engagement.least',
    fromMm(1.5),
    'with less than this left in the upper groove a door may drop out',
  ),
  lift: length(
    'sliding.lift',
    fromInches(1 / 16),
    'a door that is lifted in passes over the edge of the lower groove with 1/16 in to spare',
  ),
  behind: length(
    'sliding.behind',
    fromMm(3),
    'what is behind sliding doors stays this far from the last of them',
  ),
  shoulder: length(
    'sliding.shoulder',
    fromMm(1.5),
    'the shoulder of a door that runs on a tongue stays this far from the wood',
  ),
  fingerEdge: length('sliding.finger.edge', fromMm(20), 'a finger hole keeps this much wood beside it'),
  fingerDepth: length('sliding.finger.depth', fromMm(8), 'a finger hole is about this deep'),
  fingerLeast: length('sliding.finger.least', fromMm(4), 'shallower than this a finger finds no hold'),
  fingerFloor: length('sliding.finger.floor', fromMm(3), 'under a finger hole this much wood is left'),
  intoDado: {
    id: 'sliding.into-dado',
    of: [1, 4],
    says: 'where an upright stands in a dado, grooves run on into it by about a quarter of its thickness',
    source: PRACTICE,
  } satisfies RatioRow as RatioRow,
  floor: length(
    'sliding.floor',
    fromMm(5),
    'this much wood is left between grooves on the two faces of a panel',
  ),
} as const;

/** A limit with its rule. */
interface SlidingLimit extends Sourced {
  readonly value: number;
  readonly says: string;
}

function limit(value: number, says: string, source = PRACTICE): SlidingLimit {
  return { value, says, source, confirmed: false };
}

/** Beyond these a sliding door runs or opens badly: shares of width to height and of what stands open to a door, kg, mm. */
export const SLIDING_LIMITS = {
  widthShare: limit(0.5, 'a door that slides is at least half as wide as it is high'),
  heaviest: limit(10, 'doors that slide on wood weigh up to about 10 kg', 'common practice, from memory'),
  leastOpen: limit(
    0.5,
    'pushed aside, doors leave at least half the width of one of them open',
    'our own choice',
  ),
  thinnest: limit(4.5, 'a door in grooves is about 5 mm thick or more', 'common practice, from memory'),
} as const;
