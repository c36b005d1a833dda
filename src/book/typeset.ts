import type { Traced } from '../measure/index.ts';
import { type Face, type Mark, type Tone, text } from './drawing.ts';
import { printable, type TextMeasure } from './text-measure.ts';

/** A stretch of text in one look. */
export interface Run {
  readonly text: string;
  readonly face?: Face;
  readonly tone?: Tone;
  /** Not broken over lines: a number and its unit. */
  readonly whole?: boolean;
  readonly trace?: Traced;
}

export interface Paragraph {
  readonly marks: readonly Mark[];
  readonly height: number;
  readonly lines: number;
}

/** From one baseline to the next, over the size of the type. */
const LEADING = 1.36;

/**
 * Sets runs of text in lines of at most `width`, from (0, 0) downward. A word that is wider than the column stands
 * alone and runs over.
 */
export function paragraph(
  runs: string | readonly Run[],
  width: number,
  size: number,
  type: TextMeasure,
  look: { readonly face?: Face; readonly tone?: Tone; readonly align?: 'start' | 'end' } = {},
): Paragraph {
  const words = wordsOf(typeof runs === 'string' ? [{ text: runs }] : runs);
  const face = look.face ?? 'regular';
  const wide = (w: readonly Run[]) => w.reduce((sum, r) => sum + type.width(r.text, size, r.face ?? face), 0);
  const space = type.width(' ', size, face);
  const lines: { readonly words: (readonly Run[])[]; width: number }[] = [];
  for (const word of words) {
    const last = lines[lines.length - 1];
    const its = wide(word);
    if (last && last.width + space + its <= width + 1e-6) {
      last.words.push(word);
      last.width += space + its;
    } else lines.push({ words: [word], width: its });
  }
  const step = size * LEADING;
  const marks = lines.flatMap((l, i) => {
    const y = size * 0.98 + i * step;
    let x = look.align === 'end' ? width - l.width : 0;
    return joined(l.words).map((r) => {
      const mark = text([x, y], r.text, size, {
        face: r.face ?? face,
        tone: r.tone ?? look.tone ?? 'ink',
        ...(r.trace === undefined ? {} : { trace: r.trace }),
      });
      x += type.width(r.text, size, r.face ?? face);
      return mark;
    });
  });
  return { marks, height: lines.length * step, lines: lines.length };
}

/** Splits runs at their spaces; runs that touch without a space stay one word. */
function wordsOf(runs: readonly Run[]): Run[][] {
  const words: Run[][] = [];
  let open = false;
  for (const run of runs) {
    const clean = printable(run.text);
    const pieces = run.whole ? [clean] : clean.split(' ');
    pieces.forEach((piece, i) => {
      if (i > 0) open = false;
      if (piece === '') return;
      const part = { ...run, text: piece };
      if (open) words[words.length - 1]!.push(part);
      else words.push([part]);
      open = true;
    });
  }
  return words;
}

/** The words of a line with their spaces, neighbours of the same look run together. */
function joined(words: readonly (readonly Run[])[]): Run[] {
  const out: Run[] = [];
  words.forEach((word, w) => {
    word.forEach((r, i) => {
      const lead = w > 0 && i === 0 ? ' ' : '';
      const last = out[out.length - 1];
      const same = last && last.face === r.face && last.tone === r.tone && last.trace === r.trace;
      if (last && same) out[out.length - 1] = { ...last, text: last.text + lead + r.text };
      else if (last && lead) {
        out[out.length - 1] = { ...last, text: `${last.text} ` };
        out.push(r);
      } else out.push(r);
    });
  });
  return out;
}
