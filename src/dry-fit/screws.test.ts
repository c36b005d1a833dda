import { describe, expect, test } from 'vitest';
import { fromMm } from '../measure/index.ts';
import type { Assembly, Member } from './assembly.ts';
import { onCard as mm, readCard } from './mm-cards.test-aid.ts';
import { driveScrews, type ScrewCard } from './screws.ts';
import { drilled, pocketed, type Worked } from './tool-work.ts';
import { plainPiece, type VirtualPiece } from './virtual-piece.ts';

function worked(done: Worked): VirtualPiece {
  if ('fault' in done) throw new Error(done.fault);
  return done.piece;
}

/** A shelf of 18 mm, pocketed underneath at its right end, against a side of a thickness. */
function shelfAgainstSide(thickness: number, along: readonly number[] = [60, 200]): Assembly {
  const shelf = worked(
    pocketed(
      plainPiece(fromMm(400), fromMm(250), fromMm(18)),
      {
        act: 'pocket',
        workpieces: ['E1'],
        face: 'under',
        edge: 'end',
        from: 'near',
        along: along.map(mm),
        collar: mm(18),
      },
      readCard,
    ),
  );
  const side = plainPiece(fromMm(700), fromMm(250), fromMm(thickness));
  return {
    members: [member('E1', shelf, '+x', '+y', [0, 0, 300]), member('A2', side, '+z', '-y', [400, 250, 0])],
  };
}

type Direction = Member['turn']['length'];
function member(
  mark: string,
  piece: VirtualPiece,
  length: Direction,
  width: Direction,
  at: readonly number[],
): Member {
  return { mark, piece, turn: { length, width }, origin: at.map(fromMm) as unknown as Member['origin'] };
}

const pockets: ScrewCard = {
  part: 'E1',
  mate: 'A2',
  by: 'pockets',
  side: 'end',
  lengthMm: 32,
  diameterMm: 4,
  count: 2,
};
const codes = (of: ReturnType<typeof driveScrews>) => of.faults.map((f) => f.code);

describe('screws through pockets', () => {
  test('of the right length end inside the mate: 32 mm less 18 in the shelf, at 15 degrees', () => {
    const { screws, faults } = driveScrews(shelfAgainstSide(18), pockets, []);
    expect(faults).toEqual([]);
    expect(screws).toHaveLength(2);
    for (const s of screws) {
      // 14 mm go on behind the joint, 14 cos 15 = 13.52 deep; they rise 14 sin 15 = 3.62 from the middle, 309.
      expect(s.tip[0]).toBeCloseTo(400 + 14 * Math.cos(Math.PI / 12), 6);
      expect(s.tip[2]).toBeCloseTo(309 + 14 * Math.sin(Math.PI / 12), 6);
    }
    expect(screws.map((s) => s.tip[1])).toEqual([60, 200]);
  });

  test.each([
    [40, 'screw-comes-through'],
    [36, 'screw-comes-through'],
  ])('of %d mm come through 18 mm, or nearly', (lengthMm, code) => {
    expect(codes(driveScrews(shelfAgainstSide(18), { ...pockets, lengthMm }, []))).toEqual([code, code]);
  });

  test('miss a side that stands elsewhere, or is above', () => {
    const { members } = shelfAgainstSide(18);
    const raised: Assembly = {
      members: [members[0]!, { ...members[1]!, origin: [fromMm(400), fromMm(250), fromMm(330)] }],
    };
    expect(codes(driveScrews(raised, pockets, []))).toEqual(['screw-misses', 'screw-misses']);
  });

  test('meet those that are there already', () => {
    const first = driveScrews(shelfAgainstSide(18), pockets, []);
    const again = driveScrews(shelfAgainstSide(18, [63, 140]), pockets, first.screws);
    expect(codes(again)).toEqual(['screws-meet']);
  });

  test('must be as many as the holes, and no thicker', () => {
    expect(codes(driveScrews(shelfAgainstSide(18), { ...pockets, count: 3 }, []))).toEqual(['no-hole']);
    expect(codes(driveScrews(shelfAgainstSide(18), { ...pockets, diameterMm: 5 }, []))).toContain('no-hole');
    expect(codes(driveScrews(shelfAgainstSide(18), { ...pockets, side: 'start' }, []))).toEqual(['no-hole']);
  });

  test('need both parts there', () => {
    const { members } = shelfAgainstSide(18);
    expect(codes(driveScrews({ members: [members[0]!] }, pockets, []))).toEqual(['workpiece-missing']);
  });
});

