import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Act } from '../build/index.ts';
import { fromMm } from '../measure/index.ts';
import type { Point, Solids } from '../solid/index.ts';
import { onCard as mm, readCard } from './mm-cards.test-aid.ts';
import { bevelled, drilled, grooved, notched, pocketed, rabbeted, type Worked } from './tool-work.ts';
import { plainPiece, shapeOfPiece, type VirtualPiece } from './virtual-piece.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const [L, W, T] = [400, 120, 18] as const;
const board = plainPiece(fromMm(L), fromMm(W), fromMm(T));
type Of<K extends Act['act']> = Omit<Extract<Act, { act: K }>, 'act' | 'workpieces'>;

const rabbet = (a: Of<'rabbet'>) => rabbeted(board, { act: 'rabbet', workpieces: ['B'], ...a }, readCard);
const groove = (a: Of<'groove'>) => grooved(board, { act: 'groove', workpieces: ['B'], ...a }, readCard);
const notch = (a: Of<'notch'>) => notched(board, { act: 'notch', workpieces: ['B'], ...a }, readCard);
const pocket = (a: Of<'pocket'>, on = board) =>
  pocketed(on, { act: 'pocket', workpieces: ['B'], ...a }, readCard);
const drill = (a: Of<'drill'>) => drilled(board, { act: 'drill', workpieces: ['B'], ...a }, readCard);
const bevel = (a: Of<'bevel'>, on = board) =>
  bevelled(on, { act: 'bevel', workpieces: ['B'], ...a }, readCard);

function pieceOf(worked: Worked): VirtualPiece {
  if ('fault' in worked) throw new Error(worked.fault);
  return worked.piece;
}

/** What was taken from the box that a piece fills: volume, and the box it lay in. */
function taken(piece: VirtualPiece): { volume: number; min: Point; max: Point } {
  return solids.within(() => {
    const box = solids.make(shapeOfPiece({ ...piece, cuts: [] }));
    const gone = box.without(solids.make(shapeOfPiece(piece)));
    const { min, max } = gone.bounds()!;
    return { volume: gone.volume(), min, max };
  });
}

function near(p: Point, q: Point, within = 0.05): void {
  for (const i of [0, 1, 2]) expect(Math.abs(p[i]! - q[i]!)).toBeLessThanOrEqual(within);
}

describe('a rabbet', () => {
  test.each([
    ['far', 'show', [0, W - 9, T - 6], [L, W, T]],
    ['far', 'under', [0, W - 9, 0], [L, W, 6]],
    ['near', 'show', [0, 0, T - 6], [L, 9, T]],
    ['near', 'under', [0, 0, 0], [L, 9, 6]],
    ['start', 'show', [0, 0, T - 6], [9, W, T]],
    ['end', 'under', [L - 9, 0, 0], [L, W, 6]],
  ] as const)('along the %s edge, out of the %s face', (edge, face, min, max) => {
    const gone = taken(pieceOf(rabbet({ edge, face, width: mm(9), depth: mm(6) })));
    near(gone.min, min);
    near(gone.max, max);
    expect(gone.volume).toBeCloseTo((edge === 'far' || edge === 'near' ? L : W) * 9 * 6, 3);
  });

  test('stopped at both ends', () => {
    const stopped = { edge: 'far', face: 'show', width: mm(9), depth: mm(6) } as const;
    const gone = taken(pieceOf(rabbet({ ...stopped, from: mm(50), before: mm(L - 350) })));
    expect(gone.volume).toBeCloseTo(300 * 9 * 6, 3);
    near([gone.min[0], gone.max[0], 0], [50, 350, 0]);
  });

  test('stopped before it begins is a fault', () => {
    const stopped = { edge: 'far', face: 'show', width: mm(9), depth: mm(6) } as const;
    expect(rabbet({ ...stopped, from: mm(50), before: mm(L - 40) })).toHaveProperty('fault');
  });

  test.each([
    [0, 6],
    [9, 0],
    [9, T],
    [W, 6],
    [-1, 6],
  ])('%d wide and %d deep can’t be', (width, depth) => {
    expect(rabbet({ edge: 'far', face: 'show', width: mm(width), depth: mm(depth) })).toHaveProperty('fault');
  });
});

