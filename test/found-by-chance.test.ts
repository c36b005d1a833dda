import { expect, test } from 'vitest';
import { screwPaths } from '../src/checks/screw-path.ts';
import { checkJob } from '../src/job/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { whatIsWrong } from './build/what-is-wrong.ts';
import { document, piece } from './generate/document.ts';
import { equipped } from './generate/equipped.ts';
import { pinFaults } from './generate/judge-pins.ts';

// Faults that generated designs once showed, each as small as it could be made.

test('cases that share sides, glued one on to the other: each is checked for square behind its own glue-up', async () => {
  const box = { kind: 'case', parent: 'row', board: 'board', joints: 'face-screws' };
  const of = built(
    equipped(
      document('in', '10/16"', [
        {
          id: 'piece',
          kind: 'piece',
          name: 'A piece',
          width: '43 3/4"',
          height: '34 4/16"',
          depth: '19 11/16"',
        },
        { id: 'row', kind: 'group', parent: 'piece', lay: 'across' },
        { ...box, id: 'first' },
        { ...box, id: 'middle', leftSide: 'shared', rightSide: 'shared' },
        { ...box, id: 'last' },
      ]),
    ),
  );
  const at = (id: string) => of.build.operations.findIndex((o) => o.id === id);
  expect(at('case/check-square')).toBeLessThan(at('case/check-square-2'));
  expect(await dryFaults(of)).toEqual([]);
});

test('rows of pins that are moved inward, clear of others, still stand on both sides of a shelf’s middle', () => {
  const read = checkJob(
    document('mm', '18 mm', [
      { id: 'piece', kind: 'piece', name: 'A piece', width: '2223 mm', height: '1403.6 mm', depth: '180 mm' },
      { id: 'case', kind: 'case', parent: 'piece', board: 'board', lid: 'between' },
      { id: 'gap', kind: 'size', value: '3 mm' },
      { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
      { id: 'inside.1', kind: 'opening', parent: 'inside' },
      {
        id: 'inside.1.drawers',
        kind: 'drawers',
        parent: 'inside.1',
        board: 'board',
        bottomBoard: 'thin',
        frontBoard: 'board',
        hang: 'overlay',
        count: 1,
      },
      { id: 'inside.2', kind: 'opening', parent: 'inside', size: '299 mm' },
      { id: 'inside.2.pins', kind: 'pins', parent: 'inside.2' },
      { id: 'inside.3', kind: 'opening', parent: 'inside' },
      { id: 'inside.3.pins', kind: 'pins', parent: 'inside.3', back: '56 mm', setback: '18 mm' },
      { id: 'inside.3.lip', kind: 'edging', parent: 'inside.3.pins', strip: 'lip' },
      { id: 'inside.4', kind: 'opening', parent: 'inside', size: '299 mm' },
      { id: 'lipping', kind: 'edging', parent: 'case', strip: 'lip' },
    ]),
  );
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const drawn = setOut(read.job);
  expect(pinFaults(drawn)).toEqual([]);
});

test('a panel before a hidden space stands behind the lid that is pocket-screwed over it', async () => {
  const of = built(
    equipped(
      document('mm', '18 mm', [
        { id: 'piece', kind: 'piece', name: 'A piece', width: '900 mm', height: '700 mm', depth: '400 mm' },
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'pocket-screws' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'back' },
        { id: 'front', kind: 'opening', parent: 'inside' },
        { id: 'hidden', kind: 'opening', parent: 'inside', size: '45 mm' },
        { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'groove' },
      ]),
    ),
  );
  const at = (id: string) => of.build.operations.findIndex((o) => o.id === id);
  expect(at('D1/set')).toBeGreaterThan(at('C1/set'));
  expect(await dryFaults(of)).toEqual([]);
});

const row = { id: 'row', kind: 'group', parent: 'piece', lay: 'across' };
const inRow = { kind: 'case', parent: 'row', board: 'board' };

