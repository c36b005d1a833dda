import { type Ledger, type Ticks, type Traced, toMm } from '../measure/index.ts';
import { dimension, FIGURE } from './dimension.ts';
import { type Drawing, line, type Mark, moved, type PaperPoint, rectangle, text } from './drawing.ts';
import type { Lengths } from './lengths.ts';
import type { TextMeasure } from './text-measure.ts';

/** One straight cut through a workpiece. */
export interface CutToDraw {
  readonly length: Ticks;
  readonly width: Ticks;
  readonly across: 'length' | 'width';
  readonly at: Traced;
  /** A second cut right through along the same way, measured from the far edge; what is between both is waste. */
  readonly fromFar?: Traced;
  /** The name of what lies before the line, and behind it; absent is waste. */
  readonly yields: readonly [string | undefined, string | undefined];
  /** Which side of the line keeps its size, and how wide the rail is that lies on it; absent where no rail is used. */
  readonly rail?: { readonly on: 'before' | 'behind'; readonly width: Ticks };
}

/** The rail as it lies along the line, on the part to keep and beyond it at both ends. */
function railMark(
  { across, rail }: CutToDraw,
  at: number,
  scale: number,
  width: number,
  height: number,
): Mark[] {
  if (!rail) return [];
  const wide = Math.max(toMm(rail.width) * scale, LEAST_RAIL);
  const look = { fill: 'shade', pen: 'fine', tone: 'measure' } as const;
  if (across === 'length')
    return [rectangle(rail.on === 'before' ? at - wide : at, -BEYOND, wide, height + 2 * BEYOND, look)];
  // The near edge is at the bottom of the drawing.
  return [rectangle(-BEYOND, rail.on === 'before' ? at : at - wide, width + 2 * BEYOND, wide, look)];
}

const LEAST_RAIL = 1.6;
const BEYOND = 2;

/** Two battens under the workpiece, across the cut, so that neither half falls. */
function battens(from: PaperPoint, to: PaperPoint, width: number, height: number): Mark[] {
  const upright = from[0] === to[0];
  return [0.2, 0.8].map((part) => {
    const at = part * (upright ? height : width);
    return upright
      ? line([-STUB, at], [width + STUB, at], 'hidden', 'quiet')
      : line([at, -STUB], [at, height + STUB], 'hidden', 'quiet');
  });
}

const STUB = 1;

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
    marks.push(...battens([x, 0], [x, height], width, height), ...railMark(cut, x, scale, width, height));
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
    marks.push(...battens([0, y], [width, y], width, height), ...railMark(cut, y, scale, width, height));
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
    if (cut.fromFar !== undefined) {
      const far = (height * ledger.ticks(cut.fromFar)) / cut.width;
      const words = lengths.bare(cut.fromFar);
      marks.push(
        rectangle(0, far, width, y - far, { fill: fill(undefined) }),
        line([-1.5, far], [width + 1.5, far], 'cut', 'ink'),
        dimension({ words, trace: cut.fromFar, from: 0, to: far }, 'y', width + 5.6, {
          foot: width + 0.8,
          label: far > type.width(words, FIGURE, 'regular') + 1.2 ? 'over' : 'before',
        }),
      );
    }
  }
  const left = cut.across === 'width' ? 9.5 : 1;
  const below = cut.across === 'length' ? 7.5 : 2;
  const above = cut.across === 'width' ? 9 : 2;
  return {
    width: width + left + 2 + (cut.across === 'length' || cut.fromFar !== undefined ? 6 : 0),
    height: height + above + below,
    marks: moved(marks, left, above),
  };
}