describe('a hole', () => {
  const round = (radius: number) => Math.PI * radius ** 2;

  test.each([
    ['show', 'start', [100, 30], [100, 30, T]],
    ['show', 'end', [100, 30], [L - 100, 30, T]],
    ['under', 'start', [100, 30], [100, 30, 0]],
    ['near', 'start', [100, 9], [100, 0, 9]],
    ['near', 'end', [100, 9], [L - 100, 0, 9]],
    ['far', 'start', [100, 9], [100, W, 9]],
    ['start', 'near', [40, 9], [0, 40, 9]],
    ['end', 'far', [40, 9], [L, W - 40, 9]],
  ] as const)('in the %s side, counted from the %s', (side, from, [a, b], mouth) => {
    const piece = pieceOf(drill({ side, from, at: [[mm(a), mm(b)]], diameter: mm(4), depth: mm(12) }));
    const gone = taken(piece);
    expect(Math.abs(gone.volume / (round(2) * 12) - 1)).toBeLessThan(0.01);
    expect(piece.ways).toMatchObject([{ kind: 'hole', side, at: mouth, depth: 12, diameter: 4 }]);
    // The mouth lies on the side, in the middle of the hole, and the hole runs inward from it.
    const axis = { start: 0, end: 0, near: 1, far: 1, under: 2, show: 2 }[side];
    for (const i of [0, 1, 2])
      if (i !== axis) expect((gone.min[i]! + gone.max[i]!) / 2).toBeCloseTo(mouth[i]!, 1);
    expect(gone.max[axis]! - gone.min[axis]!).toBeCloseTo(12, 1);
    expect([gone.min[axis]!, gone.max[axis]!].some((x) => Math.abs(x - mouth[axis]!) < 0.05)).toBe(true);
  });

  test('right through, with a countersink of 90 degrees', () => {
    const at = [[mm(60), mm(60)]] as const;
    const gone = taken(
      pieceOf(drill({ side: 'show', from: 'start', at, diameter: mm(4), countersink: mm(9) })),
    );
    // A cone frustum from radius 4.5 to 2 is 2.5 deep at 90 degrees; below it a cylinder.
    const sink = (Math.PI * 2.5 * (4.5 ** 2 + 4.5 * 2 + 2 ** 2)) / 3;
    expect(Math.abs(gone.volume / (sink + round(2) * (T - 2.5)) - 1)).toBeLessThan(0.01);
    near([gone.min[0], gone.min[1], gone.min[2]], [60 - 4.5, 60 - 4.5, 0], 0.1);
  });

  test.each([
    ['beyond the end', 'show', [L + 1, 30], undefined],
    ['half over the edge', 'show', [100, 1], undefined],
    ['out of the face of an edge', 'near', [100, 1], 12],
    ['blind, but deeper than the wood', 'show', [100, 30], T],
  ] as const)('%s is a fault', (_, side, [a, b], depth) => {
    const hole = { side, from: 'start', at: [[mm(a), mm(b)]], diameter: mm(4) } as const;
    expect(drill(depth === undefined ? hole : { ...hole, depth: mm(depth) })).toHaveProperty('fault');
  });
});

