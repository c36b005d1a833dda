import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { PieceDirection, Touch, Turn } from '../build/index.ts';
import { fromMm, toMm } from '../measure/index.ts';
import type { Solids } from '../solid/index.ts';
import {
  type Assembly,
  axesOf,
  axisOf,
  frameOf,
  type Member,
  planesOf,
  seated,
  trimmedLevel,
} from './assembly.ts';
import { onCard as mm, readCard } from './mm-cards.test-aid.ts';
import { plainPiece, shapeOfPiece, type VirtualPiece } from './virtual-piece.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const DIRECTIONS: readonly PieceDirection[] = ['+x', '-x', '+y', '-y', '+z', '-z'];
/** All 24 ways a box can stand square. */
const TURNS: readonly Turn[] = DIRECTIONS.flatMap((length) =>
  DIRECTIONS.filter((w) => w[1] !== length[1]).map((width) => ({ length, width })),
);
const board = (l: number, w: number, t: number) => plainPiece(fromMm(l), fromMm(w), fromMm(t));

function member(mark: string, piece: VirtualPiece, turn: Turn, at: readonly number[] = [0, 0, 0]): Member {
  return { mark, piece, turn, origin: at.map(fromMm) as unknown as Member['origin'] };
}

/** A member's bounding box from its solid, mm. */
function boundsOf(m: Member) {
  return solids.within(
    () => solids.make({ kind: 'moved', body: shapeOfPiece(m.piece), frame: frameOf(m) }).bounds()!,
  );
}

const opposed = (d: PieceDirection) => `${d[0] === '+' ? '-' : '+'}${d[1]}` as PieceDirection;

describe('a board in an assembly', () => {
  test('there are 24 turns, each right-handed', () => {
    expect(TURNS).toHaveLength(24);
    expect(new Set(TURNS.map((t) => axesOf(t).join())).size).toBe(24);
    for (const turn of TURNS) {
      const { x, y, z } = frameOf(member('A', board(3, 2, 1), turn));
      const cross = [x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]];
      expect(cross.map((c) => c + 0)).toEqual(z.map((c) => c + 0));
    }
  });

  test.each(TURNS)('turned $length $width, its planes are those of its solid', (turn) => {
    const m = member('A', board(300, 200, 18), turn, [11, 22, 33]);
    const planes = planesOf(m);
    const { min, max } = boundsOf(m);
    for (const [i, a] of (['x', 'y', 'z'] as const).entries()) {
      expect(toMm(planes[`-${a}`])).toBeCloseTo(min[i]!, 3);
      expect(toMm(planes[`+${a}`])).toBeCloseTo(max[i]!, 3);
    }
  });
});

