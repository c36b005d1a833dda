import type { Face } from './drawing.ts';
import { PLEX_WIDTHS } from './plex-widths.ts';

/** How wide text runs. Layout is done with this, so that it comes out the same wherever it is drawn. */
export interface TextMeasure {
  /** Millimetres that `words` take in type of `size` millimetres. */
  width(words: string, size: number, face: Face): number;
}

const MISSING = 600;

/** Measures in IBM Plex Sans by its table of advance widths; the book is set without kerning. */
export const PLEX: TextMeasure = {
  width(words, size, face) {
    const widths = ADVANCES[face];
    let units = 0;
    for (const c of words) units += widths.get(c) ?? MISSING;
    return (units * size) / 1000;
  },
};

/** Height of a capital over the em, from the font (698 of 1000 units). */
export const CAP = 0.698;

const ADVANCES: Readonly<Record<Face, ReadonlyMap<string, number>>> = {
  regular: advances('regular'),
  semibold: advances('semibold'),
};

/** Text with every character that the typeface lacks replaced by a question mark. */
export function printable(words: string): string {
  let out = '';
  for (const c of words) out += ADVANCES.regular.has(c) ? c : '?';
  return out;
}

/** Advance widths by character; characters that the typeface lacks are left out. */
function advances(face: Face): Map<string, number> {
  const found = new Map<string, number>();
  for (const [first, widths] of PLEX_WIDTHS[face])
    widths.forEach((w, i) => {
      if (w > 0) found.set(String.fromCodePoint(first + i), w);
    });
  return found;
}