/** An opening split across into bays. */
const bays = (parent: string, n: number) => [
  { id: 'inside', kind: 'opening', parent, split: 'across' },
  ...Array.from({ length: n }, (_, i) => ({ id: `bay.${i + 1}`, kind: 'opening', parent: 'inside' })),
];

type Document = ReturnType<typeof document>;

test.each<[string, Document]>([
  [
    'grooves for sliding doors run over the front strip of a base: the case is screwed down on the others',
    document('mm', '16 mm', [
      piece('1115 mm', '1790 mm', '232 mm'),
      row,
      { id: 'under', kind: 'base', parent: 'row', board: 'board', height: '63 mm' },
      { ...inRow, id: 'left' },
      { ...inRow, id: 'right' },
      { id: 'inside', kind: 'opening', parent: 'right' },
      { id: 'slides', kind: 'sliding-doors', parent: 'right', over: ['inside'], board: 'board' },
    ]),
  ],
  [
    'a back that slides into a bay stands before the case is screwed down on a base',
    document(
      'in',
      '12/16"',
      [
        piece('104 15/16"', '16 2/16"', '20 8/16"'),
        row,
        { id: 'under', kind: 'base', parent: 'row', board: 'board', height: '3 2/16"', setback: '1 5/16"' },
        { ...inRow, id: 'left' },
        ...bays('left', 2),
        { id: 'back', kind: 'back', parent: 'bay.2', board: 'thin', fitting: 'groove', setIn: '12/16"' },
        { ...inRow, id: 'right' },
      ],
      { thin: '7/16"' },
    ),
  ],
  [
    'hanging rails on one line have pockets where the next one stands behind the divider',
    document(
      'in',
      '13/16"',
      [
        piece('64 15/16"', '13 4/16"', '15 2/16"'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board' },
        ...bays('case', 4),
        ...[1, 2, 3].map((n) => ({ id: `d${n}`, kind: 'divider', parent: 'inside', board: 'other' })),
        { id: 'back', kind: 'back', parent: 'case', board: 'other', fitting: 'applied' },
        { id: 'hanging', kind: 'hanging', parent: 'case', board: 'other', height: '90 mm' },
      ],
      { other: '14/16"', wood: 'ash-white' },
    ),
  ],
  [
    'kick boards on both sides of a shared side are not both screwed through it',
    document('mm', '15.6 mm', [
      piece('1188 mm', '615 mm', '220.2 mm'),
      row,
      { ...inRow, id: 'left', rightSide: 'shared' },
      { id: 'in-left', kind: 'opening', parent: 'left' },
      {
        id: 'kick.1',
        kind: 'base',
        parent: 'left',
        form: 'toe-kick',
        board: 'other',
        height: '85 mm',
        setback: '34 mm',
      },
      { ...inRow, id: 'right', joints: 'face-screws' },
      { id: 'inside', kind: 'opening', parent: 'right' },
      {
        id: 'kick.2',
        kind: 'base',
        parent: 'right',
        form: 'toe-kick',
        board: 'other',
        height: '85 mm',
        setback: '34 mm',
      },
    ]),
  ],
  [
    'a lid over the sides is screwed down where a back has slid in before it',
    document(
      'mm',
      '26 mm',
      [
        piece('550 mm', '670 mm', '222 mm'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', lid: 'over' },
        { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'groove' },
      ],
      { thin: '10 mm' },
    ),
  ],
  [
    'a shelf slides into a side whose tongue stands in the bottom',
    document(
      'mm',
      '18 mm',
      [
        piece('1350 mm', '799.5 mm', '220 mm'),
        {
          id: 'case',
          kind: 'case',
          parent: 'piece',
          board: 'board',
          joints: 'tongue',
          bottom: 'under',
          lid: 'over',
        },
        ...bays('case', 3),
        { id: 'd1', kind: 'divider', parent: 'inside' },
        { id: 'd2', kind: 'divider', parent: 'inside' },
        { id: 'shelf', kind: 'shelf', parent: 'bay.3' },
        { id: 'lipping', kind: 'edging', parent: 'case', strip: 'lip' },
      ],
      { lip: '3 mm' },
    ),
  ],
  [
    'a line of screws into a top over several cases is moved clear of a panel before a hidden space',
    document('in', '14/16"', [
      piece('60"', '69 11/16"', '25 5/16"'),
      row,
      { id: 'over', kind: 'top', parent: 'row', board: 'board' },
      { ...inRow, id: 'left' },
      { ...inRow, id: 'right' },
      { id: 'inside', kind: 'opening', parent: 'right', split: 'back' },
      { id: 'front', kind: 'opening', parent: 'inside' },
      { id: 'hidden', kind: 'opening', parent: 'inside', size: '2 1/16"' },
    ]),
  ],
  [
    'one line of screws holds a shallow case with a low shelf upon another',
    document(
      'in',
      '1"',
      [
        piece('52 8/16"', '70 4/16"', '24 13/16"'),
        row,
        { ...row, id: 'left', parent: 'row', lay: 'up' },
        { ...inRow, id: 'low', parent: 'left' },
        { id: 'top', kind: 'top', parent: 'low', board: 'other' },
        { ...inRow, id: 'high', parent: 'left', depth: '8 2/16"' },
        { ...row, id: 'right', parent: 'row', lay: 'up' },
        { ...inRow, id: 'other', parent: 'right' },
        { ...inRow, id: 'over-it', parent: 'right', depth: '8 1/16"' },
        { id: 'inside', kind: 'opening', parent: 'high' },
        { id: 'shelf', kind: 'shelf', parent: 'inside', setback: 'depth / 20', at: '2 11/16"' },
        { id: 'door', kind: 'door', parent: 'high', board: 'board', over: ['inside'], hang: 'inset' },
      ],
      { other: '10/16"', wood: 'ash-white' },
    ),
  ],
  [
    'a tongued lid slides in between edged sides that stand in the bottom',
    document(
      'mm',
      '18 mm',
      [
        piece('700 mm', '700 mm', '280 mm'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'tongue', bottom: 'under' },
        { id: 'lipping', kind: 'edging', parent: 'case', strip: 'lip' },
      ],
      { lip: '3 mm' },
    ),
  ],
  [
    'a driver’s bit passes a shelf’s front edge with room for what printed numbers are rounded by',
    document(
      'in',
      '1"',
      [
        piece('89 11/16"', '38 10/16"', '19 11/16"'),
        row,
        { id: 'over', kind: 'top', parent: 'row', board: 'board' },
        { id: 'under', kind: 'base', parent: 'row', board: 'board', height: '3 10/16"', setback: '1 2/16"' },
        { ...inRow, id: 'left' },
        { id: 'inside', kind: 'opening', parent: 'left' },
        { id: 'shelf', kind: 'shelf', parent: 'inside', setback: '12/16"', board: 'other', at: '29"' },
        { id: 'door', kind: 'door', parent: 'left', board: 'board', over: ['inside'], hang: 'inset' },
        { id: 'lipping', kind: 'edging', parent: 'left', strip: 'lip' },
        { ...inRow, id: 'right' },
      ],
      { other: '11/16"', lip: '4/16"' },
    ),
  ],
  [
    'a groove for a back between a divider’s tongues: what each is rounded by adds up in the whole',
    document(
      'in',
      '11/16"',
      [
        piece('78 7/16"', '14 8/16"', '9 7/16"'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'tongue' },
        ...bays('case', 4),
        ...['other', 'board', 'other'].map((board, n) => ({
          id: `d${n}`,
          kind: 'divider',
          parent: 'inside',
          board,
        })),
        {
          id: 'base',
          kind: 'base',
          parent: 'case',
          board: 'other',
          height: '5 13/16"',
          setback: '1 7/16"',
        },
        { id: 'back', kind: 'back', parent: 'bay.3', board: 'thin', fitting: 'groove' },
      ],
      { thin: '6/16"', wood: 'ash-white' },
      '0.5 mm',
    ),
  ],
  [
    'one screw holds a glued foot where a divider over it leaves no place for two',
    document(
      'in',
      '1"',
      [
        piece('94 5/16"', '84 1/16"', '24 15/16"'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
        { id: 'bay.1', kind: 'opening', parent: 'inside', split: 'down' },
        { id: 'low', kind: 'opening', parent: 'bay.1' },
        { id: 'high', kind: 'opening', parent: 'bay.1' },
        { id: 'bay.2', kind: 'opening', parent: 'inside' },
        { id: 'bay.3', kind: 'opening', parent: 'inside', size: '13 6/16"' },
        { id: 'bay.4', kind: 'opening', parent: 'inside', size: '13 2/16"' },
        ...['board', 'board', 'other'].map((board, n) => ({
          id: `d${n}`,
          kind: 'divider',
          parent: 'inside',
          board,
        })),
        { id: 'top', kind: 'top', parent: 'case', board: 'board', overhangSides: '1 9/16"' },
        { id: 'base', kind: 'base', parent: 'case', form: 'feet', strip: 'foot' },
      ],
      { other: '15/16"' },
    ),
  ],
])('%s', async (_, of) => {
  expect(await whatIsWrong(of)).toEqual([]);
});

test('loose shelves under something, behind a fixed front, are told as shut in', async () => {
  expect(
    await whatIsWrong(
      document('mm', '18 mm', [
        piece('800 mm', '700 mm', '400 mm'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'face-screws' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'down' },
        { id: 'low', kind: 'opening', parent: 'inside' },
        { id: 'pins', kind: 'pins', parent: 'low', count: 1 },
        { id: 'high', kind: 'opening', parent: 'inside', size: '100 mm' },
        { id: 'back', kind: 'back', parent: 'case', board: 'other', fitting: 'applied' },
        { id: 'top', kind: 'top', parent: 'case', board: 'board', hinged: true, hinge: 'lid-butt' },
        { id: 'front', kind: 'front', parent: 'case', board: 'other' },
      ]),
    ),
  ).toEqual(['pins.shut-in']);
});

test('a panel at the back of a bay is screwed to its uprights clear of the dados on their far faces', () => {
  const job = built(
    equipped(
      document('mm', '18 mm', [
        piece('900 mm', '760 mm', '400 mm'),
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'dado' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
        { id: 'cables', kind: 'opening', parent: 'inside', split: 'back' },
        { id: 'before', kind: 'opening', parent: 'cables' },
        { id: 'behind', kind: 'opening', parent: 'cables', size: '80 mm' },
        { id: 'books', kind: 'opening', parent: 'inside' },
        { id: 'shelf', kind: 'shelf', parent: 'books' },
      ]),
    ),
  );
  expect(screwPaths({ job: job.job, setOut: job.drawn }).map((s) => s.sentence)).toEqual([]);
});

test('sliding doors in a case that comes out a little narrower than drawn still stand between its sides', async () => {
  const of = built(
    equipped(
      document(
        'mm',
        '17.6 mm',
        [
          piece('1550 mm', '820 mm', '400 mm'),
          { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'dado' },
          { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
          { id: 'left', kind: 'opening', parent: 'inside' },
          { id: 'right', kind: 'opening', parent: 'inside' },
          {
            id: 'doors',
            kind: 'sliding-doors',
            parent: 'case',
            board: 'thin',
            over: ['left', 'right'],
            closes: 'each',
          },
        ],
        { thin: '8.8 mm' },
      ),
    ),
  );
  expect(await dryFaults(of)).toEqual([]);
});
