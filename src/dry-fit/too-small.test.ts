import { expect, test } from 'vitest';
import { fromMm } from '../measure/index.ts';
import { tooSmallFor } from './too-small.ts';
import { plainPiece } from './virtual-piece.ts';

const piece = (length: number, width: number) => plainPiece(fromMm(length), fromMm(width), fromMm(18));
const cut = { workpiece: 'B1', across: 'length' } as const;

test('a portable saw needs 200 mm of board to stand on, either way', () => {
  const halves = [piece(90, 60), piece(90, 60)] as const;
  expect(tooSmallFor('circular-saw', piece(199, 180), cut, halves)).toMatch(
    /B1 is too small .* 199 mm where 200 mm/,
  );
  expect(tooSmallFor('circular-saw', piece(120, 200), cut, halves)).toBeUndefined();
});

test('on a mitre saw what lies on one side of the blade must be long enough to hold', () => {
  expect(tooSmallFor('mitre-saw', piece(290, 40), cut, [piece(140, 40), piece(147, 40)])).toMatch(
    /147 mm where 150/,
  );
  expect(tooSmallFor('mitre-saw', piece(290, 40), cut, [piece(40, 40), piece(247, 40)])).toBeUndefined();
});
