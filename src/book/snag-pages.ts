import { type Level, type Snag, sourceWords } from '../snag/index.ts';
import type { BookInput } from './book-input.ts';
import { type Mark, moved, rectangle, type Tone, text } from './drawing.ts';
import type { Block } from './flow.ts';
import type { TextMeasure } from './text-measure.ts';
import { paragraph } from './typeset.ts';
import { prose } from './words.ts';

const LEVELS: Readonly<Record<Level, { readonly says: string; readonly fill: Tone; readonly ink: Tone }>> = {
  stop: { says: 'Stop', fill: 'warn', ink: 'paper' },
  mind: { says: 'Mind', fill: 'warn-paper', ink: 'warn' },
  note: { says: 'Note', fill: 'shade', ink: 'quiet' },
};
const ORDER: readonly Level[] = ['stop', 'mind', 'note'];

/** What is to be put right, worst first, each with its figures, its rule and what would cure it. */
export function snagBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const { snags } = input;
  if (snags.length === 0) return [prose('The checks found nothing to put right.', width, type)];
  return ORDER.flatMap((level) => snags.filter((s) => s.level === level)).map((s) =>
    snag(s, whereWords(s, input), width, type),
  );
}

/** Where a snag is, in what the book calls it: a mark, a card, a lot. Places of the document say nothing on paper. */
function whereWords({ where }: Snag, input: BookInput): string | undefined {
  const part = input.setOut.parts.find((p) => p.id === where.part);
  if (part) return `${part.mark}, ${part.name}`;
  const card = input.build.operations.findIndex((o) => o.id === where.operation);
  if (card >= 0) return `card ${card + 1}`;
  const lot = input.breakdown.lots.find((l) => l.lot.id === where.lot)?.lot;
  return lot?.name ?? where.part ?? where.lot;
}

function snag(s: Snag, where: string | undefined, width: number, type: TextMeasure): Block {
  const tag = LEVELS[s.level];
  const left = 20;
  const room = width - left;
  const marks: Mark[] = [
    rectangle(0, 0.2, 15, 6, { fill: tag.fill }),
    text([7.5, 4.5], tag.says, 3.6, { face: 'semibold', anchor: 'middle', tone: tag.ink }),
  ];
  const sentence = paragraph(s.sentence, room, 4, type, { face: 'semibold' });
  marks.push(...moved(sentence.marks, left, 0));
  let y = sentence.height + 1.2;
  const fact = (label: string, words: string) => {
    const set = paragraph(words, room - 22, 3.4, type);
    marks.push(text([left, y + 3.3], label, 3, { tone: 'quiet' }), ...moved(set.marks, left + 22, y));
    y += set.height + 0.6;
  };
  if (where !== undefined) fact('Where', where);
  // A note's figures stand in its sentence.
  if (s.figures && s.level !== 'note') {
    const { value, limit, margin, unit } = s.figures;
    fact(
      'Figures',
      `${figure(value)} ${unit}; the limit is ${figure(limit)} ${unit}; margin ${figure(margin)} ${unit}`,
    );
  }
  if (s.rule) {
    fact('Rule', s.rule.says);
    fact('Source', sourceWords(s.rule));
  }
  s.cures.forEach((c, i) => {
    fact(i === 0 ? (s.cures.length > 1 ? 'Cures' : 'Cure') : '', c.says);
  });
  return { marks, height: y, before: 7 };
}

/** A number for reading: four digits at most, no exponent. */
function figure(n: number): string {
  const size = Math.abs(n);
  const places = size >= 100 ? 0 : size >= 10 ? 1 : 2;
  return `${Number(n.toFixed(places))}`.replace('-', '−');
}
