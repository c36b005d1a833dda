import { type Operation, type StageId, timeWords } from '../build/index.ts';
import type { BookInput } from './book-input.ts';
import { Progress } from './card-drawing.ts';
import { type CardGroup, cardGroups } from './card-groups.ts';
import { type Drawing, line, type Mark, moved, rectangle, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { type Lengths, lengthsOf } from './lengths.ts';
import type { TextMeasure } from './text-measure.ts';
import { paragraph, type Run } from './typeset.ts';
import { cautionBox, heading } from './words.ts';

const PAD = 4;
const NUMBER = 14;
const LINE_TYPE = 3.8;
const BOX = 6;

/**
 * The step cards in the order of work, a heading wherever another stage begins. A card is never divided. What the card
 * above says in the same words isn't said again; the first card of a page says all.
 */
export function stepBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const lengths = lengthsOf(input.setOut.ledger, input.format);
  const progress = new Progress(input);
  const titles = new Map(input.build.stages.map((s) => [s.id, s.title]));
  const begun = new Set<StageId>();
  const blocks: Block[] = [];
  let stage: StageId | undefined;
  let above: CardContent | undefined;
  for (const group of cardGroups(input.build.operations)) {
    const fresh = group[0].operation.stage !== stage;
    stage = group[0].operation.stage;
    if (fresh) {
      const name = titles.get(stage) ?? stage;
      const aside = begun.has(stage) ? '' : stageTime(input, stage);
      blocks.push(stageHeading(begun.has(stage) ? `${name}, continued` : name, aside, width, type));
      begun.add(stage);
      above = undefined;
    }
    const drawings = group.map(({ operation }) => progress.next(operation, lengths, type));
    const content: CardContent = {
      group,
      drawings: drawings.map((d, i) => (i > 0 && shownAbove(group[i]!.operation) ? undefined : d)),
      tools: group.map(({ operation: o }) => input.tools.find((t) => t.id === o.tool)?.name ?? o.tool),
      cautions: [...new Set(group.flatMap(({ operation }) => operation.cautions))],
      plain: new Set(group.flatMap(({ operation }) => operation.lines.filter((l) => !l.includes('{')))),
    };
    const before = fresh ? 2 : 3.5;
    const full = () => card(content, undefined, lengths, width, type);
    blocks.push(
      above ? { ...card(content, above, lengths, width, type), first: full, before } : { ...full(), before },
    );
    above = content;
  }
  return blocks;
}

