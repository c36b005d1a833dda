import type { StoryStick } from '../build/index.ts';
import type { Traced } from '../measure/index.ts';
import type { BookInput } from './book-input.ts';
import { type Mark, rectangle, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { lengthsOf } from './lengths.ts';
import { type Cell, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { note } from './words.ts';

/** The story sticks, drawn to scale, then the gauge sticks. */
export function stickBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const { gauges, stories } = input.build;
  return [
    ...(stories.length > 0 ? storyBlocks(input, width, type) : []),
    ...(gauges.length > 0 ? gaugeBlocks(input, width, type) : []),
  ];
}

/** Laths with the marks of a case, to lay beside what is drawn here. */
function storyBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  return [
    note(
      'Story sticks carry a case’s marks at full size: straight laths, every mark measured once, from the end drawn at the left. Drawn here to the width of the page.',
      width,
      type,
    ),
    ...input.build.stories.flatMap((s) => [
      lath(input, s, width, type),
      ...marksTable(input, s, width, type),
    ]),
  ];
}

const LATH = { top: 9, height: 7 };

function lath(input: BookInput, stick: StoryStick, width: number, type: TextMeasure): Block {
  const { ledger } = input.setOut;
  const at = (t: Traced) => (ledger.ticks(t) / ledger.ticks(stick.length)) * width;
  const marks: Mark[] = [
    text([0, 4], stick.name, 3.8, { face: 'semibold' }),
    rectangle(0, LATH.top, width, LATH.height, { fill: 'wood-top', pen: 'thin' }),
  ];
  // Names that would run into the one before are left to the table.
  let free = 0;
  for (const m of stick.marks) {
    const [from, to] = [at(m.from), at(m.to)];
    marks.push(rectangle(from, LATH.top, to - from, LATH.height, { fill: 'shade', pen: 'fine' }));
    const needs = type.width(m.part, 3.1, 'semibold');
    const x = Math.min(Math.max((from + to) / 2, needs / 2), width - needs / 2);
    if (x - needs / 2 < free) continue;
    free = x + needs / 2 + 1;
    marks.push(text([x, LATH.top + LATH.height + 3.6], m.part, 3.1, { face: 'semibold', anchor: 'middle' }));
  }
  return { marks, height: LATH.top + LATH.height + 5, before: 4, keep: true };
}

function marksTable(input: BookInput, stick: StoryStick, width: number, type: TextMeasure): Block[] {
  const lengths = lengthsOf(input.setOut.ledger, input.format);
  const figure = (t: Traced): Cell => [{ text: lengths.inWords(t), whole: true, face: 'semibold', trace: t }];
  return table(
    [
      { title: 'Mark', width: 34, face: 'semibold' },
      { title: 'From', width: 34, align: 'end', face: 'semibold' },
      { title: 'To', width: 34, align: 'end', face: 'semibold' },
    ],
    [
      ...stick.marks.map((m): Cell[] => [m.part, figure(m.from), figure(m.to)]),
      ['whole lath', '', figure(stick.length)],
    ],
    Math.min(width, 102),
    type,
  );
}

/** The gauge sticks: each distance that parts are set by, once, with what it sets. */
function gaugeBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const lengths = lengthsOf(input.setOut.ledger, input.format);
  return [
    note(
      'Sticks cut to the distances that parts are set by, two of each, one for either end. Cut them from one straight offcut, write name and length on them, and keep them until the piece stands.',
      width,
      type,
    ),
    ...table(
      [
        { title: 'Stick', width: 34, face: 'semibold' },
        { title: 'Length', width: 34, align: 'end', face: 'semibold' },
        { title: 'Sets' },
      ],
      input.build.gauges.map((g): Cell[] => [
        g.name,
        [{ text: lengths.inWords(g.length), whole: true, face: 'semibold', trace: g.length }],
        g.uses.map((u) => u.mark).join(', '),
      ]),
      width,
      type,
    ),
  ];
}
