import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Frame, Point, Shape, Solids } from '../solid/index.ts';
import { massOf, massTogether } from '../solid/index.ts';
import { openSolids } from './solids-manifold.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function box(min: Point, max: Point): Shape {
  return { kind: 'box', min, max };
}

function volume(shape: Shape): number {
  return solids.within(() => solids.make(shape).volume());
}

const AXES: readonly Point[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

function cross(a: Point, b: Point): Point {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

/** The 24 right-angled ways to stand. */
function orientations(origin: Point): Frame[] {
  const found: Frame[] = [];
  for (const x of AXES)
    for (const y of AXES) {
      const z = cross(x, y);
      if (z.some((c) => c !== 0)) found.push({ origin, x, y, z });
    }
  return found;
}

describe('volumes', () => {
  test('a box is length times width times thickness', () => {
    expect(volume(box([0, 0, 0], [600, 400, 17.6]))).toBeCloseTo(600 * 400 * 17.6, 4);
  });

  test('a cylinder is pi r² h, whatever its size', () => {
    for (const radius of [0.9, 2.5, 4, 17.5, 60, 150])
      for (const to of [
        [0, 0, 30],
        [30, 0, 0],
        [0, -30, 0],
        [10, -20, 20],
      ] as Point[]) {
        const found = volume({ kind: 'cylinder', from: [0, 0, 0], to, radius });
        expect(found / (Math.PI * radius ** 2 * 30)).toBeCloseTo(1, 9);
      }
  });

  test('a taper is a frustum, pi h (R² + Rr + r²) / 3, either way round and down to a point', () => {
    for (const [a, b] of [
      [4.5, 2],
      [2, 4.5],
      [4.5, 0],
      [0, 4.5],
    ] as const)
      for (const to of [
        [0, 0, 3],
        [0, 0, -3],
      ] as Point[]) {
        const found = volume({ kind: 'cylinder', from: [0, 0, 0], to, radius: a, toRadius: b });
        expect(found).toBeCloseTo((Math.PI * 3 * (a * a + a * b + b * b)) / 3, 6);
      }
  });

  test('a taper has its wide end where it was put', () => {
    solids.within(() => {
      const sink = solids.make({ kind: 'cylinder', from: [0, 0, 10], to: [0, 0, 7], radius: 4, toRadius: 0 });
      // The centre of a cone lies a quarter of its height from its base (Archimedes).
      expect(sink.centre()[2]).toBeCloseTo(10 - 3 / 4, 5);
    });
  });

  test('a wedge is half its box', () => {
    const points: Point[] = [
      [0, 0, 0],
      [70, 0, 0],
      [0, 0, 18],
      [0, 500, 0],
      [70, 500, 0],
      [0, 500, 18],
    ];
    expect(volume({ kind: 'hull', points })).toBeCloseTo((70 * 18 * 500) / 2, 4);
  });

  test('a union counts what is shared once', () => {
    const of = [box([0, 0, 0], [10, 10, 10]), box([5, 0, 0], [15, 10, 10])];
    expect(volume({ kind: 'union', of })).toBeCloseTo(1500, 6);
    expect(volume({ kind: 'common', of })).toBeCloseTo(500, 6);
  });

  test('a rabbet and a hole take off what they take off', () => {
    const board = box([0, 0, 0], [600, 400, 18]);
    const rabbet = box([-1, 391, 9], [601, 401, 19]);
    const hole: Shape = { kind: 'cylinder', from: [50, 50, -1], to: [50, 50, 19], radius: 2.5 };
    const left = volume({ kind: 'without', body: board, cuts: [rabbet, hole] });
    expect(left).toBeCloseTo(600 * 400 * 18 - 600 * 9 * 9 - Math.PI * 2.5 ** 2 * 18, 3);
  });

  test('nothing stays nothing', () => {
    for (const shape of [
      box([0, 0, 0], [10, 10, 0]),
      { kind: 'cylinder', from: [0, 0, 0], to: [0, 0, 9], radius: 0 },
      { kind: 'union', of: [] },
    ] as Shape[])
      solids.within(() => {
        const body = solids.make(shape);
        expect([body.isEmpty(), body.volume(), body.bounds(), body.centre(), body.pieces().length]).toEqual([
          true,
          0,
          undefined,
          [0, 0, 0],
          0,
        ]);
      });
  });
});

describe('standing in a frame', () => {
  const board = box([0, 0, 0], [600, 400, 18]);

  test('all 24 right-angled ways put the box where it should be, exactly', () => {
    const ways = orientations([100, 200, 300]);
    expect(ways).toHaveLength(24);
    for (const frame of ways)
      solids.within(() => {
        const bodies = [solids.make({ kind: 'moved', body: board, frame }), solids.make(board).moved(frame)];
        const far = [0, 1, 2].map(
          (i) => frame.origin[i]! + 600 * frame.x[i]! + 400 * frame.y[i]! + 18 * frame.z[i]!,
        );
        for (const body of bodies) {
          expect(body.volume()).toBeCloseTo(600 * 400 * 18, 4);
          expect(body.bounds()).toEqual({
            min: far.map((f, i) => Math.min(f, frame.origin[i]!)),
            max: far.map((f, i) => Math.max(f, frame.origin[i]!)),
          });
        }
      });
  });

  test('a peg fills its hole, made in place or moved there, from either end', () => {
    const peg: Shape = { kind: 'cylinder', from: [0, 0, 0], to: [0, 0, 30], radius: 4 };
    for (const frame of orientations([40, 50, 60]))
      solids.within(() => {
        const end = frame.origin.map((o, i) => o + 30 * frame.z[i]!) as unknown as Point;
        const there = solids.make({ kind: 'moved', body: peg, frame });
        for (const [from, to] of [
          [frame.origin, end],
          [end, frame.origin],
        ] as const) {
          const hole = solids.make({ kind: 'cylinder', from, to, radius: 4 });
          expect(there.without(hole).isEmpty()).toBe(true);
          expect(hole.without(there).isEmpty()).toBe(true);
        }
      });
  });

  test('a mirrored, stretched or skewed frame is refused', () => {
    const make = (x: Point, y: Point, z: Point) => () =>
      solids.make({ kind: 'moved', body: board, frame: { origin: [0, 0, 0], x, y, z } });
    expect(make([1, 0, 0], [0, 1, 0], [0, 0, -1])).toThrow(/right-handed/);
    expect(make([2, 0, 0], [0, 1, 0], [0, 0, 1])).toThrow(/right-handed/);
    expect(make([1, 0, 0], [0.6, 0.8, 0], [0, 0, 1])).toThrow(/right-handed/);
  });
});

describe('how bodies meet', () => {
  test('touching boxes have nothing in common', () => {
    solids.within(() => {
      const a = solids.make(box([0, 0, 0], [600, 400, 17.6]));
      const b = solids.make(box([0, 0, 17.6], [600, 400, 35.2]));
      expect(a.common(b).isEmpty()).toBe(true);
      expect(a.union(b).volume()).toBeCloseTo(600 * 400 * 35.2, 4);
      expect(a.union(b).pieces()).toHaveLength(1);
    });
  });

  test('a touching, a distant and an empty body take nothing away', () => {
    solids.within(() => {
      const a = solids.make(box([0, 0, 0], [600, 400, 17.6]));
      for (const other of [
        box([0, 0, 17.6], [1, 1, 20]),
        box([0, 500, 0], [1, 501, 1]),
        box([5, 5, 5], [5, 9, 9]),
      ]) {
        const left = a.without(solids.make(other));
        expect(left.volume()).toBe(a.volume());
        expect(left.bounds()).toEqual(a.bounds());
        expect(solids.make(other).common(a).volume()).toBe(0);
      }
      const nothing = solids.make(box([5, 5, 5], [5, 9, 9]));
      expect(nothing.without(a).isEmpty()).toBe(true);
      expect(a.union(nothing).volume()).toBe(a.volume());
    });
  });

  test('an overlap of 0.0001 mm is found', () => {
    solids.within(() => {
      const a = solids.make(box([0, 0, 0], [600, 400, 17.6]));
      const b = solids.make(box([0, 0, 17.5999], [600, 400, 35.2]));
      expect(a.common(b).isEmpty()).toBe(false);
      expect(a.common(b).volume()).toBeCloseTo(600 * 400 * 0.0001, 3);
    });
  });

  test('parts set in their places touch to the last bit, wherever the ticks fall', () => {
    const length = fc.integer({ min: 3200, max: 3200 * 900 });
    const way = fc.integer({ min: 0, max: 23 });
    fc.assert(
      fc.property(length, length, length, length, way, (thick, wide, long, at, k) => {
        const mm = (t: number) => t / 3200;
        const part = (t: number) => box([0, 0, 0], [mm(long), mm(wide), mm(t)]);
        const frame = orientations([mm(at), mm(at + wide), mm(-at)])[k]!;
        // The second part stands on the first, its place worked out in ticks.
        const origin = [at, at + wide, -at].map((o, i) => mm(o + thick * frame.z[i]!)) as unknown as Point;
        solids.within(() => {
          const a = solids.make(part(thick)).moved(frame);
          const b = solids.make(part(3200)).moved({ ...frame, origin });
          expect(a.common(b).volume()).toBe(0);
          expect(a.union(b).pieces()).toHaveLength(1);
        });
      }),
      { numRuns: 200, seed: 11 },
    );
  });

  test('a kerf divides a board; the larger piece comes first, equal ones by where they lie', () => {
    solids.within(() => {
      const board = solids.make(box([0, 0, 0], [1000, 400, 18]));
      const cut = (at: number) => board.without(solids.make(box([at, -1, -1], [at + 2, 401, 19])));
      const widths = (at: number) =>
        cut(at)
          .pieces()
          .map((p) => p.bounds()!.max[0] - p.bounds()!.min[0]);
      expect(widths(300)).toEqual([698, 300]);
      expect(widths(900)).toEqual([900, 98]);
      const equal = cut(499).pieces();
      expect(equal.map((p) => p.bounds()!.min[0])).toEqual([0, 501]);
    });
  });

  test('generated boxes meet in the box of their overlap, and a union is the sum less that', () => {
    const at = fc.integer({ min: -3_200_00, max: 3_200_00 });
    const size = fc.integer({ min: 3200, max: 3_200_00 });
    const ticksBox = fc.tuple(at, at, at, size, size, size);
    fc.assert(
      fc.property(ticksBox, ticksBox, (p, q) => {
        const corners = (b: typeof p): [Point, Point] => [
          [b[0] / 3200, b[1] / 3200, b[2] / 3200],
          [(b[0] + b[3]) / 3200, (b[1] + b[4]) / 3200, (b[2] + b[5]) / 3200],
        ];
        const [a, b] = [corners(p), corners(q)];
        const overlap = [0, 1, 2]
          .map((i) => Math.max(0, Math.min(a[1][i]!, b[1][i]!) - Math.max(a[0][i]!, b[0][i]!)))
          .reduce((x, y) => x * y, 1);
        solids.within(() => {
          const [m, n] = [solids.make(box(...a)), solids.make(box(...b))];
          expect(m.common(n).volume()).toBeCloseTo(overlap, 4);
          expect(m.union(n).volume()).toBeCloseTo(m.volume() + n.volume() - overlap, 4);
          expect(m.without(n).volume()).toBeCloseTo(m.volume() - overlap, 4);
        });
      }),
      { numRuns: 100, seed: 7 },
    );
  });
});

describe('mass', () => {
  test('two boards balance between them, nearer the heavier', () => {
    solids.within(() => {
      const birch = { body: solids.make(box([0, 0, 0], [1000, 100, 10])), density: 680 };
      const ash = { body: solids.make(box([0, 0, 10], [1000, 100, 20])), density: 690 };
      const one = massOf(birch);
      expect(one.kg).toBeCloseTo(0.68, 9);
      expect(one.centre.map((c) => Math.round(c * 1e4) / 1e4)).toEqual([500, 50, 5]);
      const both = massTogether([one, massOf(ash)]);
      expect(both.kg).toBeCloseTo(1.37, 9);
      expect(both.centre[2]).toBeCloseTo((0.68 * 5 + 0.69 * 15) / 1.37, 4);
    });
  });
});

describe('skin', () => {
  test('twelve triangles round a box, all facing out', () => {
    solids.within(() => {
      const { positions, triangles } = solids.make(box([10, 20, 30], [110, 70, 48])).mesh();
      expect([positions.length, triangles.length]).toEqual([24, 36]);
      let sixfold = 0;
      for (let t = 0; t < triangles.length; t += 3) {
        const [a, b, c] = [0, 1, 2].map((i) => {
          const at = 3 * triangles[t + i]!;
          return [positions[at]!, positions[at + 1]!, positions[at + 2]!] as const;
        }) as [Point, Point, Point];
        const n = cross(b, c);
        sixfold += a[0] * n[0] + a[1] * n[1] + a[2] * n[2];
      }
      expect(sixfold / 6).toBeCloseTo(100 * 50 * 18, 6);
    });
  });

  test('the same shape gives the same skin each time', () => {
    const shape: Shape = {
      kind: 'without',
      body: box([0, 0, 0], [600, 400, 18]),
      cuts: [{ kind: 'cylinder', from: [37, 9, -1], to: [37, 59, 30], radius: 4.75 }],
    };
    const skin = () => solids.within(() => solids.make(shape).mesh());
    expect(skin()).toEqual(skin());
  });
});

describe('freeing', () => {
  test('hundreds of bodies leave no more memory behind than the first few', () => {
    const piece: Shape = {
      kind: 'without',
      body: box([0, 0, 0], [600, 400, 18]),
      cuts: [...Array(3).keys()].map((i) => ({
        kind: 'cylinder' as const,
        from: [40 * i + 20, 20, -1] as Point,
        to: [40 * i + 20, 20, 19] as Point,
        radius: 4,
      })),
    };
    const round = () =>
      solids.within(() => {
        const a = solids.make(piece);
        const b = a.moved({ origin: [0, 0, 5], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] });
        return a.common(b).volume() + a.union(b).pieces().length + a.centre()[0] + a.mesh().triangles.length;
      });
    for (let i = 0; i < 20; i++) round();
    const before = process.memoryUsage().external;
    for (let i = 0; i < 80; i++) round();
    const after = process.memoryUsage().external;
    expect((after - before) / 2 ** 20).toBeLessThan(8);
  });

  test('within frees what it made, also when it throws, and inner calls keep to themselves', () => {
    const make = () => solids.make(box([0, 0, 0], [1, 1, 1]));
    const kept = make();
    const outer = solids.within(() => {
      const mine = make();
      const inner = solids.within(make);
      expect(() => inner.volume()).toThrow(/freed/);
      expect(mine.volume()).toBeCloseTo(1, 9);
      return mine;
    });
    expect(() => outer.volume()).toThrow(/freed/);
    let seen = kept;
    expect(() =>
      solids.within(() => {
        seen = make();
        throw new Error('on the way');
      }),
    ).toThrow('on the way');
    expect(() => seen.volume()).toThrow(/freed/);
    expect(kept.volume()).toBeCloseTo(1, 9);
    kept.free();
    kept.free();
    expect(() => kept.volume()).toThrow(/freed/);
  });

  test('our own mistakes are told', () => {
    expect(() => solids.make(box([0, 0, 0], [-1, 1, 1]))).toThrow(/inside out/);
    expect(() => solids.make(box([0, 0, 0], [Number.NaN, 1, 1]))).toThrow(/not a point/);
    expect(() => solids.make({ kind: 'cylinder', from: [0, 0, 0], to: [0, 0, 1], radius: -1 })).toThrow(
      /radius/,
    );
    expect(() => solids.make({ kind: 'common', of: [] })).toThrow(RangeError);
    expect(() => massOf({ body: solids.make(box([0, 0, 0], [1, 1, 1])), density: -1 })).toThrow(/density/);
  });

  test('the wasm is taken from where it is said to be', async () => {
    const wasmUrl = fileURLToPath(import.meta.resolve('manifold-3d/manifold.wasm'));
    const opened = await openSolids({ wasmUrl });
    expect(opened.within(() => opened.make(box([0, 0, 0], [2, 2, 2])).volume())).toBeCloseTo(8, 9);
  });
});