/** Is an operation's drawing the one that its card shows already? */
function shownAbove({ does, stage }: Operation): boolean {
  return (
    does.act === 'screw' ||
    does.act === 'bevel' ||
    does.act === 'rabbet' ||
    (does.act === 'saw' && stage === 'strips')
  );
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

interface CardContent {
  readonly group: CardGroup;
  readonly drawings: readonly (Drawing | undefined)[];
  readonly tools: readonly (string | undefined)[];
  readonly cautions: readonly string[];
  /** Its lines without a figure. */
  readonly plain: ReadonlySet<string>;
}

function card(
  content: CardContent,
  above: CardContent | undefined,
  lengths: Lengths,
  width: number,
  type: TextMeasure,
): Block {
  const inner = width - PAD * 2 - NUMBER;
  const left = PAD + NUMBER;
  const marks: Mark[] = [];
  let y = PAD;
  let leftOut = false;
  content.group.forEach(({ operation, number }, i) => {
    const follows = i > 0;
    if (follows) {
      marks.push(line([left, y + 0.6], [width - PAD, y + 0.6], 'fine', 'faint'));
      y += 2.6;
    }
    const before = content.group[i - 1];
    // Lines with a figure are always said.
    const lines = operation.lines.filter((words) => {
      const known = above?.plain.has(words) === true;
      if (known) leftOut = true;
      return words.includes('{') || !(known || before?.operation.lines.includes(words));
    });
    const told = before ? factsOf(before.operation, content.tools[i - 1]) : [];
    const facts = factRuns(
      factsOf(operation, content.tools[i]).filter(
        ([label, value]) =>
          !told.some(([l, v]) => l === label && v === value) &&
          !(follows && label === 'With' && operation.kind === 'screw'),
      ),
    );
    const part = {
      operation,
      number,
      follows,
      lines,
      facts,
      drawing: content.drawings[i],
    };
    const set = step(part, lengths, width, type);
    marks.push(...moved(set.marks, 0, y));
    y += set.height;
  });
  const { cautions } = content;
  const warned = above !== undefined && sameWords(cautions, above.cautions);
  if (leftOut || (warned && cautions.length > 0)) {
    const rest =
      !warned || cautions.length === 0
        ? 'The rest as above.'
        : leftOut
          ? 'The rest and the cautions as above.'
          : 'Cautions as above.';
    marks.push(text([left, y + 3.4], rest, 3.1, { tone: warned && cautions.length > 0 ? 'warn' : 'quiet' }));
    y += 4.6;
  }
  if (!warned && cautions.length > 0) {
    y += 1.5;
    const box = cautionBox(cautions, inner, type);
    marks.push(...moved(box.marks, left, y));
    y += box.height;
  }
  const height = y + PAD - 0.9;
  return { marks: [rectangle(0, 0, width, height, { pen: 'fine', tone: 'faint' }), ...marks], height };
}

interface StepContent {
  readonly operation: Operation;
  readonly number: number;
  /** Not the card's first. */
  readonly follows: boolean;
  readonly lines: readonly string[];
  readonly facts: readonly Run[];
  readonly drawing: Drawing | undefined;
}

/** One operation on its card: number, title, box to tick, lines, drawing. */
function step(
  { operation, number, follows, lines, facts, drawing }: StepContent,
  lengths: Lengths,
  width: number,
  type: TextMeasure,
): Block {
  const inner = width - PAD * 2 - NUMBER;
  const left = PAD + NUMBER;
  const size = follows ? 3.8 : 4.4;
  const box = follows ? BOX * 0.8 : BOX;
  const marks: Mark[] = [];
  const titled = paragraph(operation.title, inner - 30, size, type, { face: 'semibold' });
  marks.push(...moved(titled.marks, left, 0));
  const type1 = number > 99 ? 5.8 : 7;
  marks.push(
    text([PAD, follows ? 3.8 : 5.2], `${number}`, follows ? 4.6 : type1, {
      face: 'semibold',
      tone: 'measure',
    }),
  );
  marks.push(rectangle(width - PAD - box, -0.4, box, box, { fill: 'paper', pen: 'thin', tone: 'quiet' }));
  const { active, waiting } = operation.minutes;
  const times = [active > 0 ? timeWords(active) : '', waiting > 0 ? `wait ${timeWords(waiting)}` : ''].filter(
    (w) => w !== '',
  );
  if (follows && times.length > 1) times.splice(0, 2, times.join(', '));
  times.forEach((words, i) => {
    marks.push(text([width - PAD - BOX - 2.5, 3.6 + i * 3.9], words, 3.1, { anchor: 'end', tone: 'quiet' }));
  });
  let y = Math.max(titled.height, times.length > 1 ? 8 : 0) + 0.8;

  const room = drawing ? inner - drawing.width - 6 : inner;
  const top = y;
  if (facts.length > 0) {
    const set = paragraph(facts, room, 3.3, type);
    marks.push(...moved(set.marks, left, y));
    y += set.height + 1.4;
  }
  lines.forEach((words, i) => {
    const set = paragraph(runsOf(words, operation, lengths), room - 6, LINE_TYPE, type);
    if (lines.length > 1) marks.push(text([left, y + LINE_TYPE * 0.98], `${i + 1}`, 3.2, { tone: 'quiet' }));
    marks.push(...moved(set.marks, left + (lines.length > 1 ? 6 : 0), y));
    y += set.height + 0.9;
  });
  if (drawing) {
    marks.push(...moved(drawing.marks, width - PAD - drawing.width, top + 1.5));
    y = Math.max(y, top + 1.5 + drawing.height);
  }
  return { marks, height: y };
}

type Fact = readonly [label: string, value: string];

/** Tool, how the part lies, and the reference edge unless a line names it. */
function factsOf(operation: Operation, tool: string | undefined): Fact[] {
  const reference = operation.reference ?? '';
  const facts = [
    ['With', tool],
    ['Lying', operation.faceUp],
    ['Measured from', operation.lines.some((l) => l.includes(reference)) ? undefined : operation.reference],
  ] as const;
  return facts.filter((f): f is readonly [(typeof f)[0], string] => f[1] !== undefined && f[1] !== '');
}

/** Facts, one after the other. */
function factRuns(facts: readonly Fact[]): Run[] {
  return facts.flatMap(([label, value], i): Run[] => [
    { text: `${i > 0 ? ' ' : ''}${label} `, tone: 'quiet' },
    { text: value, face: 'semibold' },
    { text: '.', tone: 'quiet' },
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
