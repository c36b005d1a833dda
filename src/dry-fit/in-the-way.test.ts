import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../adaptors/solids-manifold.ts';
import { fromMm } from '../measure/index.ts';
import type { Solids } from '../solid/index.ts';
import type { Member } from './assembly.ts';
import { inTheWay } from './in-the-way.ts';
import { onCard as mm, readCard } from './mm-cards.test-aid.ts';
import { bevelled, rabbeted, type Worked } from './tool-work.ts';
import { plainPiece, type VirtualPiece } from './virtual-piece.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const board = plainPiece(fromMm(400), fromMm(100), fromMm(18));
const lying: Member['turn'] = { length: '+x', width: '+y' };
const at = (mark: string, piece: VirtualPiece, turn: Member['turn'], ...place: number[]): Member => ({
  mark,
  piece,
  turn,
  origin: place.map(fromMm) as unknown as Member['origin'],
});
const worked = (done: Worked): VirtualPiece => {
  if ('fault' in done) throw new Error(done.fault);
  return done.piece;
};
const clashes = (there: Member, came: Member) => inTheWay(solids, { members: [there] }, { members: [came] });

describe('what a part runs into', () => {
  test('nothing, where it only touches, or overlaps by what a clamp takes up', () => {
    expect(clashes(at('A', board, lying, 0, 0, 0), at('B', board, lying, 0, 0, 18))).toEqual([]);
    expect(clashes(at('A', board, lying, 0, 0, 0), at('B', board, lying, 0, 0, 17.5))).toEqual([]);
    expect(clashes(at('A', board, lying, 0, 0, 0), at('B', board, lying, 900, 0, 0))).toEqual([]);
  });

  test('its neighbour, where thin tape goes into it end to end with all its thickness', () => {
    const tape = plainPiece(fromMm(200), fromMm(18), fromMm(0.6));
    const other = at('J2', tape, lying, 199, 0, 0);
    expect(clashes(at('J1', tape, lying, 0, 0, 0), other)).toMatchObject([{ newcomer: 'J2', depthMm: 1 }]);
    expect(clashes(at('J1', tape, lying, -0.5, 0, 0), other)).toEqual([]);
  });

  test('its neighbour, and how far', () => {
    expect(clashes(at('A', board, lying, 0, 0, 0), at('B', board, lying, 0, 0, 16))).toEqual([
      { newcomer: 'B', there: 'A', depthMm: 2 },
    ]);
  });

  test('a back lies in its rabbet, but not in one that is too shallow', () => {
    const back = plainPiece(fromMm(400), fromMm(80), fromMm(6));
    const side = (depth: number) =>
      at(
        'A',
        worked(
          rabbeted(
            board,
            { act: 'rabbet', workpieces: ['A'], edge: 'far', face: 'show', width: mm(40), depth: mm(depth) },
            readCard,
          ),
        ),
        lying,
        0,
        0,
        0,
      );
    expect(clashes(side(6), at('F', back, lying, 0, 60, 12))).toEqual([]);
    expect(clashes(side(3), at('F', back, lying, 0, 60, 12))).toEqual([
      { newcomer: 'F', there: 'A', depthMm: 3 },
    ]);
  });

  test('mitred ends fit into one another; a square one doesn’t', () => {
    const strip = plainPiece(fromMm(400), fromMm(70), fromMm(18));
    const mitred = worked(
      bevelled(
        strip,
        { act: 'bevel', workpieces: ['G'], edge: 'start', at: mm(0), angle: 45, fullFace: 'show' },
        readCard,
      ),
    );
    // On edge: one runs to the right with its show face to the front, the other to the back with its show face to the left.
    const front = at('G1', mitred, { length: '+x', width: '+z' }, 0, 18, 0);
    const left = worked(
      bevelled(
        strip,
        { act: 'bevel', workpieces: ['G'], edge: 'end', at: mm(400), angle: 45, fullFace: 'show' },
        readCard,
      ),
    );
    const side = (piece: VirtualPiece) => at('G2', piece, { length: '-y', width: '+z' }, 18, 400, 0);
    expect(clashes(front, side(left))).toEqual([]);
    expect(clashes(front, side(strip))).toHaveLength(1);
  });
});
