import { describe, expect, test } from 'vitest';
import type { Act } from '../build/index.ts';
import { fromMm } from '../measure/index.ts';
import { onCard as mm, readCard } from './mm-cards.test-aid.ts';
import { parted, sawn } from './sawn.ts';
import { sloped } from './tool-work.ts';
import { plainPiece } from './virtual-piece.ts';

const board = plainPiece(fromMm(600), fromMm(80), fromMm(18));
const crosscut: Extract<Act, { act: 'saw' }> = {
  act: 'saw',
  workpiece: 'B',
  across: 'length',
  at: mm(400),
  keep: 'before',
  yields: [{ name: 'B', turned: false }, undefined],
};
const KERF = fromMm(2);
const codeOf = (result: object) => ('code' in result ? result.code : undefined);

describe('a board that is worked already', () => {
  test.each(['near', 'far'] as const)('is cut to its length with a slope along its %s edge', (edge) => {
    for (const face of ['show', 'under'] as const)
      expect(codeOf(sawn(sloped(board, edge, 45, face), crosscut, readCard, KERF))).toBeUndefined();
  });

  test.each(['start', 'end'] as const)('is no plain board with a mitre at its %s', (edge) => {
    for (const face of ['show', 'under'] as const)
      expect(codeOf(sawn(sloped(board, edge, 45, face), crosscut, readCard, KERF))).toBe('off-the-wood');
  });

  test('is not ripped beside a slope, nor parted a second time', () => {
    const halves = parted(
      board,
      { act: 'part', workpiece: 'B', at: mm(40), angle: 45, yields: ['B', 'C'] },
      readCard,
      KERF,
    );
    if ('code' in halves) throw new Error(halves.sentence);
    const rip = { ...crosscut, across: 'width', at: mm(20) } as const;
    expect(codeOf(sawn(halves[0], rip, readCard, KERF))).toBe('off-the-wood');
  });
});
