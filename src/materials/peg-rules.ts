import { fromInches, fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const PRACTICE = 'common practice';
const MEMORY = 'from memory';

function length(id: string, mm: number, says: string, source = PRACTICE): LengthRow {
  return { id, value: fromMm(mm), says, source };
}

function ratio(id: string, of: readonly [number, number], says: string): RatioRow {
  return { id, of, says, source: PRACTICE };
}

/** What dowels are chosen and set out by. */
export const DOWELS = {
  thinnest: ratio('dowel.thinnest', [1, 3], 'a dowel is at least a third as thick as the board'),
  thickest: ratio('dowel.thickest', [1, 2], 'a dowel is at most half as thick as the board'),
  extra: {
    id: 'dowel.extra',
    value: fromInches(1 / 16),
    says: 'a hole for a dowel is 1/16 in deeper than the dowel reaches, for glue',
    source: PRACTICE,
  } satisfies LengthRow as LengthRow,
  skin: length('dowel.skin', 4, 'behind a hole for a dowel at least this much of a panel is left', MEMORY),
  spacingLeast: length('dowel.spacing.least', 64, 'dowels of a joint stand at least this far apart', MEMORY),
  spacingMost: length('dowel.spacing.most', 150, 'dowels of a joint stand at most this far apart', MEMORY),
  end: length('dowel.end', 40, 'the first dowel stands about this far from the end of the joint', MEMORY),
  endLeast: length('dowel.end-least', 25, 'no dowel stands closer to the end of its joint', MEMORY),
  aside: length('dowel.aside', 12, 'a dowel that would meet another is moved along in steps of this', MEMORY),
} as const;

/** What biscuits are chosen and set out by. */
export const BISCUITS = {
  extra: length(
    'biscuit.extra',
    0.5,
    'a slot is this much deeper than half a biscuit’s width, for glue',
    MEMORY,
  ),
  skin: length(
    'biscuit.skin',
    3,
    'behind a slot for a biscuit at least this much of a panel is left',
    MEMORY,
  ),
  kerf: length('biscuit.kerf', 4, 'a slot for biscuits is this wide, until a joiner is on the list', MEMORY),
  cutter: length(
    'biscuit.cutter',
    100,
    'a joiner’s cutter is this wide across, until one is on the list',
    MEMORY,
  ),
  play: length('biscuit.play', 0.3, 'a dry biscuit is at most this much thinner than its slot', MEMORY),
  inMitre: length(
    'biscuit.in-mitre',
    3,
    'between a slot in a mitre and the inner face at least this much wood is left: nearer the outside the slot would come through',
    MEMORY,
  ),
  overSlope: {
    id: 'biscuit.over-slope',
    of: [141421, 100000],
    says: 'the slope of a mitre is as long as the board is thick times the square root of two',
    source: 'geometry',
  } satisfies RatioRow as RatioRow,
  downSlope: {
    id: 'biscuit.down-slope',
    of: [100000, 141421],
    says: 'so far down the slope of a mitre is this far square to the face',
    source: 'geometry',
  } satisfies RatioRow as RatioRow,
  edge: ratio('biscuit.edge', [1, 3], 'a slot takes at most a third of an edge’s thickness'),
  spacingLeast: {
    id: 'biscuit.spacing.least',
    value: fromInches(6),
    says: 'biscuits stand at least 6 in apart',
    source: PRACTICE,
  } satisfies LengthRow as LengthRow,
  spacingMost: {
    id: 'biscuit.spacing.most',
    value: fromInches(8),
    says: 'biscuits stand at most 8 in apart',
    source: PRACTICE,
  } satisfies LengthRow as LengthRow,
  end: {
    id: 'biscuit.end',
    value: fromInches(2),
    says: 'the middle of a biscuit is at least 2 in from the end of its joint',
    source: PRACTICE,
  } satisfies LengthRow as LengthRow,
  aside: length(
    'biscuit.aside',
    24,
    'a biscuit that would meet a hole is moved along in steps of this',
    MEMORY,
  ),
} as const;
