import type { Operation } from '../build/index.ts';
import type { BookInput } from './book-input.ts';
import { Progress } from './card-drawing.ts';
import { type Drawing, type Mark, moved, rectangle, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { type Lengths, lengthsOf } from './lengths.ts';
import type { TextMeasure } from './text-measure.ts';
import { paragraph, type Run } from './typeset.ts';
import { cautionBox, heading } from './words.ts';

const PAD = 4;
const NUMBER = 14;
const LINE_TYPE = 3.8;
const BOX = 6;

/** The step cards in the order of work, a heading wherever another stage begins. A card is never divided. */
export function stepBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const lengths = lengthsOf(input.setOut.ledger, input.format);
  const progress = new Progress(input);
  const titles = new Map(input.build.stages.map((s) => [s.id, s.title]));
  const begun = new Set<string>();
  const blocks: Block[] = [];
  let stage: string | undefined;
  let cautions: readonly string[] = [];
  input.build.operations.forEach((operation, i) => {
    const fresh = operation.stage !== stage;
    stage = operation.stage;
    if (fresh) {
      const name = titles.get(operation.stage) ?? operation.stage;
      const aside = begun.has(stage) ? '' : stageTime(input, stage);
      blocks.push(stageHeading(begun.has(stage) ? `${name}, continued` : name, aside, width, type));
      begun.add(stage);
    }
    const drawing = progress.next(operation, lengths, type);
    const tool = input.tools.find((t) => t.id === operation.tool)?.name ?? operation.tool;
    const make = (cautions: 'here' | 'above') =>
      card({ operation, number: i + 1, tool, drawing, cautions }, lengths, width, type);
    const full = make('here');
    const before = fresh ? 2 : 3.5;
    // A warning that is read too often is not read: on one page it is spelled out once.
    const again = !fresh && operation.cautions.length > 0 && sameWords(operation.cautions, cautions);
    blocks.push(again ? { ...make('above'), first: full, before } : { ...full, before });
    cautions = operation.cautions;
  });
  return blocks;
}

function sameWords(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((w, i) => w === b[i]);
}

function stageHeading(title: string, minutes: string, width: number, type: TextMeasure): Block {
  const set = heading(title, width - 40, type);
  return {
    ...set,
    marks: [...set.marks, text([width, 4.6], minutes, 3.2, { anchor: 'end', tone: 'quiet' })],
  };
}

function stageTime(input: BookInput, stage: string): string {
  const of = input.build.operations.filter((o) => o.stage === stage);
  const active = of.reduce((s, o) => s + o.minutes.active, 0);
  const waiting = of.reduce((s, o) => s + o.minutes.waiting, 0);
  return waiting > 0 ? `${timeWords(active)} of work, ${timeWords(waiting)} of waiting` : timeWords(active);
}

/** Minutes as `25 min` or `2 h 05 min`. */
export function timeWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${rest} min`;
}

interface CardContent {
  readonly operation: Operation;
  readonly number: number;
  readonly tool: string | undefined;
  readonly drawing: Drawing | undefined;
  /** Spelled out, or spelled out on the card before. */
  readonly cautions: 'here' | 'above';
}

function card(
  { operation, number, tool, drawing, cautions }: CardContent,
  lengths: Lengths,
  width: number,
  type: TextMeasure,
): Block {
  const inner = width - PAD * 2 - NUMBER;
  const left = PAD + NUMBER;
  const marks: Mark[] = [];
  let y = PAD;
  const titled = paragraph(operation.title, inner - 30, 4.4, type, { face: 'semibold' });
  marks.push(...moved(titled.marks, left, y));
  marks.push(text([PAD, y + 5.2], `${number}`, number > 99 ? 5.8 : 7, { face: 'semibold', tone: 'measure' }));
  marks.push(rectangle(width - PAD - BOX, y - 0.4, BOX, BOX, { fill: 'paper', pen: 'thin', tone: 'quiet' }));
  const { active, waiting } = operation.minutes;
  const times = [active > 0 ? timeWords(active) : '', waiting > 0 ? `wait ${timeWords(waiting)}` : ''].filter(
    (w) => w !== '',
  );
  times.forEach((words, i) => {
    marks.push(
      text([width - PAD - BOX - 2.5, y + 3.6 + i * 3.9], words, 3.1, { anchor: 'end', tone: 'quiet' }),
    );
  });
  y += Math.max(titled.height, times.length > 1 ? 8 : 0) + 0.8;

  const room = drawing ? inner - drawing.width - 6 : inner;
  const top = y;
  const facts = factRuns(operation, tool);
  if (facts.length > 0) {
    const set = paragraph(facts, room, 3.3, type);
    marks.push(...moved(set.marks, left, y));
    y += set.height + 1.4;
  }
  operation.lines.forEach((words, i) => {
    const set = paragraph(runsOf(words, operation, lengths), room - 6, LINE_TYPE, type);
    if (operation.lines.length > 1)
      marks.push(text([left, y + LINE_TYPE * 0.98], `${i + 1}`, 3.2, { tone: 'quiet' }));
    marks.push(...moved(set.marks, left + (operation.lines.length > 1 ? 6 : 0), y));
    y += set.height + 0.9;
  });
  if (drawing) {
    marks.push(...moved(drawing.marks, width - PAD - drawing.width, top + 1.5));
    y = Math.max(y, top + 1.5 + drawing.height);
  }
  if (cautions === 'above') {
    marks.push(text([left, y + 3.4], 'Cautions as above.', 3.1, { tone: 'warn' }));
    y += 4.6;
  } else if (operation.cautions.length > 0) {
    y += 1.5;
    const box = cautionBox(operation.cautions, inner, type);
    marks.push(...moved(box.marks, left, y));
    y += box.height;
  }
  const height = y + PAD - 0.9;
  return { marks: [rectangle(0, 0, width, height, { pen: 'fine', tone: 'faint' }), ...marks], height };
}

/** Tool, face up and reference edge, one after the other. */
function factRuns(operation: Operation, tool: string | undefined): Run[] {
  const facts = [
    ['With', tool],
    ['Face up', operation.faceUp],
    ['Measured from', operation.reference],
  ].filter((f): f is [string, string] => f[1] !== undefined && f[1] !== '');
  return facts.flatMap(([label, value], i): Run[] => [
    { text: `${i > 0 ? ' ' : ''}${label} `, tone: 'quiet' },
    { text: value, face: 'semibold' },
    ...(i < facts.length - 1 ? [{ text: '.', tone: 'quiet' as const }] : []),
  ]);
}

/** A card's line with its lengths filled in, each standing out and kept in one piece. */
function runsOf(words: string, operation: Operation, lengths: Lengths): Run[] {
  return words.split(/(\{\d+\})/).map((piece): Run => {
    const index = /^\{(\d+)\}$/.exec(piece)?.[1];
    if (index === undefined) return { text: piece };
    const trace = operation.lengths[Number(index)];
    if (trace === undefined) throw new Error(`${operation.id}: no length {${index}}`);
    return { text: lengths.inWords(trace), face: 'semibold', whole: true, trace };
  });
}
