import type { BookInput } from './book-input.ts';
import type { Block } from './flow.ts';
import { lengthsOf } from './lengths.ts';
import { type Cell, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { note } from './words.ts';

/** The gauge sticks: each distance that parts are set by, once, with what it sets. */
export function gaugeBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
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
