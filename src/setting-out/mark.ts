/**
 * Families of parts, each with its letter. The letter is fixed by what the part is, so adding a shelf never
 * renames a side; I and O are left out because they read as figures, L and S because sheets
 * and strips of the rack have them.
 */
const LETTERS = {
  side: 'A',
  bottom: 'B',
  top: 'C',
  divider: 'D',
  shelf: 'E',
  back: 'F',
  base: 'G',
  'top edging': 'H',
  edging: 'J',
  door: 'K',
  'loose shelf': 'M',
  'drawer front': 'N',
  'drawer side': 'P',
  'drawer end': 'Q',
  'drawer bottom': 'R',
  rail: 'T',
  // Buttons as well: both are small things that the shop makes itself.
  handle: 'U',
  'panel board': 'V',
  'wall strip': 'X',
  'cleat blank': 'Z',
  'joined blank': 'Z',
  // Splines are seen as little as the blanks of cleats, and are counted with them.
  spline: 'Z',
  filler: 'W',
  'drawer runner': 'Y',
} as const;

export type Family = keyof typeof LETTERS;

/** The letter of a family: the same for families that are counted together. */
export type Letter = (typeof LETTERS)[Family];

/** The letter of a family's marks. */
export function letterOf(family: Family): Letter {
  return LETTERS[family];
}

/** The mark of the n-th part with a letter, counted from 1: `A2`. */
export function markFor(letter: Letter, n: number): string {
  return `${letter}${n}`;
}
