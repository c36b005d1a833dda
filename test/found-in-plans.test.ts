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
  [
    'screws find their pilots in a top over three cases: none of them loses a step of the saw',
    document(
      'in',
      '12/16"',
      [
        piece('70 15/16"', '26 2/16"', '8 12/16"'),
        row,
        { id: 'over', kind: 'top', parent: 'row', board: 'board' },
        ...['left', 'middle', 'right'].map((id) => ({ ...inRow, id })),
      ],
      { other: '10/16"' },
      '0.5 mm',
    ),
  ],
  [
    'cases that share a side, under a top: what goes into the sides is in the steps of the saw as well',
    document(
      'in',
      '15/16"',
      [
        piece('43 7/16"', '34 4/16"', '19 11/16"'),
        row,
        { id: 'over', kind: 'top', parent: 'row', board: 'board' },
        { ...inRow, id: 'left', joints: 'stopped-dado' },
        { ...inRow, id: 'middle', joints: 'stopped-dado', rightSide: 'shared' },
        { id: 'lip', kind: 'edging', parent: 'middle', strip: 'lip' },
        { ...inRow, id: 'right', joints: 'stopped-dado' },
        { id: 'lip.right', kind: 'edging', parent: 'right', strip: 'lip' },
      ],
      { lip: '2/16"' },
      '0.5 mm',
    ),
  ],
  [
    'three cases that share sides, two of fixed widths: the last stands where it was drawn',
    document(
      'in',
      '13/16"',
      [
        piece('45"', '70 4/16"', '14 3/16"'),
        row,
        { ...inRow, id: 'left', joints: 'rabbet', rightSide: 'shared' },
        { ...inRow, id: 'middle', joints: 'rabbet', size: '12 1/16"', rightSide: 'shared' },
        { ...inRow, id: 'right', joints: 'rabbet', size: '12 5/16"' },
        { id: 'filler', kind: 'filler', parent: 'row', board: 'board', size: '2 4/16"' },
      ],
      {},
      '0.5 mm',
    ),
  ],
  [
    'a sliding door that closes against the right side is slid against it',
    document(
      'in',
      '12/16"',
      [
        piece('95 3/16"', '16"', '21 4/16"'),
        row,
        { ...inRow, id: 'left', joints: 'rabbet' },
        { ...inRow, id: 'right', joints: 'mitre', inMitres: 'spline', splineBoard: 'spline' },
        { id: 'inside', kind: 'opening', parent: 'right' },
        { id: 'slides', kind: 'sliding-doors', parent: 'right', over: ['inside'], board: 'thin' },
        { id: 'handle', kind: 'handle', parent: 'slides', strip: 'foot', fromEdge: '2 2/16"' },
      ],
      { thin: '3/16"' },
      '0.1 mm',
    ),
  ],
  [
    'doors too small for the saw are cut to their opening by hand',
    document(
      'mm',
      '16.4 mm',
      [
        piece('408 mm', '322 mm', '641.9 mm'),
        one,
        inside,
        { id: 'base', kind: 'base', parent: 'case', board: 'other', height: '112 mm', setback: '41.5 mm' },
        { id: 'slides', kind: 'sliding-doors', parent: 'case', over: ['inside'], board: 'board', count: 3 },
      ],
      { other: '20.1 mm' },
      '0.5 mm',
    ),
  ],
  ...[undefined, '2 1/16"'].map((hidden): [string, ReturnType<typeof document>] => [
    `a panel before a hidden space of ${hidden ?? 'half the depth'} is screwed in when the mitres round its back have set`,
    document(
      'in',
      '11/16"',
      [
        piece('16 2/16"', '50"', '7 13/16"'),
        { ...one, joints: 'mitre' },
        { ...inside, split: 'back' },
        { id: 'front', kind: 'opening', parent: 'inside' },
        { id: 'hidden', kind: 'opening', parent: 'inside', ...(hidden ? { size: hidden } : {}) },
        { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'groove' },
      ],
      { thin: '5/16"' },
    ),
  ]),
  [
    'a groove that stops at both ends is as long as it was drawn',
    document(
      'mm',
      '17 mm',
      [
        piece('2231 mm', '1373 mm', '424 mm'),
        { ...one, joints: 'rabbet', bottom: 'under' },
        ...bays,
        { id: 'top', kind: 'top', parent: 'case', board: 'board', overhangSides: '39.9 mm' },
        {
          id: 'slides',
          kind: 'sliding-doors',
          parent: 'case',
          over: ['left', 'right'],
          board: 'thin',
          tracks: 3,
        },
      ],
      { thin: '7 mm' },
      '1/64 in',
    ),
  ],
  [
    'a case stands against the lid of another, where that comes out beyond its side',
    document(
      'in',
      '13/16"',
      [
        piece('71 1/16"', '60 1/16"', '25 1/16"'),
        row,
        { ...inRow, id: 'left', joints: 'stopped-dado', lid: 'over-right' },
        { id: 'lip', kind: 'edging', parent: 'left', strip: 'lip' },
        { ...inRow, id: 'right' },
      ],
      { strip: '13/16"', taped: true },
      '0.1 mm',
    ),
  ],
  [
    'a case stands against a back that is laid on another, where that comes out beyond its side',
    document(
      'in',
      '13/16"',
      [
        piece('105 13/16"', '57 10/16"', '9 13/16"'),
        row,
        { ...inRow, id: 'left', size: '1.5 shares' },
        { id: 'inside', kind: 'opening', parent: 'left', split: 'down' },
        { id: 'low', kind: 'opening', parent: 'inside' },
        { id: 'high', kind: 'opening', parent: 'inside' },
        { id: 'back', kind: 'back', parent: 'low', board: 'thin', fitting: 'applied' },
        { id: 'stack', kind: 'group', parent: 'row', lay: 'up' },
        { ...inRow, id: 'under', parent: 'stack' },
        { ...inRow, id: 'upon', parent: 'stack' },
      ],
      { thin: '6/16"' },
      '0.5 mm',
    ),
  ],
  [
    'a case stands upon the sides of another, where these come out above the lid between them',
    document(
      'in',
      '1"',
      [
        piece('55 1/16"', '43 13/16"', '8 11/16"'),
        { id: 'stack', kind: 'group', parent: 'piece', lay: 'up' },
        { ...inRow, id: 'under', parent: 'stack' },
        { id: 'inside', kind: 'opening', parent: 'under', split: 'across' },
        ...[1, 2, 3].map((n) => ({ id: `bay.${n}`, kind: 'opening', parent: 'inside' })),
        { ...inRow, id: 'upon', parent: 'stack', size: '1.5 shares' },
      ],
      {},
      '1/64 in',
    ),
  ],
  [
    'a lid with tongues goes into a shared side before dividers slide in under it',
    document(
      'mm',
      '25 mm',
      [
        piece('2614 mm', '1037 mm', '250 mm'),
        row,
        { ...inRow, id: 'left', joints: 'tongue', rightSide: 'shared' },
        { ...inRow, id: 'right', joints: 'tongue' },
        { id: 'inside', kind: 'opening', parent: 'right', split: 'across' },
        ...[1, 2].map((n) => ({ id: `bay.${n}`, kind: 'opening', parent: 'inside' })),
        { id: 'lip', kind: 'edging', parent: 'right', strip: 'lip' },
        { id: 'lip.left', kind: 'edging', parent: 'left', strip: 'lip' },
      ],
      { lip: '4 mm' },
      '0.1 mm',
    ),
  ],
  ...['face-screws', undefined].map((joints): [string, ReturnType<typeof document>] => [
    `a divider of a narrow bay comes when its lid is screwed to a side that two cases share: ${joints ?? 'pocket-screws'}`,
    document(
      'mm',
      '18.7 mm',
      [
        piece('2522 mm', '676 mm', '296.4 mm'),
        row,
        { ...inRow, id: 'left', ...(joints ? { joints } : {}) },
        { id: 'inside', kind: 'opening', parent: 'left', split: 'across' },
        { id: 'wide', kind: 'opening', parent: 'inside' },
        { id: 'narrow', kind: 'opening', parent: 'inside', size: '155 mm' },
        { ...inRow, id: 'right', ...(joints ? { joints } : {}), leftSide: 'shared' },
      ],
      {},
      '1/64 in',
    ),
  ]),
  [
    'a hanging rail in a hidden space is finished before a back closes that',
    document(
      'in',
      '14/16"',
      [
        piece('80 1/16"', '34 4/16"', '17 15/16"'),
        row,
        { ...inRow, id: 'left' },
        { id: 'inside', kind: 'opening', parent: 'left', split: 'back' },
        { id: 'front', kind: 'opening', parent: 'inside' },
        { id: 'hidden', kind: 'opening', parent: 'inside' },
        { id: 'back', kind: 'back', parent: 'left', board: 'thin', fitting: 'rabbet' },
        { id: 'hanging', kind: 'hanging', parent: 'left', board: 'other' },
        { ...inRow, id: 'right' },
      ],
      { thin: '4/16"', other: '14/16"' },
      '1/64 in',
    ),
  ],
])('%s', async (_, of) => {
  expect(await whatIsWrong(of)).toEqual([]);
});
