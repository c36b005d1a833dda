import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../solid/index.ts';
import { backToFront } from './back-to-front.ts';
import { convexBox, dot, edgesOf } from './convex.ts';
import { pictureLines } from './hidden-lines.ts';
import type { PartBody } from './part-body.ts';
import { FROM_FRONT, ISOMETRIC, type Looking, project } from './projection.ts';

interface Box {
  readonly min: Point;
  readonly max: Point;
}

function bodies(boxes: readonly Box[]): PartBody[] {
  return boxes.map((b, i) => {
    const body = convexBox(b.min, b.max);
    return { part: `p${i}`, cells: [body], covers: [body], edges: edgesOf(body) };
  });
}

/** Distances along a ray from `from` toward `way` at which it enters and leaves a box (slab by slab). */
function through(box: Box, from: Point, way: Point): readonly [number, number] | undefined {
  let [near, far] = [-Infinity, Infinity];
  for (const axis of [0, 1, 2] as const) {
    const [s, t] = [(box.min[axis] - from[axis]) / way[axis], (box.max[axis] - from[axis]) / way[axis]];
    near = Math.max(near, Math.min(s, t));
    far = Math.min(far, Math.max(s, t));
  }
  return near < far ? [near, far] : undefined;
}

/** A block cut again and again by whole planes, some of its pieces taken away: boxes that never overlap. */
const cutBlock = fc
  .array(
    fc.record({ which: fc.nat(), axis: fc.nat(2), part: fc.integer({ min: 2, max: 8 }), drop: fc.boolean() }),
    {
      minLength: 1,
      maxLength: 9,
    },
  )
  .map((cuts) => {
    let boxes: Box[] = [{ min: [0, 0, 0], max: [100, 60, 80] }];
    const dropped = new Set<Box>();
    for (const c of cuts) {
      const box = boxes[c.which % boxes.length]!;
      const axis = c.axis as 0 | 1 | 2;
      const at = box.min[axis] + ((box.max[axis] - box.min[axis]) * c.part) / 10;
      const max: [number, number, number] = [...box.max];
      const min: [number, number, number] = [...box.min];
      max[axis] = at;
      min[axis] = at;
      const halves: Box[] = [
        { min: box.min, max },
        { min, max: box.max },
      ];
      if (c.drop) dropped.add(halves[0]!);
      boxes = [...boxes.filter((b) => b !== box), ...halves];
    }
    return boxes.filter((b) => !dropped.has(b));
  });

const back = (looking: Looking, x: number, y: number, depth: number): Point => [
  looking.right[0] * x + looking.up[0] * y + looking.eye[0] * depth,
  looking.right[1] * x + looking.up[1] * y + looking.eye[1] * depth,
  looking.right[2] * x + looking.up[2] * y + looking.eye[2] * depth,
];

