// Writes src/book/plex-widths.ts: how far each character of the book's typeface advances, so that the core can lay
// out text without the font file. Run it when the font changes: node scripts/font-widths.mjs
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
const fontkit = require('fontkit');
const FILES = {
  regular: '@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf',
  semibold: '@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf',
};
const RANGES = [
  [0x20, 0x7e],
  [0xa0, 0x17f],
  [0x2010, 0x2044],
  [0x2070, 0x2089],
  [0x20ac, 0x20ac],
  [0x2150, 0x215e],
  [0x2190, 0x2193],
  [0x2212, 0x2265],
];

const out = [
  '// Written by scripts/font-widths.mjs from the IBM Plex Sans fonts. Do not edit.',
  '',
  "import type { Face } from './drawing.ts';",
  '',
  '/** Advance widths in thousandths of the em, by run of characters: the first code point, then the widths. */',
  'export const PLEX_WIDTHS: Readonly<Record<Face, readonly (readonly [number, readonly number[]])[]>> = {',
];
for (const [face, file] of Object.entries(FILES)) {
  const font = fontkit.create(readFileSync(require.resolve(file)));
  if (font.unitsPerEm !== 1000) throw new Error(`${file}: expected 1000 units to the em`);
  out.push(`  ${face}: [`);
  for (const [first, last] of RANGES) {
    const widths = [];
    for (let c = first; c <= last; c++)
      widths.push(font.hasGlyphForCodePoint(c) ? font.glyphForCodePoint(c).advanceWidth : 0);
    out.push(`    // biome-ignore format: a table`, `    [0x${first.toString(16)}, [${widths.join(', ')}]],`);
  }
  out.push('  ],');
}
out.push('};', '');
writeFileSync(new URL('../src/book/plex-widths.ts', import.meta.url), out.join('\n'));
