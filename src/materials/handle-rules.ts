import { fromMm, type LengthRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string, source = PRACTICE): LengthRow {
  return { id, value: fromMm(mm), says, source };
}

/** The lengths by which handles and pulls are placed. Each stands in a trace as a leaf. */
export const HANDLES = {
  long: length('handle.long', 120, 'a handle for a whole hand is 100 to 130 mm long'),
  fromEdge: length('handle.edge', 40, 'a handle’s middle is 30 to 50 mm from the edge of a door that opens'),
  beside: length('handle.beside', 5, 'a handle stays this far inside the edges of its door'),
  between: length(
    'handle.between',
    20,
    'between two handles of one front there is room for fingers',
    'our own choice',
  ),
  apart: length('handle.apart', 30, 'two screws nearer to one another than this let a handle turn'),
  aside: length('handle.aside', 5, 'screws of a handle that have no room are moved inward in steps of this'),
  wider: length(
    'pull.wider',
    2,
    'behind a drawer’s front the hole for its pull is this much wider, so that the front can be set',
  ),
  threadEnd: length('pull.thread-end', 0.5, 'a screw stays this far from the end of its thread'),
  passes: length('handle.passes', 3, 'a sliding door stays this far from a handle that it must not pass'),
} as const;