describe('hidden lines', () => {
  it('shows nine edges of a lone cube, six of them on the rim', () => {
    const lines = pictureLines(bodies([{ min: [0, 0, 0], max: [10, 10, 10] }]), ISOMETRIC);
    const count = (seen: string) => lines.filter((l) => l.seen === seen).length;
    expect([count('rim'), count('edge'), count('hidden')]).toEqual([6, 3, 3]);
  });

  it('breaks the edge of a rail where a post stands before it', () => {
    const rail: Box = { min: [0, 50, 20], max: [100, 60, 30] };
    const post: Box = { min: [40, 0, 0], max: [60, 10, 80] };
    const upper = pictureLines(bodies([rail, post]), FROM_FRONT)
      .filter((l) => l.part === 'p0' && l.from[1] === 30 && l.to[1] === 30 && l.seen !== 'hidden')
      .map((l) => [Math.min(l.from[0], l.to[0]), Math.max(l.from[0], l.to[0])].map((x) => Math.round(x)));
    expect(upper).toContainEqual([0, 40]);
    expect(upper).toContainEqual([60, 100]);
    expect(upper.every(([a, b]) => b! <= 40 || a! >= 60)).toBe(true);
  });

  it('neither loses nor doubles any length of edge', () => {
    fc.assert(
      fc.property(cutBlock, (boxes) => {
        const of = bodies(boxes);
        const lines = pictureLines(of, ISOMETRIC);
        for (const body of of) {
          const whole = body.edges.reduce((s, [p, q]) => {
            const [a, b] = [project(ISOMETRIC, p), project(ISOMETRIC, q)];
            return s + Math.hypot(b[0] - a[0], b[1] - a[1]);
          }, 0);
          const drawn = lines
            .filter((l) => l.part === body.part)
            .reduce((s, l) => s + Math.hypot(l.to[0] - l.from[0], l.to[1] - l.from[1]), 0);
          expect(Math.abs(drawn - whole)).toBeLessThan(0.2);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('calls a line seen where a ray to the eye meets nothing, and hidden where it meets something', () => {
    fc.assert(
      fc.property(cutBlock, (boxes) => {
        const of = bodies(boxes);
        for (const body of of)
          for (const edge of body.edges) {
            const alone = pictureLines(
              [{ ...body, edges: [edge], covers: [] }, ...of.map((b) => ({ ...b, edges: [] }))],
              ISOMETRIC,
            );
            for (const l of alone) {
              const middle = (l.from[0] + l.to[0]) / 2;
              const [a, b] = [project(ISOMETRIC, edge[0]), project(ISOMETRIC, edge[1])];
              const t =
                Math.abs(b[0] - a[0]) > 1e-6
                  ? (middle - a[0]) / (b[0] - a[0])
                  : ((l.from[1] + l.to[1]) / 2 - a[1]) / (b[1] - a[1]);
              const p = edge[0].map((v, i) => v + (edge[1][i as 0]! - v) * t) as unknown as Point;
              const deepest = Math.max(
                0,
                ...boxes.map((box) => {
                  const hit = through(box, p, ISOMETRIC.eye);
                  return hit ? hit[1] - Math.max(hit[0], 0) : 0;
                }),
              );
              if (l.seen === 'hidden') expect(deepest).toBeGreaterThan(0);
              else expect(deepest).toBeLessThan(0.01);
            }
          }
      }),
      { numRuns: 25 },
    );
  });
});

describe('back to front', () => {
  it('paints last, at any point of the picture, what is nearest to the eye there', () => {
    fc.assert(
      fc.property(
        cutBlock,
        fc.array(
          fc.tuple(
            fc.float({ noNaN: true, min: -60, max: 120 }),
            fc.float({ noNaN: true, min: -60, max: 110 }),
          ),
          { minLength: 20, maxLength: 20 },
        ),
        (boxes, points) => {
          const order = backToFront(bodies(boxes), ISOMETRIC).map((c) => Number(c.part.slice(1)));
          expect([...order].sort((a, b) => a - b)).toEqual(boxes.map((_, i) => i));
          for (const [x, y] of points) {
            const from = back(ISOMETRIC, x, y, -1000);
            const hits = boxes.flatMap((box, i) => {
              const hit = through(box, from, ISOMETRIC.eye);
              return hit && hit[1] - hit[0] > 0.5 ? [{ i, far: hit[1] }] : [];
            });
            if (hits.length === 0) continue;
            const nearest = hits.reduce((m, h) => (h.far > m.far ? h : m));
            const painted = hits.reduce((m, h) => (order.indexOf(h.i) > order.indexOf(m.i) ? h : m));
            expect(painted.i).toBe(nearest.i);
          }
        },
      ),
      { numRuns: 80 },
    );
  });

  it('keeps the eye and the picture square to one another', () => {
    for (const looking of [ISOMETRIC, FROM_FRONT])
      for (const [a, b, is] of [
        [looking.right, looking.up, 0],
        [looking.right, looking.eye, 0],
        [looking.eye, looking.eye, 1],
      ] as const)
        expect(dot(a, b)).toBeCloseTo(is, 12);
  });
});