/** A thin back screwed to the back edge of a side, with pilots there. */
function backOnSide(pilotMm: number, pilotAt: number): Assembly {
  const back = worked(
    drilled(
      plainPiece(fromMm(700), fromMm(500), fromMm(6)),
      {
        act: 'drill',
        workpieces: ['F1'],
        side: 'show',
        from: 'start',
        at: [[mm(100), mm(9)]],
        diameter: mm(3.5),
      },
      readCard,
    ),
  );
  const side = worked(
    drilled(
      plainPiece(fromMm(700), fromMm(300), fromMm(18)),
      {
        act: 'drill',
        workpieces: ['A1'],
        side: 'far',
        from: 'start',
        at: [[mm(pilotAt), mm(9)]],
        diameter: mm(pilotMm),
        depth: mm(14),
      },
      readCard,
    ),
  );
  // The back's show face looks to the back: its length up, its width to the left.
  return {
    members: [member('F1', back, '+z', '+x', [0, 300, 0]), member('A1', side, '+z', '+y', [18, 0, 0])],
  };
}

const through: ScrewCard = {
  part: 'F1',
  mate: 'A1',
  by: 'holes',
  side: 'show',
  lengthMm: 20,
  diameterMm: 3,
  count: 1,
};

describe('screws through holes', () => {
  test('go into their pilots, and say which holes they fill', () => {
    const { screws, faults } = driveScrews(backOnSide(1.7, 100), through, []);
    expect(faults).toEqual([]);
    expect(screws[0]!.fills.map((w) => w.depth)).toEqual([undefined, 14]);
    expect(screws[0]!.tip[1]).toBeCloseTo(286, 6);
  });

  test.each([
    ['no pilot in line', 1.7, 104],
    ['a pilot as wide as the screw', 3, 100],
  ])('%s is a fault', (_, pilotMm, at) => {
    expect(codes(driveScrews(backOnSide(pilotMm, at), through, []))).toEqual(['no-hole']);
  });

  test('a pilot a millimetre aside is what marking out leaves', () => {
    expect(codes(driveScrews(backOnSide(1.7, 101), through, []))).toEqual([]);
  });
});

describe('screws through a face', () => {
  /** A side with a hole right through, and a shelf end behind it with a pilot; perhaps a box before the side. */
  const through = (before: readonly Member[] = []): Assembly => {
    const at = [[mm(100), mm(309)]] as const;
    const side = worked(
      drilled(
        plainPiece(fromMm(700), fromMm(250), fromMm(18)),
        {
          act: 'drill',
          workpieces: ['A2'],
          side: 'show',
          from: 'start',
          at: [[at[0][1], at[0][0]]],
          diameter: mm(4.5),
        },
        readCard,
      ),
    );
    const shelf = worked(
      drilled(
        plainPiece(fromMm(400), fromMm(250), fromMm(18)),
        {
          act: 'drill',
          workpieces: ['E1'],
          side: 'end',
          from: 'near',
          at: [[mm(150), mm(9)]],
          diameter: mm(2.5),
          depth: mm(35),
        },
        readCard,
      ),
    );
    return {
      members: [
        member('E1', shelf, '+x', '+y', [0, 0, 300]),
        member('A2', side, '+z', '-y', [400, 250, 0]),
        ...before,
      ],
    };
  };
  const card: ScrewCard = {
    part: 'A2',
    mate: 'E1',
    by: 'holes',
    side: 'show',
    lengthMm: 50,
    diameterMm: 4,
    count: 1,
  };

  test('find their pilot', () => {
    expect(driveScrews(through(), card, []).faults).toEqual([]);
  });

  test('can’t be driven where something stands nearer than a drill is long', () => {
    const post = (x: number) =>
      member('D9', plainPiece(fromMm(700), fromMm(250), fromMm(18)), '+z', '-y', [x, 250, 0]);
    expect(codes(driveScrews(through([post(480)]), card, []))).toEqual(['in-the-way']);
    expect(codes(driveScrews(through([post(560)]), card, []))).toEqual([]);
  });
});
