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
  handle: 'U',
  'panel board': 'V',
  'wall strip': 'X',
  'cleat blank': 'Z',
  filler: 'W',
  'drawer runner': 'Y',
} as const;

export type Family = keyof typeof LETTERS;

/** The mark of the n-th part of a family, counted from 1: `A2`. */
export function markFor(family: Family, n: number): string {
  return `${LETTERS[family]}${n}`;
}
