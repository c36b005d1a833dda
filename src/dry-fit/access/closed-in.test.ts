import { describe, expect, test } from 'vitest';
import { board } from '../member.test-aid.ts';
import { closedIn } from './closed-in.ts';

/** A box 436 mm wide, 300 deep and 400 high, open in front; a back closes it. */
const OPEN = [
  board('A1', [0, 0, 0], [18, 300, 400]),
  board('A2', [418, 0, 0], [18, 300, 400]),
  board('B1', [18, 0, 0], [400, 300, 18]),
  board('C1', [18, 0, 382], [400, 300, 18]),
  board('F1', [0, 300, 0], [436, 6, 400]),
];
/** An upright panel inside, its front so far behind the front of the box, as high as is said. */
const panel = (behind: number, high: number) => board('D1', [18, behind, 18], [400, 12, high]);

describe('faces that no hand reaches', () => {
  test('are none in a box that is open in front', () => {
    expect(closedIn(OPEN)).toEqual([]);
  });

  test('are those before a closed space; a panel that only ends in it does not count', () => {
    expect(closedIn([...OPEN, panel(200, 364)])).toEqual(['F1', 'D1']);
  });

  test('count by their larger part: sides and back of a shallow box are closed in by its front', () => {
    expect(closedIn([...OPEN, panel(20, 364)])).toEqual(['A1', 'A2', 'B1', 'C1', 'F1', 'D1']);
  });

  test('are reached through a gap that lets a flat hand in, and not through a narrower one', () => {
    expect(closedIn([...OPEN, panel(200, 364 - 45)])).toEqual([]);
    expect(closedIn([...OPEN, panel(200, 364 - 35)])).toEqual(['F1', 'D1']);
  });

  test('are not those of a gap too narrow for any hand', () => {
    expect(closedIn([...OPEN, panel(265, 364)])).toEqual([]);
  });
});
