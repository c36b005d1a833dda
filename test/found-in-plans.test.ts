import { expect, test } from 'vitest';
import { whatIsWrong } from './build/what-is-wrong.ts';
import { document, piece } from './generate/document.ts';

// Faults that generated plans once showed when their cards were run, each as small as it could be made.

const one = { id: 'case', kind: 'case', parent: 'piece', board: 'board' };
const row = { id: 'row', kind: 'group', parent: 'piece', lay: 'across' };
const inRow = { kind: 'case', parent: 'row', board: 'board' };
const inside = { id: 'inside', kind: 'opening', parent: 'case' };

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
])('%s', async (_, of) => {
  expect(await whatIsWrong(of)).toEqual([]);
});
