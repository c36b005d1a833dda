import type { Face } from './drawing.ts';
import { PLEX_WIDTHS } from './plex-widths.ts';

/** How wide text runs. Layout is done with this, so that it comes out the same wherever it is drawn. */
export interface TextMeasure {
  /** Millimetres that `words` take in type of `size` millimetres. */
  width(words: string, size: number, face: Face): number;
}

const MISSING = 600;

/** Measures in IBM Plex Sans by its table of advance widths; kerning, which only tightens, is left out. */
export const PLEX: TextMeasure = {
  width(words, size, face) {
    let units = 0;
    for (const c of words) units += advance(c.codePointAt(0)!, face) ?? MISSING;
    return (units * size) / 1000;
  },
};

/** Height of a capital over the em, from the font (698 of 1000 units). */
export const CAP = 0.698;

/** Whether the book's typeface has the character. */
function hasGlyph(character: string): boolean {
  return advance(character.codePointAt(0)!, 'regular') !== undefined;
}

/** Text with every character that the typeface lacks replaced by a question mark. */
export function printable(words: string): string {
  return [...words].map((c) => (hasGlyph(c) ? c : '?')).join('');
}

function advance(code: number, face: Face): number | undefined {
  for (const [first, widths] of PLEX_WIDTHS[face]) {
    const w = widths[code - first];
    if (w) return w;
  }
  return undefined;
}