describe('a pocket', () => {
  const lean = (15 * Math.PI) / 180;

  test.each([
    ['start', 'near', 'under', 30, [0, 30, T / 2], [-1, 0, 1]],
    ['start', 'near', 'show', 30, [0, 30, T / 2], [-1, 0, -1]],
    ['end', 'far', 'under', 30, [L, W - 30, T / 2], [1, 0, 1]],
    ['near', 'start', 'show', 90, [90, 0, T / 2], [0, -1, -1]],
    ['far', 'end', 'under', 90, [L - 90, W, T / 2], [0, 1, 1]],
  ] as const)('at the %s edge, from the %s, in the %s face', (edge, from, face, along, at, way) => {
    const piece = pieceOf(pocket({ edge, from, face, along: [mm(along)], collar: mm(T) }));
    const [w] = piece.ways;
    near(w!.at, at);
    // The screw leaves through the middle of the edge, leaning 15 degrees away from the face that is bored.
    near(
      w!.along,
      way.map((s, i) => s * (i === 2 ? Math.sin(lean) : Math.cos(lean))) as unknown as Point,
      1e-9,
    );
    expect(w!.seat).toBe(T);
    const gone = taken(piece);
    // The head's bore breaks out of the face that was bored, and nothing out of the other.
    expect(face === 'show' ? gone.max[2] : gone.min[2]).toBeCloseTo(face === 'show' ? T : 0, 2);
    expect(face === 'show' ? gone.min[2] : T - gone.max[2]).toBeGreaterThan(3);
    // A bar cut slantwise by a plane is as large as if cut square where its axis is: shank 18 long, then the bore
    // from the seat to where its axis meets the face, 9 / sin 15 from the edge.
    const whole = Math.PI * 2 ** 2 * T + Math.PI * 4.75 ** 2 * (T / 2 / Math.sin(lean) - T);
    expect(Math.abs(gone.volume / whole - 1)).toBeLessThan(0.02);
  });

  test('a collar set for a thicker board comes out above the middle', () => {
    const piece = pieceOf(
      pocket({ edge: 'start', from: 'near', face: 'show', along: [mm(30)], collar: mm(22) }),
    );
    expect(piece.ways[0]!.at[2]).toBeCloseTo(11, 6);
    expect(piece.ways[0]!.seat).toBe(22);
  });

  test.each([-1, 2, W - 2, W + 10])('%d mm along an edge it lies off the wood', (along) => {
    expect(
      pocket({ edge: 'start', from: 'near', face: 'show', along: [mm(along)], collar: mm(T) }),
    ).toHaveProperty('fault');
  });
});

describe('a mitre', () => {
  const wedge = (W * T * T) / 2;

  test.each([
    ['end', 'show', [300 - T, 0, 0], [300, W, T]],
    ['end', 'under', [300 - T, 0, 0], [300, W, T]],
    ['start', 'show', [0, 0, 0], [T, W, T]],
    ['start', 'under', [0, 0, 0], [T, W, T]],
  ] as const)('at the %s, the %s face whole', (edge, fullFace, min, max) => {
    const at = mm(edge === 'end' ? 300 : 100);
    const piece = pieceOf(bevel({ edge, at, angle: 45, fullFace }));
    expect(piece.size).toEqual([fromMm(300), fromMm(W), fromMm(T)]);
    const gone = taken(piece);
    expect(gone.volume).toBeCloseTo(wedge, 1);
    near(gone.min, min);
    near(gone.max, max);
    // The wedge's middle lies a third of the way from the face that was cut back, and from the old end.
    const centre = solids.within(() => {
      const box = solids.make(shapeOfPiece({ ...piece, cuts: [] }));
      return box.without(solids.make(shapeOfPiece(piece))).centre();
    });
    expect(centre[2]).toBeCloseTo(fullFace === 'show' ? T / 3 : (2 * T) / 3, 1);
    expect(centre[0]).toBeCloseTo(edge === 'end' ? 300 - T / 3 : T / 3, 1);
  });

  test('two make a strip with both tips on the face that stays whole', () => {
    const first = pieceOf(bevel({ edge: 'start', at: mm(6), angle: 45, fullFace: 'show' }));
    const both = pieceOf(bevel({ edge: 'end', at: mm(350), angle: 45, fullFace: 'show' }, first));
    expect(both.size[0]).toBe(fromMm(350));
    expect(taken(both).volume).toBeCloseTo(2 * wedge, 1);
  });

  test('at 30 degrees takes thickness times its tangent', () => {
    const piece = pieceOf(bevel({ edge: 'end', at: mm(300), angle: 30, fullFace: 'show' }));
    expect(taken(piece).volume).toBeCloseTo((W * T * T * Math.tan(Math.PI / 6)) / 2, 1);
  });

  test('off the wood, or along the grain, is a fault', () => {
    expect(bevel({ edge: 'end', at: mm(L + 1), angle: 45, fullFace: 'show' })).toHaveProperty('fault');
    expect(bevel({ edge: 'start', at: mm(-1), angle: 45, fullFace: 'show' })).toHaveProperty('fault');
    expect(bevel({ edge: 'near', at: mm(10), angle: 45, fullFace: 'show' })).toHaveProperty('fault');
  });
});

