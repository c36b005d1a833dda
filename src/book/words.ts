import { type Mark, moved, rectangle, type Tone, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { printable, type TextMeasure } from './text-measure.ts';
import { paragraph, type Run } from './typeset.ts';

/** Height of running text. */
const TEXT_TYPE = 3.7;

/** The title of a part of the book. */
export function title(words: string): Block {
  return { marks: [text([0, 6.6], printable(words), 8, { face: 'semibold' })], height: 12, keep: true };
}

/** A heading within a part of the book. */
export function heading(words: string, width: number, type: TextMeasure): Block {
  const set = paragraph(words, width, 4.7, type, { face: 'semibold' });
  return { marks: set.marks, height: set.height + 0.6, before: 8, keep: true };
}

/** A paragraph. */
export function prose(
  runs: string | readonly Run[],
  width: number,
  type: TextMeasure,
  tone: Tone = 'ink',
): Block {
  const set = paragraph(runs, width, TEXT_TYPE, type, { tone });
  return { marks: set.marks, height: set.height, before: 2 };
}

/** A small remark. */
export function note(
  runs: string | readonly Run[],
  width: number,
  type: TextMeasure,
  tone: Tone = 'quiet',
): Block {
  const set = paragraph(runs, width, 3.1, type, { tone });
  return { marks: set.marks, height: set.height, before: 2 };
}

/** Cautions in a box of their own, with a bar at the left. */
export function cautionBox(
  sentences: readonly string[],
  width: number,
  type: TextMeasure,
  size = 3.3,
): Block {
  const pad = 2.2;
  const inset = 4.2;
  let y = pad;
  const marks: Mark[] = [];
  for (const s of sentences) {
    const set = paragraph(s, width - inset - pad, size, type, { tone: 'warn' });
    marks.push(...moved(set.marks, inset, y));
    y += set.height + 0.6;
  }
  const height = y - 0.6 - size * 0.25 + pad;
  return {
    marks: [
      rectangle(0, 0, width, height, { fill: 'warn-paper' }),
      rectangle(0, 0, 1.2, height, { fill: 'warn' }),
      ...marks,
    ],
    height,
    before: 2.5,
  };
}
