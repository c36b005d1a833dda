import { expect, test } from 'vitest';
import { whatIsWrong } from './build/what-is-wrong.ts';
import { document, piece } from './generate/document.ts';

// Faults of what closes a space from behind or from the front, which generated plans once showed when their cards were run.

const one = { id: 'case', kind: 'case', parent: 'piece', board: 'board' };
const inside = { id: 'inside', kind: 'opening', parent: 'case', split: 'down' };

test.each<[string, ReturnType<typeof document>]>([
  [
    'sides of a chest that a front stands between are finished before a shelf closes what is under it',
    document(
      'in',
      '12/16"',
      [
        piece('13 3/16"', '33 4/16"', '21 10/16"'),
        one,
        inside,
        { id: 'low', kind: 'opening', parent: 'inside' },
        { id: 'high', kind: 'opening', parent: 'inside', size: '7 12/16"' },
        { id: 'back', kind: 'back', parent: 'case', board: 'other', fitting: 'applied' },
        { id: 'top', kind: 'top', parent: 'case', board: 'planks', hinged: true, hinge: 'lid-butt' },
        { id: 'front', kind: 'front', parent: 'case' },
      ],
      { other: '14/16"' },
      '1/64 in',
    ),
  ],
  [
    'a shelf is screwed to the upright under it before a panel stands where the driver goes',
    document(
      'mm',
      '20 mm',
      [
        piece('1530 mm', '1538 mm', '516.1 mm'),
        one,
        inside,
        { id: 'low', kind: 'opening', parent: 'inside', split: 'across' },
        { id: 'left', kind: 'opening', parent: 'low' },
        { id: 'right', kind: 'opening', parent: 'low', split: 'back' },
        { id: 'front', kind: 'opening', parent: 'right' },
        { id: 'hidden', kind: 'opening', parent: 'right', size: '41 mm' },
        { id: 'high', kind: 'opening', parent: 'inside' },
        { id: 'highest', kind: 'opening', parent: 'inside' },
      ],
      {},
      '0.1 mm',
    ),
  ],
])('%s', async (_, of) => {
  expect(await whatIsWrong(of)).toEqual([]);
});
