import { type Ledger, type Ticks, type Traced, toMm } from '../measure/index.ts';
import { dimension, FIGURE } from './dimension.ts';
import { type Drawing, line, type Mark, moved, rectangle, text } from './drawing.ts';
import type { Lengths } from './lengths.ts';
import type { TextMeasure } from './text-measure.ts';

/** One straight cut through a workpiece. */
export interface CutToDraw {
  readonly length: Ticks;
  readonly width: Ticks;
  readonly across: 'length' | 'width';
  readonly at: Traced;
  /** The name of what lies before the line, and behind it; absent is waste. */
  readonly yields: readonly [string | undefined, string | undefined];
}

/** A workpiece with the line to saw, measured from its start or near edge. Waste is shaded. */
export function cutDrawing(
  cut: CutToDraw,
  ledger: Ledger,
  lengths: Lengths,
  room: { readonly width: number; readonly height: number },
  type: TextMeasure,
): Drawing {
  const scale = Math.min(room.width / toMm(cut.length), room.height / toMm(cut.width));
  const width = Math.max(toMm(cut.length) * scale, 14);
  const height = Math.max(toMm(cut.width) * scale, 7);
  const part = ledger.ticks(cut.at) / (cut.across === 'length' ? cut.length : cut.width);
  const [before, behind] = cut.yields;
  const fill = (name: string | undefined) => (name === undefined ? 'shade' : 'wood-top');
  const marks: Mark[] = [];
  // A name lies along where there is room for it, stands up where there isn't, and is left out where it can't.
  const name = (words: string | undefined, x: number, y: number, along: number, up: number) => {
    if (words === undefined) return;
    const size = 3.4;
    const needs = type.width(words, size, 'semibold') + 1;
    const style = { face: 'semibold', anchor: 'middle' } as const;
    if (along > needs && up > 4.2) marks.push(text([x, y + 1.2], words, size, style));
    else if (up > needs && along > 4.2)
      marks.push(text([x + 1.2, y], words, size, { ...style, upright: true }));
  };
  const span = { words: lengths.bare(cut.at), trace: cut.at };
  const wide = type.width(span.words, FIGURE, 'regular') + 1.2;
  if (cut.across === 'length') {
    const x = width * part;
    marks.push(
      rectangle(0, 0, x, height, { fill: fill(before) }),
      rectangle(x, 0, width - x, height, { fill: fill(behind) }),
    );
    name(before, x / 2, height / 2, x, height);
    name(behind, (x + width) / 2, height / 2, width - x, height);
    marks.push(
      rectangle(0, 0, width, height, { pen: 'thin' }),
      line([x, -1.5], [x, height + 1.5], 'cut', 'ink'),
      dimension({ ...span, from: 0, to: x }, 'x', height + 5.6, {
        foot: height + 0.8,
        label: x > wide ? 'over' : 'after',
      }),
    );
  } else {
    const y = height * (1 - part);
    marks.push(
      rectangle(0, y, width, height - y, { fill: fill(before) }),
      rectangle(0, 0, width, y, { fill: fill(behind) }),
    );
    name(before, width / 2, (y + height) / 2, width, height - y);
    name(behind, width / 2, y / 2, width, y);
    marks.push(
      rectangle(0, 0, width, height, { pen: 'thin' }),
      line([-1.5, y], [width + 1.5, y], 'cut', 'ink'),
      dimension({ ...span, from: y, to: height }, 'y', -4.6, {
        foot: -0.8,
        label: height - y > wide ? 'over' : 'before',
      }),
    );
  }
  const left = cut.across === 'width' ? 9.5 : 1;
  const below = cut.across === 'length' ? 7.5 : 2;
  const above = cut.across === 'width' ? 9 : 2;
  return {
    width: width + left + 2 + (cut.across === 'length' ? 6 : 0),
    height: height + above + below,
    marks: moved(marks, left, above),
  };
}
