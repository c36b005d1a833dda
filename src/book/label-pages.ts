import type { Operation } from '../build/index.ts';
import type { Traced } from '../measure/index.ts';
import { type Part, partsAndBoards } from '../setting-out/index.ts';
import type { BookInput } from './book-input.ts';
import { line, type Mark, moved, type PaperPoint, rectangle, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { type Lengths, lengthsOf } from './lengths.ts';
import type { TextMeasure } from './text-measure.ts';
import { type Paragraph, paragraph } from './typeset.ts';
import { note } from './words.ts';

const ACROSS = 3;
const HEIGHT = 35;
const GAP = 2;
const INSET = 4.5;
/** Letters of the mark, and of the sizes where there is room for them beside it. */
const MARK = 11;
const SIZES = 3.3;

/** A label for every part: to be cut out and taped on where nobody will see it. */
export function labelBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const lengths = lengthsOf(input.setOut.ledger, input.format);
  const wide = (width - GAP * (ACROSS - 1)) / ACROSS;
  const next = nextWork(input.build.operations);
  const parts = partsAndBoards(input.setOut);
  const blocks: Block[] = [
    note(
      'One for each part. Tape it on as soon as the part is cut, on the face that the label names, long arrow with the grain. The heavy sides are the edges to measure from: below the trued long edge, at the left the squared end.',
      width,
      type,
    ),
  ];
  for (let i = 0; i < parts.length; i += ACROSS)
    blocks.push({
      before: i === 0 ? 4 : GAP,
      height: HEIGHT,
      marks: parts
        .slice(i, i + ACROSS)
        .flatMap((part, n) =>
          moved(
            label(part, next, hidden(part, input.build.finishing?.hidden), lengths, wide, type),
            n * (wide + GAP),
            0,
          ),
        ),
    });
  return blocks;
}

function label(
  part: Part,
  next: ReadonlyMap<string, string>,
  tapeOn: string,
  lengths: Lengths,
  wide: number,
  type: TextMeasure,
): Mark[] {
  const left = INSET + 2;
  const right = wide - INSET;
  const { length, width } = part.cut;
  const marks: Mark[] = [
    rectangle(0, 0, wide, HEIGHT, { pen: 'hidden', tone: 'faint' }),
    line([0.8, HEIGHT - 0.8], [wide - 0.8, HEIGHT - 0.8], 'cut'),
    line([0.8, 0.8], [0.8, HEIGHT - 0.8], 'cut'),
    ...arrow([right - 3, HEIGHT - 5.4], [right - 3, HEIGHT - 1.6]),
    ...arrow([5.4, HEIGHT / 2], [1.6, HEIGHT / 2]),
    text([left, 11.5], part.mark, MARK, { face: 'semibold' }),
    ...sizes(
      part.form === 'strip' ? [length] : [length, width],
      [left + type.width(part.mark, MARK, 'semibold') + 1.5, right],
      lengths,
      type,
    ),
    text([left, 16.2], fitted(part.name, right - left, 3.3, type), 3.3),
  ];
  // Where the grain must be followed the arrow says how; else there is nothing to follow.
  if (part.grain === 'length')
    marks.push(...arrow([right - 9, 10.6], [right, 10.6]), ...arrow([right - 9, 10.6], [right - 18, 10.6]));
  const then = next.get(part.mark);
  const words = then === undefined ? 'No further work by itself.' : `Next: ${then}.`;
  const says = twoLines(words, right - left, type);
  const where = paragraph(tapeOn, right - left, 2.6, type, { tone: 'quiet' });
  return [...marks, ...moved(says.marks, left, 17.6), ...moved(where.marks, left, 26)];
}

/** The sizes to be sawn, ending at the right, as large as the room beside the mark allows. */
function sizes(
  of: readonly Traced[],
  [left, right]: readonly [number, number],
  lengths: Lengths,
  type: TextMeasure,
): Mark[] {
  const marks: Mark[] = [];
  const wide = of.reduce(
    (sum, t, i) =>
      sum +
      type.width(lengths.bare(t), SIZES, 'semibold') +
      (i > 0 ? type.width('×', SIZES, 'regular') + 1.8 : 0),
    0,
  );
  const size = SIZES * Math.min(1, (right - left) / wide);
  let x = right;
  for (const [i, t] of [...of].reverse().entries()) {
    const words = lengths.bare(t);
    if (i > 0) {
      marks.push(text([x - 0.9, 6.6], '×', size, { anchor: 'end', tone: 'quiet' }));
      x -= type.width('×', size, 'regular') + 1.8;
    }
    marks.push(text([x, 6.6], words, size, { anchor: 'end', face: 'semibold', trace: t }));
    x -= type.width(words, size, 'semibold');
  }
  return marks;
}

/** Which face to stick it on. */
function hidden(part: Part, faces: ReadonlyMap<string, 'show' | 'under'> | undefined): string {
  if (part.form === 'strip') return 'Tape on: the glued side.';
  const face = faces?.get(part.mark);
  return face === undefined
    ? 'Tape on: the under face; off again before the finish.'
    : `Tape on: the ${face} face, which is hidden later.`;
}

/** A sentence in two lines at most; what is too long ends with an ellipsis. */
function twoLines(words: string, room: number, type: TextMeasure): Paragraph {
  const all = words.split(' ');
  for (let n = all.length; ; n--) {
    const set = paragraph(n === all.length ? words : `${all.slice(0, n).join(' ')} …`, room, 2.9, type);
    if (set.lines <= 2 || n === 1) return set;
  }
}

function arrow(from: PaperPoint, to: PaperPoint): Mark[] {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const [dx, dy] = [((to[0] - from[0]) / long) * 1.3, ((to[1] - from[1]) / long) * 1.3];
  return [
    line(from, to, 'fine'),
    line(to, [to[0] - dx - dy * 0.5, to[1] - dy + dx * 0.5], 'fine'),
    line(to, [to[0] - dx + dy * 0.5, to[1] - dy - dx * 0.5], 'fine'),
  ];
}

/** The words, or as many letters of them as fit. */
function fitted(words: string, room: number, size: number, type: TextMeasure): string {
  if (type.width(words, size, 'regular') <= room) return words;
  let end = words.length;
  while (end > 1 && type.width(`${words.slice(0, end)}…`, size, 'regular') > room) end--;
  return `${words.slice(0, end).trimEnd()}…`;
}

/** For every mark the first work after the saw, with the number of its card. */
function nextWork(cards: readonly Operation[]): ReadonlyMap<string, string> {
  const next = new Map<string, string>();
  cards.forEach((card, i) => {
    if (card.stage === 'gather' || card.stage === 'sheets' || card.stage === 'strips') return;
    if (card.kind === 'mark') return;
    for (const mark of worksOn(card))
      if (!next.has(mark)) next.set(mark, `card ${i + 1}, ${lowerFirst(card.title)}`);
  });
  return next;
}

function worksOn({ does }: Operation): readonly string[] {
  if ('workpieces' in does) return does.workpieces;
  if ('workpiece' in does) return [does.workpiece];
  if ('pairs' in does) return does.pairs.flatMap((p) => [p.strip, p.board]);
  if ('boards' in does) return does.boards;
  return 'on' in does ? does.on : [];
}

function lowerFirst(words: string): string {
  return words.slice(0, 1).toLowerCase() + words.slice(1);
}
