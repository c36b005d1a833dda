import { timeWords } from '../build/index.ts';
import type { BookPage } from './book.ts';
import type { BookInput } from './book-input.ts';
import { line, type Mark, moved, text } from './drawing.ts';
import { isometric } from './isometric.ts';
import { lengthsOf } from './lengths.ts';
import { PAPERS } from './page-frame.ts';
import { printable, type TextMeasure } from './text-measure.ts';
import { paragraph } from './typeset.ts';
import { cautionBox } from './words.ts';

/** A part of the book and the page it begins on. */
export interface Content {
  readonly title: string;
  readonly page: number;
}

/** The cover: the piece, its sizes, what is in the book, what was proven, and the cautions for the whole job. */
export function cover(input: BookInput, contents: readonly Content[], type: TextMeasure): BookPage {
  const paper = PAPERS[input.paper];
  const left = 22;
  const width = paper.width - left * 2;
  const marks: Mark[] = [];
  let y = 26;
  const named = paragraph(input.title, width, 12, type, { face: 'semibold' });
  marks.push(...moved(named.marks, left - 0.6, y));
  y += named.height * 0.97;
  if (input.subtitle) {
    const sub = paragraph(input.subtitle, width * 0.8, 4.4, type, { tone: 'quiet' });
    marks.push(...moved(sub.marks, left, y));
    y += sub.height;
  }

  const foot = lowerHalf(input, contents, width, type);
  const bottom = paper.height - 18;
  const lower = bottom - foot.height;
  const sizes = 17;
  const room = { width, height: lower - sizes - y - 16 };
  const picture = isometric(input.setOut, { room });
  const free = room.height - picture.height;
  marks.push(...moved(picture.marks, left + (width - picture.width) / 2, y + 8 + free / 2));
  marks.push(...moved(sizeRow(input, width), left, lower - sizes));
  marks.push(...moved(foot.marks, left, lower));
  return { kind: 'cover', width: paper.width, height: paper.height, marks };
}

function sizeRow(input: BookInput, width: number): Mark[] {
  const { overall, ledger, parts } = input.setOut;
  const lengths = lengthsOf(ledger, input.format);
  const work = input.build.operations.reduce((s, o) => s + o.minutes.active, 0);
  const cells = [
    ['wide', lengths.inWords(overall.width), overall.width],
    ['high', lengths.inWords(overall.height), overall.height],
    ['deep', lengths.inWords(overall.depth), overall.depth],
    ['parts', `${parts.length}`, undefined],
    [
      'of work, roughly',
      timeWords(work >= 240 ? Math.round(work / 60) * 60 : Math.round(work / 15) * 15),
      undefined,
    ],
  ] as const;
  return cells.flatMap(([label, words, trace], i) => {
    const x = (width / cells.length) * i;
    return [
      text([x, 5.5], words, 6.2, { face: 'semibold', ...(trace === undefined ? {} : { trace }) }),
      text([x, 10.2], label, 3.3, { tone: 'quiet' }),
    ];
  });
}

/** Contents on the left, proof on the right, cautions under both. */
function lowerHalf(input: BookInput, contents: readonly Content[], width: number, type: TextMeasure) {
  const marks: Mark[] = [line([0, 0], [width, 0], 'fine', 'faint')];
  const column = (width - 12) / 2;
  let yLeft = 5;
  for (const c of contents) {
    marks.push(
      text([0, yLeft + 3.6], printable(c.title), 3.7),
      text([column, yLeft + 3.6], `${c.page}`, 3.7, { anchor: 'end' }),
    );
    yLeft += 5.6;
  }
  let yRight = 5;
  for (const sentence of input.proof) {
    const set = paragraph(sentence, column, 3.5, type);
    marks.push(...moved(set.marks, column + 12, yRight));
    yRight += set.height + 1.6;
  }
  let y = Math.max(yLeft, yRight) + 3;
  if (input.cautions.length > 0) {
    const box = cautionBox(input.cautions, width, type, 3.4);
    marks.push(...moved(box.marks, 0, y));
    y += box.height;
  }
  return { marks, height: y };
}
