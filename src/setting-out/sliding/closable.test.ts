import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closableAtOnce, type Stretch } from './closable.ts';

/** Bays of a width, parted by dividers of 18. */
function bays(count: number, wide: number): Stretch[] {
  return Array.from({ length: count }, (_, i) => [i * (wide + 18), i * (wide + 18) + wide]);
}

/** Doors of one track can't pass one another. */
const byTrack = (width: number, tracks: readonly number[]) => (a: number, b: number) =>
  tracks[a] === tracks[b] ? width : undefined;

const end = (of: readonly Stretch[]) => [0, of.at(-1)![1]] as const;

describe('what can be closed at once', () => {
  test('two doors as wide as a bay and a divider close any two of three equal bays', () => {
    const three = bays(3, 400);
    const { can, cannot } = closableAtOnce(three, end(three), 418, 2, byTrack(418, [0, 1]));
    expect(can).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
    ]);
    expect(cannot).toBeUndefined();
  });

  test('on one track doors wider than a bay can’t stand before two neighbours', () => {
    const three = bays(3, 400);
    expect(closableAtOnce(three, end(three), 450, 2, byTrack(450, [0, 0])).cannot).toEqual([0, 1]);
  });

  test('a handle near the far edge of the door behind leaves every choice, one near its middle does not', () => {
    const three = bays(3, 400);
    const handleAt = (from: number) => () => 418 - from;
    expect(closableAtOnce(three, end(three), 418, 2, handleAt(370)).cannot).toBeUndefined();
    // The front door must stand 218 before it: the two can't stand before neighbours that reach over 18 together.
    expect(closableAtOnce(three, end(three), 418, 2, handleAt(-10)).cannot).toEqual([0, 1]);
  });

  test('doors narrower than a bay close nothing', () => {
    const two = bays(2, 400);
    expect(closableAtOnce(two, end(two), 399, 2, byTrack(399, [0, 1])).can).toEqual([]);
  });

  test('any choice is closed by doors on tracks of their own that reach over the widest bay', () => {
    const widths = fc.array(fc.integer({ min: 200, max: 600 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(widths, (wide) => {
        let x = 0;
        const all = wide.map((w): Stretch => {
          const from = x;
          x += w + 18;
          return [from, from + w];
        });
        const widest = Math.max(...wide);
        const { can, cannot } = closableAtOnce(all, end(all), widest, 2, byTrack(widest, [0, 1]));
        expect(cannot).toBeUndefined();
        expect(can.length).toBe((wide.length * (wide.length - 1)) / 2);
      }),
    );
  });
});
