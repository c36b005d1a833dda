import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../../adaptors/solids-manifold.ts';
import type { Solids } from '../../solid/index.ts';
import type { Member } from '../assembly.ts';
import { board } from '../member.test-aid.ts';
import { tiltsIn } from './tilt-in.ts';
import { mustComeBefore, noWayIn, wayInSentence } from './way-in.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

/** A box without a front: sides, bottom, lid, and a back where it is asked for. */
function box(...more: readonly Member[]): readonly Member[] {
  return [
    board('A1', [0, 0, 0], [18, 300, 400]),
    board('A2', [418, 0, 0], [18, 300, 400]),
    board('B1', [18, 0, 0], [400, 300, 18]),
    board('C1', [18, 0, 382], [400, 300, 18]),
    ...more,
  ];
}
const BACK = board('F1', [0, 300, 0], [436, 6, 400]);
const FRONT = board('D1', [18, 0, 18], [400, 18, 364]);
const shelf = board('E1', [18, 20, 200], [400, 270, 18]);

describe('a way in', () => {
  test('is there from the front, from behind, and not when both are closed', () => {
    expect(noWayIn(solids, box(BACK), [shelf])).toBeUndefined();
    expect(noWayIn(solids, box(FRONT), [shelf])).toBeUndefined();
    const none = noWayIn(solids, box(FRONT, BACK), [shelf]);
    expect(none).toEqual({ from: '-y', blockers: ['D1'] });
    expect(wayInSentence('E1', none!, 'Set D1')).toBe(
      'E1 has no straight way to its place: from the front, where least is before it, D1 stands in the way. It must come before “Set D1”.',
    );
  });

  test('is told by the card before which there is one, however many stand there by now', () => {
    const tongued = board('E1', [12, 20, 200], [412, 280, 18]);
    const stopped = (mark: string, x: number, in_: number) =>
      board(
        mark,
        [x, 0, 0],
        [18, 300, 400],
        [{ kind: 'box', min: [in_, 20, 200], max: [in_ + 6, 301, 218] }],
      );
    const [left, right] = [stopped('A1', 0, 12), stopped('A2', 418, 0)];
    const isBlocked = (there: readonly Member[]) => noWayIn(solids, there, [tongued]) !== undefined;
    // From behind it goes in until the back closes its dados; from the side, before the other side stands.
    expect(mustComeBefore([left, right, BACK, FRONT], isBlocked)).toBe('F1');
    expect(mustComeBefore([left, BACK, right, FRONT], isBlocked)).toBe('A2');
    // With both sides there first, nothing that is set behind them makes the way.
    const shut = board('Q1', [18, 0, 18], [400, 300, 364]);
    expect(mustComeBefore([shut, left, right], () => true)).toBeUndefined();
  });

  test('must be the one that dowels point', () => {
    expect(noWayIn(solids, box(), [shelf], ['-x'])).toEqual({ from: '-x', blockers: ['A1'] });
    expect(noWayIn(solids, [board('B1', [18, 0, 0], [400, 300, 18])], [shelf], ['+z'])).toBeUndefined();
  });

  test('leads along dados that are open in front, and not from before the end of one that is stopped', () => {
    const side = (mark: string, x: number, from: number, in_: number) =>
      board(
        mark,
        [x, 0, 0],
        [18, 300, 400],
        [{ kind: 'box', min: [in_, from, 200], max: [in_ + 6, 301, 218] }],
      );
    const tongued = board('E1', [12, 0, 200], [412, 300, 18]);
    const through = [side('A1', 0, -1, 12), side('A2', 418, -1, 0)];
    expect(noWayIn(solids, through, [tongued], ['-y'])).toBeUndefined();
    const stopped = [side('A1', 0, 20, 12), side('A2', 418, 20, 0)];
    const short = board('E1', [12, 20, 200], [412, 280, 18]);
    expect(noWayIn(solids, stopped, [short], ['-y'])).toEqual({ from: '-y', blockers: ['A1', 'A2'] });
    expect(noWayIn(solids, stopped, [short])).toBeUndefined();
  });
});

describe('a loose shelf', () => {
  const chest = [
    board('A1', [0, 0, 0], [18, 300, 400]),
    board('A2', [418, 0, 0], [18, 300, 400]),
    board('B1', [18, 0, 0], [400, 300, 18]),
    BACK,
    FRONT,
  ];
  const loose = board('M1', [19, 18, 200], [398, 282, 16]);

  test('is tilted past a rail under the lid of a chest', () => {
    const rail = board('T1', [18, 278, 320], [400, 22, 80]);
    expect(noWayIn(solids, [...chest, rail], [loose])).toBeDefined();
    expect(tiltsIn([...chest, rail], [loose])).toBe(true);
  });

  test('is tilted in with the strip that edges it', () => {
    const rail = board('T1', [18, 278, 320], [400, 22, 80]);
    const short = board('M1', [19, 26, 200], [398, 274, 16]);
    const strip = board('J1', [19, 18, 200], [398, 8, 16]);
    expect(tiltsIn([...chest, rail], [short, strip])).toBe(true);
    expect(tiltsIn([...chest, rail], [board('M1', [19, 20, 200], [398, 280, 40]), strip])).toBe(false);
  });

  test('finds no way past a shelf that is fixed above it', () => {
    expect(tiltsIn([...chest, board('E1', [18, 18, 370], [400, 282, 18])], [loose])).toBe(false);
    expect(tiltsIn([...chest, board('E1', [18, 18, 300], [400, 282, 18])], [loose])).toBe(false);
  });
});
