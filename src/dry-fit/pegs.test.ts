import { describe, expect, test } from 'vitest';
import { fromMm } from '../measure/index.ts';
import type { Assembly, Member } from './assembly.ts';
import { onCard as mm, readCard } from './mm-cards.test-aid.ts';
import { pegged } from './pegs.ts';
import { biscuitSlotted } from './tool-work.ts';
import { plainPiece } from './virtual-piece.ts';

/** A board 400 by 100 by 18 mm with two slots in the middle of its right end, or where they are put. */
function board(mark: string, at: readonly (readonly [along: number, across: number])[]): Member {
  const worked = biscuitSlotted(
    plainPiece(fromMm(400), fromMm(100), fromMm(18)),
    {
      act: 'biscuit-slot',
      workpieces: [mark],
      side: 'end',
      run: 'width',
      from: 'near',
      at: at.map(([along, across]) => [mm(along), mm(across)] as const),
      depth: mm(12),
      cutter: mm(100),
      kerf: mm(4),
    },
    readCard,
  );
  if ('fault' in worked) throw new Error(worked.fault);
  return { mark, piece: worked.piece, turn: { length: '+x', width: '+y' }, origin: [0, 0, 0] };
}

const EVEN = [
  [35, 9],
  [65, 9],
] as const;

/** Two boards, end to end, the second turned round. */
function ends(first: readonly (readonly [number, number])[]): Assembly {
  const other = board('B', EVEN);
  const turned = { ...other, turn: { length: '-x', width: '-y' } as const };
  return { members: [board('A', first), { ...turned, origin: [fromMm(800), fromMm(100), 0] }] };
}

const card = { part: 'A', mate: 'B', kind: 'biscuit', acrossMm: 23, thickMm: 4, count: 2 };
const faults = (first: readonly (readonly [number, number])[]) =>
  pegged(ends(first), card, new Set()).faults.map((f) => f.sentence);

describe('biscuits in their slots', () => {
  test('give along a slot', () => {
    expect(faults(EVEN)).toEqual([]);
    expect(faults([[38, 9], EVEN[1]])).toEqual([]);
  });

  test('bind where one slot of a row lies aside of the others', () => {
    expect(faults([[35, 12], EVEN[1]])).toEqual([
      'The biscuits between A and B are further apart in one than in the other.',
    ]);
  });
});