describe('three touches', () => {
  const turn = fc.constantFrom(...TURNS);
  const gap = fc.option(fc.integer({ min: -400, max: 400 }), { nil: undefined });
  const sign = fc.boolean();

  test('bring a board where they say, in every turn: sides at their gap from the faces', () => {
    fc.assert(
      fc.property(
        turn,
        turn,
        fc.tuple(gap, gap, gap),
        fc.tuple(sign, sign, sign, sign, sign, sign),
        (a, b, gaps, up) => {
          const host = member('A', board(500, 300, 18), a, [7, -20, 40]);
          const touches = (['x', 'y', 'z'] as const).map(
            (axis, i): Touch => ({
              side: `${up[i] ? '+' : '-'}${axis}`,
              of: 'A',
              face: `${up[i + 3] ? '+' : '-'}${axis}`,
              ...(gaps[i] === undefined ? {} : { gap: mm(gaps[i]!) }),
            }),
          ) as unknown as [Touch, Touch, Touch];
          const newcomer: Assembly = { members: [member('B', board(200, 80, 12), b, [999, 0, -5])] };
          const came = seated(newcomer, 'B', { members: [host] }, touches, readCard);
          if (typeof came === 'string') throw new Error(came);
          const [there, mine] = [planesOf(host), planesOf(came.members[0]!)];
          for (const t of touches)
            expect(mine[t.side]).toBe(
              there[t.face] + (t.gap === undefined ? 0 : readCard(t.gap)) * axisOf(t.face).sign,
            );
          expect(came.members[0]!.turn).toEqual(b);
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });

  test('bring a whole assembly, by a named part of it', () => {
    const flat: Turn = { length: '+x', width: '+y' };
    const group: Assembly = {
      members: [member('G1', board(100, 70, 18), flat), member('G2', board(100, 70, 18), flat, [0, 200, 0])],
    };
    const host: Assembly = { members: [member('B1', board(500, 300, 18), flat)] };
    const came = seated(
      group,
      'base',
      host,
      [
        { part: 'G2', side: '+z', of: 'B1', face: '-z' },
        { part: 'G2', side: '-x', of: 'B1', face: '-x', gap: mm(-40) },
        { part: 'G1', side: '-y', of: 'B1', face: '-y', gap: mm(-30) },
      ],
      readCard,
    );
    if (typeof came === 'string') throw new Error(came);
    expect(came.members.map((m) => m.origin.map(toMm))).toEqual([
      [40, 30, -18],
      [40, 230, -18],
    ]);
  });

  test.each<[string, readonly [Touch, Touch, Touch], string]>([
    [
      'that name a part which isn’t there',
      [touch('-x', 'Z'), touch('-y'), touch('-z')],
      'Z is not there yet',
    ],
    ['along one axis twice', [touch('-x'), touch('+x'), touch('-z')], 'don’t fix its place'],
    [
      'of sides that don’t look the same way',
      [touch('-x', 'A', '+y'), touch('-y'), touch('-z')],
      'don’t fix',
    ],
    [
      'by a part that isn’t being set',
      [{ ...touch('-x'), part: 'Q' }, touch('-y'), touch('-z')],
      'Q is not among',
    ],
  ])('%s are refused', (_, touches, why) => {
    const flat: Turn = { length: '+x', width: '+y' };
    const [a, b] = [member('A', board(5, 4, 3), flat), member('B', board(5, 4, 3), flat)];
    expect(seated({ members: [b] }, 'B', { members: [a] }, touches, readCard)).toContain(why);
  });
});

function touch(side: PieceDirection, of = 'A', face: PieceDirection = side): Touch {
  return { side, of, face };
}

describe('trimming level', () => {
  test.each(TURNS)('takes off what stands out, whichever way the strip runs ($length $width)', (turn) => {
    const host = member('A', board(300, 200, 18), { length: '+x', width: '+y' }, [0, 0, 0]);
    // A cube of 40 stands around the middle of the board, out of both its faces.
    const strip = member('J', board(40, 40, 40), turn);
    const came = seated(
      { members: [strip] },
      'J',
      { members: [host] },
      [
        { side: '+y', of: 'A', face: '-y' },
        { side: '-x', of: 'A', face: '-x', gap: mm(5) },
        { side: '-z', of: 'A', face: '-z', gap: mm(9) },
      ],
      readCard,
    );
    if (typeof came === 'string') throw new Error(came);
    const level = trimmedLevel({ members: [host, came.members[0]!] }, 'A', ['+z', '-z', '-x']);
    if (typeof level === 'string') throw new Error(level);
    const [kept, trimmed] = level.members as [Member, Member];
    expect(kept).toBe(host);
    const { min, max } = boundsOf(trimmed);
    expect([...min, ...max].map((x) => Math.round(x * 1000) / 1000 + 0)).toEqual([0, -40, 0, 35, 0, 18]);
    const planes = planesOf(trimmed);
    for (const d of ['+z', '-z', '-x'] as const) expect(planes[d]).toBe(planesOf(host)[d]);
    expect(planes[opposed('-x')]).toBe(fromMm(35));
  });

  test('leaves what is lower, keeps cuts where they were, and misses what isn’t there', () => {
    const flat: Turn = { length: '+x', width: '+y' };
    const host = member('A', board(300, 200, 18), flat);
    const cut = { kind: 'box', min: [20, -1, -1], max: [30, 11, 11] } as const;
    const strip = { ...member('J', { ...board(310, 10, 10), cuts: [cut] }, flat, [-5, 200, 4]) };
    const level = trimmedLevel({ members: [host, strip] }, 'A', ['-x', '+x', '+z', '-z']);
    if (typeof level === 'string') throw new Error(level);
    const trimmed = level.members[1]!;
    expect(boundsOf(trimmed)).toEqual({ min: [0, 200, 4], max: [300, 210, 14] });
    // The notch was 20 from the raw end, 5 of which came off.
    const middle = solids.within(() =>
      solids.make({ kind: 'moved', body: shapeOfPiece(trimmed.piece), frame: frameOf(trimmed) }).centre(),
    );
    const [whole, notch] = [300 * 100, 10 * 100];
    expect(middle[0]).toBeCloseTo((whole * 150 - notch * 20) / (whole - notch), 3);
    expect(trimmedLevel({ members: [host] }, 'Z', ['+x'])).toBe('Z is not there');
  });
});
