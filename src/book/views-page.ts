import type { BookPage } from './book.ts';
import type { BookInput } from './book-input.ts';
import { type Drawing, type Mark, moved, text } from './drawing.ts';
import { columnOf, PAPERS } from './page-frame.ts';
import type { TextMeasure } from './text-measure.ts';
import { extentOf, type View, view } from './views.ts';

/** The scales of ISO 5455 and of the inch rule (1 1/2, 1, 3/4, 1/2 inch to the foot), with steps between. */
const SCALES = {
  mm: [1, 2, 2.5, 4, 5, 7.5, 10, 12.5, 15, 20, 25, 50, 100],
  in: [1, 2, 3, 4, 6, 8, 10, 12, 16, 24, 48, 96],
} as const;
const GAP = 6;
const CAPTION = 6;
/** How much larger the views must be on two pages to be worth the second one. */
const MUCH = 1.5;

interface Sheet {
  readonly width: number;
  readonly height: number;
}

/**
 * The views on as few pages as show them well: front, side and plan lined up on one page, or the plan on a page of
 * its own where that allows a much larger scale. Pages lie on their side when that gains room.
 */
export function viewPages(input: BookInput, type: TextMeasure): BookPage[] {
  const paper = PAPERS[input.paper];
  const sheets: Sheet[] = [paper, { width: paper.height, height: paper.width }];
  const across = extentOf(input.setOut, 'front').width + extentOf(input.setOut, 'side').width;
  const widest = Math.max(...sheets.map((s) => columnOf(s).width));
  let apart: { readonly scale: number; readonly pages: BookPage[] } | undefined;
  for (const scale of SCALES[input.format.unit]) {
    if (apart && scale > apart.scale * MUCH) return apart.pages;
    // Not even the bare pictures find room beside one another.
    if (across / scale > widest) continue;
    const [front, side, plan] = (['front', 'side', 'plan'] as const).map((name) =>
      view(input.setOut, name, 1 / scale, input.format, type),
    ) as [View, View, View];
    for (const sheet of sheets) {
      const room = columnOf(sheet);
      const upper = beside(front, side);
      if (upper.width > room.width || upper.height > room.height) continue;
      const all = under(upper, plan, front);
      if (all.width <= room.width && all.height <= room.height) return [page(sheet, all, scaleWords(scale))];
      const second = captioned(plan, 'From above');
      if (second.width <= room.width && second.height <= room.height)
        apart ??= { scale, pages: [upper, second].map((d) => page(sheet, d, scaleWords(scale))) };
    }
  }
  if (apart) return apart.pages;
  throw new Error('the piece is too large for any scale of the book');
}

function scaleWords(scale: number): string {
  return `Scale 1 : ${scale}. Work from the figures, not from the drawing.`;
}

/** The side view to the right of the front view, standing on one line. */
function beside(front: View, side: View): Drawing {
  const base = Math.max(front.picture.top, side.picture.top);
  const x = front.width + GAP;
  const [fy, sy] = [base - front.picture.top, base - side.picture.top];
  const foot = Math.max(fy + front.height, sy + side.height) + CAPTION;
  return {
    width: x + side.width,
    height: foot,
    marks: [
      ...moved(front.marks, 0, fy),
      ...moved(side.marks, x, sy),
      caption('Front', front.picture.left, foot),
      caption('From the right', x + side.picture.left, foot),
    ],
  };
}

/** The plan under the front view, left edges in line. */
function under(upper: Drawing, plan: View, front: View): Drawing {
  const x = front.picture.left - plan.picture.left;
  const y = upper.height + GAP;
  const foot = y + plan.height + CAPTION;
  return {
    width: Math.max(upper.width, x + plan.width),
    height: foot,
    marks: [
      ...upper.marks,
      ...moved(plan.marks, Math.max(0, x), y),
      caption('From above', Math.max(0, x) + plan.picture.left, foot),
    ],
  };
}

function captioned(plan: View, words: string): Drawing {
  const foot = plan.height + CAPTION;
  return { ...plan, height: foot, marks: [...plan.marks, caption(words, plan.picture.left, foot)] };
}

function caption(words: string, x: number, foot: number): Mark {
  return text([x, foot - 1.2], words, 3.7, { face: 'semibold' });
}

function page(sheet: Sheet, d: Drawing, words: string): BookPage {
  const room = columnOf(sheet);
  const dx = room.left + (room.width - d.width) / 2;
  const dy = room.top + Math.max(0, (room.height - d.height) / 2);
  return {
    kind: 'views',
    width: sheet.width,
    height: sheet.height,
    marks: [...moved(d.marks, dx, dy), text([room.left, sheet.height - 11], words, 3.1, { tone: 'quiet' })],
  };
}
