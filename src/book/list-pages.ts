import { type Operation, timeWords } from '../build/index.ts';
import type { BookInput } from './book-input.ts';
import { cuttingList } from './cutting-list.ts';
import { type Drawing, moved, text } from './drawing.ts';
import type { Block } from './flow.ts';
import { lengthsOf } from './lengths.ts';
import { letteredPicture } from './lettered-picture.ts';
import { ISOMETRIC, ISOMETRIC_BEHIND } from './projection.ts';
import { type Cell, TABLE_TYPE, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { heading, note } from './words.ts';

/** The cutting list, a table a lot. */
export function cuttingListBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const lengths = lengthsOf(input.setOut.ledger, input.format);
  const rows = cuttingList(input.setOut, input.breakdown, input.build);
  const blocks: Block[] = [
    note(
      `Sizes in ${lengths.unit}: length along the grain, then width, then thickness as measured. These are the sizes to saw to; “trimmed later” means that they hold an allowance.`,
      width,
      type,
    ),
  ];
  const wide = (size: 'length' | 'width' | 'thickness') =>
    Math.max(
      10,
      ...rows.map(
        (r) =>
          type.width(lengths[size === 'thickness' ? 'measured' : 'bare'](r[size]), TABLE_TYPE, 'semibold') +
          0.5,
      ),
    );
  blocks.push(whereTheyAre(input, width, type));
  const lots = [...new Set(rows.map((r) => r.lot))];
  for (const lot of lots) {
    const of = rows.filter((r) => r.lot === lot);
    const count = of.reduce((s, r) => s + r.count, 0);
    const name = input.breakdown.lots.find((l) => l.lot.id === lot)?.lot.name ?? lot;
    blocks.push(heading(`${name}, ${count} ${count === 1 ? 'part' : 'parts'}`, width, type));
    blocks.push(
      ...table(
        [
          { title: 'Mark', width: 16, face: 'semibold' },
          { title: 'Part', width: 38 },
          { title: 'Count', width: 9, align: 'end' },
          { title: 'Length', width: wide('length'), align: 'end', face: 'semibold' },
          { title: 'Width', width: wide('width'), align: 'end', face: 'semibold' },
          { title: 'Thick', width: wide('thickness'), align: 'end' },
          { title: 'Notes', tone: 'quiet' },
        ],
        of.map((r): Cell[] => [
          r.marks,
          r.name,
          `${r.count}`,
          [{ text: lengths.bare(r.length), whole: true, face: 'semibold', trace: r.length }],
          [{ text: lengths.bare(r.width), whole: true, face: 'semibold', trace: r.width }],
          [{ text: lengths.measured(r.thickness), whole: true, trace: r.thickness }],
          [r.notes, r.grain === 'either way' ? 'grain either way' : ''].filter((w) => w !== '').join('; '),
        ]),
        width,
        type,
      ),
    );
  }
  return blocks;
}

/** Two pictures of the piece with the marks of its parts, from the front and from behind. */
function whereTheyAre(input: BookInput, width: number, type: TextMeasure): Block {
  const room = { width: (width - 12) / 2, height: 80 };
  const [front, behind] = [ISOMETRIC, ISOMETRIC_BEHIND].map((looking) =>
    letteredPicture(input.setOut, looking, room, type),
  ) as [Drawing, Drawing];
  const height = Math.max(front.height, behind.height);
  const x = width - room.width + (room.width - behind.width) / 2;
  return {
    marks: [
      ...moved(front.marks, (room.width - front.width) / 2, height - front.height),
      ...moved(behind.marks, x, height - behind.height),
      text([x + behind.width / 2, height + 4.5], 'seen from behind', 2.7, {
        anchor: 'middle',
        tone: 'quiet',
      }),
    ],
    height: height + 5,
    before: 5,
  };
}

/** What to buy, what the rack gives, what it costs and how long it takes. */
export function shoppingBlocks(input: BookInput, width: number, type: TextMeasure): Block[] {
  const { shopping } = input;
  const money = (n: number) => `${shopping.currency} ${n.toFixed(2)}`;
  const blocks: Block[] = [heading('To buy', width, type)];
  if (shopping.buy.length === 0) blocks.push(note('Nothing: the rack has it all.', width, type));
  else
    blocks.push(
      ...table(
        [
          { title: 'Item', width: 60 },
          { title: 'Count', width: 22, face: 'semibold' },
          { title: 'Each', width: 20, align: 'end' },
          { title: 'Together', width: 20, align: 'end' },
          { title: 'From', tone: 'quiet' },
        ],
        shopping.buy.map((r): Cell[] => [
          r.what,
          r.unit === undefined ? `${r.count}` : `${r.count} ${r.unit}`,
          r.each === undefined ? 'no price' : money(r.each),
          r.each === undefined ? '' : money(r.each * r.count),
          r.from,
        ]),
        width,
        type,
      ),
    );
  if (shopping.rack.length > 0)
    blocks.push(
      heading('From the rack', width, type),
      ...table(
        [
          { title: 'Item', width: 70 },
          { title: 'Used', width: 44 },
          { title: 'Goes back', tone: 'quiet' },
        ],
        shopping.rack.map((r) => [r.what, r.used, r.left ?? '']),
        width,
        type,
      ),
    );
  const total = shopping.cost.reduce((s, r) => s + r.amount, 0);
  const bold = (words: string): Cell => [{ text: words, face: 'semibold', whole: true }];
  blocks.push(
    heading('Cost', width, type),
    ...table(
      [
        { title: 'Item', width: 70 },
        { title: 'Amount', width: 28, align: 'end' },
        { title: 'How it comes about', tone: 'quiet' },
      ],
      [
        ...shopping.cost.map((r): Cell[] => [r.what, money(r.amount), r.from]),
        [bold('Together'), bold(money(total)), ''],
      ],
      width,
      type,
    ),
  );
  blocks.push(...hours(input, width, type));
  return blocks;
}

/** Work and waiting by stage, added up from the cards. */
function hours(input: BookInput, width: number, type: TextMeasure): Block[] {
  const all = input.build.operations;
  const row = (name: string, of: readonly Operation[], face: 'regular' | 'semibold'): Cell[] => {
    const sum = (kind: 'active' | 'waiting') => of.reduce((s, o) => s + o.minutes[kind], 0);
    const cells = [
      `${of.length}`,
      timeWords(sum('active')),
      sum('waiting') > 0 ? timeWords(sum('waiting')) : '',
    ];
    return [[{ text: name, face }], ...cells.map((words): Cell => [{ text: words, face, whole: true }])];
  };
  return [
    heading('Hours', width, type),
    ...table(
      [
        { title: 'Stage' },
        { title: 'Cards', width: 20, align: 'end' },
        { title: 'Work', width: 34, align: 'end' },
        { title: 'Waiting', width: 34, align: 'end' },
      ],
      [
        ...input.build.stages.map((s) =>
          row(
            s.title,
            all.filter((o) => o.stage === s.id),
            'regular',
          ),
        ),
        row('Together', all, 'semibold'),
      ],
      width,
      type,
    ),
    note(input.minutesFrom, width, type),
  ];
}
