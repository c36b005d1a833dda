import { fromMm, type LengthRow, type RatioRow } from '../measure/index.ts';

const MEMORY = 'common practice; figure from memory';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: MEMORY };
}

/** Wooden buttons that hold a top of solid wood down and let it move: a block with a tongue in a mortise. */
export const BUTTONS = {
  lip: length(
    'button.lip',
    10,
    'so much wood stays above the mortise of a button, up to the end of its upright',
  ),
  tongueLeast: length('button.tongue', 6, 'the tongue of a button is at least this thick'),
  thickest: length('button.thickest', 32, 'a button is at most about this thick'),
  widthLeast: length('button.width', 20, 'a button is at least this wide'),
  deep: {
    id: 'button.deep',
    of: [2, 5],
    says: 'the mortise of a button is two fifths as deep as its upright is thick',
    source: MEMORY,
  } satisfies RatioRow as RatioRow,
  deepLeast: length('button.deep-least', 5, 'the mortise of a button is at least this deep'),
  floor: length('button.floor', 1, 'a button’s tongue ends this far before the floor of its mortise'),
  shoulder: length('button.shoulder', 2, 'a button’s shoulder stays this far off its upright'),
  play: length('button.play', 0.5, 'the tongue of a button is this much thinner than its mortise is wide'),
  beside: length(
    'button.beside',
    1,
    'a mortise leaves so much beside its button, on either side, beyond what the wood moves',
  ),
  body: length('button.body', 35, 'a button is about this long from its shoulder to its other end'),
  most: length('button.most', 300, 'buttons stand at most this far behind one another'),
  behindFirst: length(
    'button.behind-first',
    60,
    'no button stands nearer than this to the screw in front, which holds the top as well',
  ),
  fromBack: length('button.from-back', 60, 'the last button stands about this far before the back'),
  aside: length('button.aside', 6, 'a button that would meet something is moved along in steps of this'),
  /** What a tongue may lose or gain of its play. */
  playLeast: length('button.play-least', 0.1, 'a tongue with less play than this must be forced in'),
  playMost: length('button.play-most', 1.5, 'a tongue with more play than this lets the top rattle'),
} as const;
