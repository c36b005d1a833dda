import { expect, test } from 'vitest';
import { whatIsWrong } from './build/what-is-wrong.ts';
import { document, piece } from './generate/document.ts';

// Faults that generated plans once showed when their cards were run, each as small as it could be made.

const one = { id: 'case', kind: 'case', parent: 'piece', board: 'board' };
const row = { id: 'row', kind: 'group', parent: 'piece', lay: 'across' };
const inRow = { kind: 'case', parent: 'row', board: 'board' };
const inside = { id: 'inside', kind: 'opening', parent: 'case' };
const bays = [
  { ...inside, split: 'across' },
  { id: 'left', kind: 'opening', parent: 'inside' },
  { id: 'right', kind: 'opening', parent: 'inside' },
];

test.each<[string, ReturnType<typeof document>]>([
  [
    'what rounding adds to the spaces between fixed shelves doesn’t add up to the last of them',
    document(
      'in',
      '15/16"',
      [
        piece('30"', '84"', '14 15/16"'),
        one,
        inside,
        { id: 'shelf', kind: 'shelf', parent: 'inside', board: 'other', count: 6 },
      ],
      { other: '14/16"' },
    ),
  ],
  [
    'a case stands beside the wider of two upon one another',
    document('in', '10/16"', [
      piece('60"', '40 1/16"', '9"'),
      row,
      { id: 'stack', kind: 'group', parent: 'row', lay: 'up', size: '25 8/16"' },
      { ...inRow, id: 'low', parent: 'stack', joints: 'dado' },
      { ...inRow, id: 'high', parent: 'stack' },
      { ...inRow, id: 'beside' },
    ]),
  ],
  [
    'a filler stands beside the wider of two cases upon one another',
    document('in', '10/16"', [
      piece('51"', '40 1/16"', '9"'),
      row,
      { id: 'stack', kind: 'group', parent: 'row', lay: 'up' },
      { ...inRow, id: 'low', parent: 'stack', joints: 'dado' },
      { ...inRow, id: 'high', parent: 'stack' },
      { id: 'filler', kind: 'filler', parent: 'row', board: 'board' },
    ]),
  ],
  [
    'grooves for sliding doors as deep as half the lid meet the rabbets of its tongues',
    document(
      'in',
      '10/16"',
      [
        piece('43"', '15 15/16"', '22 13/16"'),
        { ...one, joints: 'tongue' },
        inside,
        { id: 'slides', kind: 'sliding-doors', parent: 'case', over: ['inside'], board: 'thin' },
      ],
      { thin: '2/16"' },
      '0.1 mm',
    ),
  ],
  [
    'strips mitred round a flap that is cut to its opening follow it',
    document(
      'mm',
      '18 mm',
      [
        piece('1325 mm', '310.7 mm', '528 mm'),
        one,
        inside,
        {
          id: 'flap',
          kind: 'door',
          parent: 'case',
          board: 'board',
          over: ['inside'],
          hang: 'inset',
          hand: 'above',
        },
        { id: 'edge', kind: 'edging', parent: 'flap', strip: 'lip' },
      ],
      { lip: '3.1 mm' },
    ),
  ],
  [
    'corners on splines are all drawn up in wet glue, whatever stands between them',
    document(
      'mm',
      '23 mm',
      [
        piece('537 mm', '1265 mm', '342.7 mm'),
        { ...one, joints: 'mitre', inMitres: 'spline', splineBoard: 'spline' },
        inside,
        { id: 'trays', kind: 'trays', parent: 'inside', board: 'other' },
      ],
      { other: '19 mm' },
      '1/64 in',
    ),
  ],
  [
    'buttons go into the mortises of a divider that was cut a little short',
    document('mm', '17 mm', [
      piece('2107 mm', '373 mm', '272 mm'),
      one,
      ...bays,
      { id: 'top', kind: 'top', parent: 'case', board: 'planks', moves: 'buttons', buttons: 'foot' },
      { id: 'base', kind: 'base', parent: 'case', board: 'other', height: '118.2 mm' },
    ]),
  ],
  [
    'a divider for trays is pressed down by way of the lid that stands on it dry, two glue-ups before its own',
    document(
      'in',
      '11/16"',
      [
        piece('49 9/16"', '45 11/16"', '22 3/16"'),
        { ...one, joints: 'rabbet' },
        inside,
        { id: 'trays', kind: 'trays', parent: 'inside', board: 'thin' },
        { id: 'slides', kind: 'sliding-doors', parent: 'case', over: ['inside'], board: 'board', tracks: 3 },
      ],
      { thin: '5/16"' },
    ),
  ],
  [
    'a fixed front comes when shelves behind it have set, whose clamps stand in its place',
    document(
      'in',
      '14/16"',
      [
        piece('84 6/16"', '26 5/16"', '24"'),
        { ...one, joints: 'tongue' },
        ...bays,
        { id: 'shelf', kind: 'shelf', parent: 'right' },
        { id: 'back', kind: 'back', parent: 'case', board: 'other', fitting: 'applied' },
        { id: 'top', kind: 'top', parent: 'case', board: 'board', hinged: true, hinge: 'lid-butt' },
        { id: 'front', kind: 'front', parent: 'case' },
      ],
      { other: '12/16"' },
      '0.1 mm',
    ),
  ],
  [
    'a back slides in when the next case is glued on to the side that both share',
    document(
      'in',
      '13/16"',
      [
        piece('71 14/16"', '55 10/16"', '9 1/16"'),
        row,
        { ...inRow, id: 'left' },
        { id: 'back', kind: 'back', parent: 'left', board: 'thin', fitting: 'groove' },
        { ...inRow, id: 'right', joints: 'stopped-dado', leftSide: 'shared' },
        { id: 'inside', kind: 'opening', parent: 'right', split: 'down' },
        { id: 'low', kind: 'opening', parent: 'inside' },
        { id: 'high', kind: 'opening', parent: 'inside' },
        { id: 'own', kind: 'back', parent: 'right', board: 'thin', fitting: 'groove' },
      ],
      { thin: '5/16"' },
      '0.1 mm',
    ),
  ],
  [
    'a screw into a top over several cases keeps clear of the edging of a divider',
    document(
      'in',
      '12/16"',
      [
        piece('94 5/16"', '69"', '9 3/16"'),
        row,
        { id: 'over', kind: 'top', parent: 'row', board: 'board' },
        { ...inRow, id: 'left' },
        { ...inRow, id: 'right' },
        { id: 'inside', kind: 'opening', parent: 'right', split: 'across' },
        ...[1, 2, 3, 4].map((n) => ({ id: `bay.${n}`, kind: 'opening', parent: 'inside' })),
        {
          id: 'slides',
          kind: 'sliding-doors',
          parent: 'right',
          over: ['bay.1', 'bay.2', 'bay.3', 'bay.4'],
          board: 'board',
          tongue: '8 mm',
        },
        { id: 'lipping', kind: 'edging', parent: 'right', strip: 'lip' },
      ],
      { lip: '6/16"' },
      '1/64 in',
    ),
  ],
  ...['none', 'tape'].map((edge): [string, ReturnType<typeof document>] => [
    `a loose shelf goes on edge past a hanging rail, behind a fixed front; on its own edge: ${edge}`,
    document(
      'mm',
      '22 mm',
      [
        piece('327 mm', '884 mm', '183 mm'),
        one,
        inside,
        { id: 'pins', kind: 'pins', parent: 'inside' },
        ...(edge === 'tape' ? [{ id: 'lip', kind: 'edging', parent: 'pins', strip: 'lip' }] : []),
        { id: 'back', kind: 'back', parent: 'case', board: 'other', fitting: 'applied' },
        {
          id: 'top',
          kind: 'top',
          parent: 'case',
          board: 'planks',
          overhangFront: '26 mm',
          hinged: true,
          hinge: 'lid-butt',
        },
        { id: 'front', kind: 'front', parent: 'case' },
        { id: 'hanging', kind: 'hanging', parent: 'case', board: 'other' },
      ],
      { other: '23 mm', lip: '0.6 mm' },
    ),
  ]),
  ...['over', 'over-left', 'over-right'].map((lid): [string, ReturnType<typeof document>] => [
    `a panel before a hidden space is screwed in where a back slides in before a pegged lid: ${lid}`,
    document(
      'in',
      '12/16"',
      [
        piece('12 12/16"', '40"', '12 4/16"'),
        { ...one, joints: 'dowels', lid },
        { ...inside, split: 'back' },
        { id: 'front', kind: 'opening', parent: 'inside' },
        { id: 'hidden', kind: 'opening', parent: 'inside', size: '1 15/16"' },
        { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'groove' },
      ],
      { thin: '6/16"' },
      '0.5 mm',
    ),
  ]),
  [
    'a divider for trays slides in between its shelves before a panel closes the space behind it',
    document(
      'in',
      '14/16"',
      [
        piece('38 5/16"', '59 15/16"', '20 2/16"'),
        one,
        { ...inside, split: 'down' },
        { id: 'low', kind: 'opening', parent: 'inside' },
        { id: 'middle', kind: 'opening', parent: 'inside', split: 'back' },
        { id: 'before', kind: 'opening', parent: 'middle' },
        { id: 'hidden', kind: 'opening', parent: 'middle' },
        { id: 'trays', kind: 'trays', parent: 'before', board: 'other', setback: '1 5/16"' },
        { id: 'high', kind: 'opening', parent: 'inside' },
      ],
      { other: '1"' },
      '0.5 mm',
    ),
  ],
])('%s', async (_, of) => {
  expect(await whatIsWrong(of)).toEqual([]);
});