describe('a groove', () => {
  const set = { bit: mm(12), depth: mm(6) };

  test.each([
    ['start', 'show', [50, 0, T - 6], [62, W, T], W],
    ['end', 'under', [L - 62, 0, 0], [L - 50, W, 6], W],
    ['near', 'under', [0, 50, 0], [L, 62, 6], L],
    ['far', 'show', [0, W - 62, T - 6], [L, W - 50, T], L],
  ] as const)('one pass, so far from the %s edge, out of the %s face', (edge, face, min, max, run) => {
    const gone = taken(pieceOf(groove({ edge, face, ...set, channels: [[mm(50)]] })));
    near(gone.min, min);
    near(gone.max, max);
    expect(gone.volume).toBeCloseTo(run * 12 * 6, 3);
  });

  test('two passes make it as wide as the bit and what the fence was moved by', () => {
    const gone = taken(
      pieceOf(groove({ edge: 'start', face: 'show', ...set, channels: [[mm(50), mm(52.7)]] })),
    );
    expect(gone.volume).toBeCloseTo(W * 14.7 * 6, 3);
  });

  test('passes further apart than the bit is wide leave a ridge', () => {
    const piece = pieceOf(groove({ edge: 'start', face: 'show', ...set, channels: [[mm(50), mm(65)]] }));
    expect(taken(piece).volume).toBeCloseTo(W * 24 * 6, 3);
  });

  test.each([
    ['near', [50, 11, T - 6], [62, W, T]],
    ['far', [50, 0, T - 6], [62, W - 11, T]],
  ] as const)('stopped 11 from the %s edge', (from, min, max) => {
    const gone = taken(
      pieceOf(
        groove({ edge: 'start', face: 'show', ...set, channels: [[mm(50)]], stop: { from, at: mm(11) } }),
      ),
    );
    near(gone.min, min);
    near(gone.max, max);
  });

  test('off the wood, too deep, or stopped beyond it, is a fault', () => {
    const at = { edge: 'start', face: 'show' } as const;
    expect(groove({ ...at, ...set, channels: [[mm(L - 5)]] })).toHaveProperty('fault');
    expect(groove({ ...at, bit: mm(12), depth: mm(T), channels: [[mm(50)]] })).toHaveProperty('fault');
    expect(groove({ ...at, ...set, channels: [[mm(50)]], stop: { from: 'near', at: mm(W) } })).toHaveProperty(
      'fault',
    );
  });
});

describe('a notch', () => {
  test.each([
    ['start', 'near', [0, 0, 0], [6, 11, T]],
    ['end', 'near', [L - 6, 0, 0], [L, 11, T]],
    ['start', 'far', [0, W - 11, 0], [6, W, T]],
    ['end', 'far', [L - 6, W - 11, 0], [L, W, T]],
  ] as const)('out of the %s at the %s edge', (end, edge, min, max) => {
    const gone = taken(pieceOf(notch({ end, edge, length: mm(6), width: mm(11) })));
    near(gone.min, min);
    near(gone.max, max);
    expect(gone.volume).toBeCloseTo(6 * 11 * T, 3);
  });

  test('larger than the board is a fault', () => {
    expect(notch({ end: 'start', edge: 'near', length: mm(L), width: mm(11) })).toHaveProperty('fault');
  });
});
