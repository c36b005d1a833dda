import { describe, expect, test } from 'vitest';
import { fromMm } from '../../measure/index.ts';
import type { Member } from '../assembly.ts';
import { plainPiece } from '../virtual-piece.ts';
import { driverMeets } from './driver.ts';

/** An upright panel 18 mm thick whose left face is at x, 600 mm high and 300 mm deep. */
function panel(mark: string, x: number, foot = 0, high = 600): Member {
  return {
    mark,
    piece: plainPiece(fromMm(high), fromMm(300), fromMm(18)),
    turn: { length: '+z', width: '-y' },
    origin: [x, 300, foot].map(fromMm) as unknown as Member['origin'],
  };
}

/** A screw whose head is in the right face of a panel at 0..18, driven to the left, in the middle of it. */
const own = panel('A1', 0);
const meets = (...others: Member[]) => driverMeets([own, ...others], own, [18, 150, 300], [-1, 0, 0]);

describe('a driver behind a screw', () => {
  test('has room where nothing stands', () => {
    expect(meets()).toBeUndefined();
  });

  // The shortest: a plain bit of 15 mm under an angled head of 77, its body in a hand beside it.
  test.each([
    [80, 'D1'],
    [88, 'D1'],
    [95, undefined],
    [300, undefined],
  ])('needs a little over 90 mm: %d mm to the next panel', (room, met) => {
    expect(meets(panel('D1', 18 + room))).toBe(met);
  });

  test('has a body as well as an axis: a shelf just beside the screw stops it', () => {
    // A block as long as the driver, above the screw: 10 mm beside its axis, or 30.
    const beside = (by: number) => ({
      ...panel('E1', 0),
      piece: plainPiece(fromMm(400), fromMm(300), fromMm(18)),
      turn: { length: '+x', width: '+y' } as const,
      origin: [18, 0, 300 + by].map(fromMm) as unknown as Member['origin'],
    });
    expect(meets(beside(10))).toBe('E1');
    expect(meets(beside(30))).toBeUndefined();
  });

  test('needs a side on which a hand holds it', () => {
    // A tube round the axis, 80 mm wide and high: the body goes in, the grip doesn't.
    const wall = (
      mark: string,
      at: readonly [number, number, number],
      size: readonly [number, number, number],
    ) =>
      ({
        mark,
        piece: plainPiece(fromMm(size[0]), fromMm(size[1]), fromMm(size[2])),
        turn: { length: '+x', width: '+y' },
        origin: at.map(fromMm) as unknown as Member['origin'],
      }) satisfies Member;
    const tube = [
      wall('T1', [18, 110, 340], [400, 80, 10]),
      wall('T2', [18, 110, 250], [400, 80, 10]),
      wall('T3', [18, 190, 250], [400, 10, 100]),
      wall('T4', [18, 100, 250], [400, 10, 100]),
    ];
    expect(meets(...tube)).toMatch(/^T/);
    expect(meets(...tube.slice(0, 3))).toBeUndefined();
  });
});
