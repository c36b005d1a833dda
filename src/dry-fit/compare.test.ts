import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../adaptors/solids-manifold.ts';
import { fromMm } from '../measure/index.ts';
import type { Shape, Solids } from '../solid/index.ts';
import { frameOf, type Member } from './assembly.ts';
import { compare, type DrawnPart } from './compare.ts';
import { Hollows } from './hollows.ts';
import { onCard as mm, readCard } from './mm-cards.test-aid.ts';
import { drilled, grooved, rabbeted, sloped } from './tool-work.ts';
import { plainPiece, shapeOfPiece, type VirtualPiece } from './virtual-piece.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

const HOLES = [60, 150, 300] as const;

/** A board with a rabbet along its far edge and holes that are nowhere symmetrical. */
function board(length = 400, width = 200, holes: readonly number[] = HOLES, rabbetWide = 9): VirtualPiece {
  let piece = plainPiece(fromMm(length), fromMm(width), fromMm(18));
  for (const done of [
    () =>
      rabbeted(
        piece,
        { act: 'rabbet', workpieces: ['A'], edge: 'far', face: 'show', width: mm(rabbetWide), depth: mm(6) },
        readCard,
      ),
    () =>
      drilled(
        piece,
        {
          act: 'drill',
          workpieces: ['A'],
          side: 'show',
          from: 'start',
          at: holes.map((x) => [mm(x), mm(40)] as const),
          diameter: mm(5),
        },
        readCard,
      ),
  ]) {
    const result = done();
    if ('fault' in result) throw new Error(result.fault);
    piece = result.piece;
  }
  return piece;
}

const standing = (
  piece: VirtualPiece,
  x = 0,
  turn: Member['turn'] = { length: '+x', width: '+y' },
): Member => ({
  mark: 'A',
  piece,
  turn,
  origin: [fromMm(x), 0, 0] as unknown as Member['origin'],
});
const shapeOf = (m: Member): Shape => ({ kind: 'moved', body: shapeOfPiece(m.piece), frame: frameOf(m) });
const DRAWING: DrawnPart = { mark: 'A', shape: shapeOf(standing(board())) };
/** Something else that is as drawn, and from which places are told. */
const anchor: Member = { ...standing(plainPiece(fromMm(50), fromMm(50), fromMm(18)), -100), mark: 'Z' };

/** A board with a groove along it that runs into deeper dados across it: one hollow. */
function crossed({ groove = 6, deep = 4, dados = [100, 250] }): VirtualPiece {
  let piece = plainPiece(fromMm(400), fromMm(200), fromMm(18));
  const cut = (edge: 'start' | 'far', wide: number, depth: number, at: readonly number[]) => {
    const channels = at.map((x) => (wide > 6 ? [mm(x), mm(x + wide - 6)] : [mm(x)]));
    const done = grooved(
      piece,
      { act: 'groove', workpieces: ['A'], edge, face: 'show', bit: mm(6), depth: mm(depth), channels },
      readCard,
    );
    if ('fault' in done) throw new Error(done.fault);
    piece = done.piece;
  };
  cut('far', groove, deep, [20]);
  cut('start', 12, 8, dados);
  return piece;
}

/** A board with a rabbet at its end and a groove along it in the other face, which between them take its whole thickness. */
function halved({ rabbet = 9, deep = 9, long = 12 }): VirtualPiece {
  const act = { workpieces: ['A'], depth: mm(rabbet), width: mm(long) };
  const done = rabbeted(
    plainPiece(fromMm(400), fromMm(200), fromMm(18)),
    { act: 'rabbet', edge: 'start', face: 'show', ...act },
    readCard,
  );
  if ('fault' in done) throw new Error(done.fault);
  const grooves = grooved(
    done.piece,
    {
      act: 'groove',
      workpieces: ['A'],
      edge: 'far',
      face: 'under',
      bit: mm(6),
      depth: mm(deep),
      channels: [[mm(20)], [mm(40)]],
    },
    readCard,
  );
  if ('fault' in grooves) throw new Error(grooves.fault);
  return grooves.piece;
}

function faults(made: Member, drawing = DRAWING): string[] {
  const built = { members: [anchor, made] };
  const drawn = [{ mark: 'Z', shape: shapeOf(anchor) }, drawing];
  return compare(new Hollows(solids), built, drawn, 0.5).faults.map((f) => `${f.code}: ${f.sentence}`);
}

describe('what was built against what was drawn', () => {
  test('the same part passes, with what a saw’s step leaves', () => {
    expect(faults(standing(board()))).toEqual([]);
    expect(faults(standing(board(400.4, 199.6)))).toEqual([]);
  });

  test.each<[string, Member, string]>([
    ['a missing hole', standing(board(400, 200, [60, 150])), 'lacks 1 of'],
    ['a hole too many', standing(board(400, 200, [60, 150, 300, 350])), 'has 1 cuts or holes'],
    ['a hole 4 mm off', standing(board(400, 200, [64, 150, 300])), 'lacks 1 of'],
    ['a rabbet 1 mm wider', standing(board(400, 200, HOLES, 10)), 'lacks 1 of'],
    ['a part too long', standing(board(401)), '1 mm too large'],
    ['a part too narrow', standing(board(400, 198)), '2 mm too small'],
    [
      'other stock',
      standing({ ...board(), size: [fromMm(400), fromMm(200), fromMm(17.8)] }),
      '0.2 mm too small',
    ],
    ['a raw edge', standing({ ...board(), raw: [0, 0, fromMm(10), 0] }), 'raw edge'],
  ])('%s', (_, made, told) => {
    const found = faults(made);
    expect(found.length).toBeGreaterThan(0);
    expect(found.join('\n')).toContain('part-differs: A ');
    expect(found.join('\n')).toContain(told);
  });

  test('a mirrored part: the same size, its holes from the other end', () => {
    const found = faults(
      standing(
        board(
          400,
          200,
          HOLES.map((x) => 400 - x),
        ),
      ),
    );
    expect(found.join('\n')).toContain('lacks');
  });

  test('a part turned end for end or back to front', () => {
    const turned: Member = {
      ...standing(board(), 400, { length: '-x', width: '-y' }),
      origin: [fromMm(400), fromMm(200), 0 as never],
    };
    expect(faults(turned).join('\n')).toContain('part-differs');
  });

  test.each([
    ['a groove 1.5 mm deeper', { deep: 5.5 }],
    ['a groove 2 mm wider', { groove: 8 }],
    ['a dado 3 mm aside', { dados: [100, 253] }],
  ])('%s, where channels run into one another', (_, made) => {
    const drawing = { mark: 'A', shape: shapeOf(standing(crossed({}))) };
    expect(faults(standing(crossed({})), drawing)).toEqual([]);
    expect(faults(standing(crossed({ dados: [100.4, 250.4] })), drawing)).toEqual([]);
    expect(faults(standing(crossed(made)), drawing).join()).toContain('lacks 1 of the cuts');
  });

  test('cuts from both faces that just meet, or just don’t', () => {
    const drawing = { mark: 'A', shape: shapeOf(standing(halved({}))) };
    for (const rounded of [{ rabbet: 9.05 }, { rabbet: 8.95 }, { deep: 9.1 }, { deep: 8.9 }]) {
      expect(faults(standing(halved(rounded)), drawing)).toEqual([]);
      const over = { mark: 'A', shape: shapeOf(standing(halved(rounded))) };
      expect(faults(standing(halved({})), over)).toEqual([]);
    }
    for (const wrong of [{ rabbet: 10 }, { rabbet: 8 }, { deep: 10 }, { rabbet: 9.05, long: 14 }])
      expect(faults(standing(halved(wrong)), drawing).join()).toContain('lacks');
  });

  test('a slope that a rabbet runs into, sawn 4 degrees too steep or too flat', () => {
    const mitred = (angle: number) => {
      let piece = board();
      for (const edge of ['start', 'end'] as const) piece = sloped(piece, edge, angle, 'under');
      return standing(piece);
    };
    const drawing = { mark: 'A', shape: shapeOf(mitred(45)) };
    expect(faults(mitred(45), drawing)).toEqual([]);
    expect(faults(mitred(45.5), drawing)).toEqual([]);
    for (const angle of [41, 49])
      expect(faults(mitred(angle), drawing).join()).toContain('lacks 1 of the cuts');
  });

  test('a plain part with its show face to the other side', () => {
    const plain = plainPiece(fromMm(400), fromMm(200), fromMm(18));
    const over: Member = {
      ...standing(plain, 0, { length: '-x', width: '+y' }),
      origin: [fromMm(400), 0, fromMm(18)] as unknown as Member['origin'],
    };
    const drawing = { mark: 'A', shape: shapeOf(standing(plain)) };
    expect(faults(standing(plain), drawing)).toEqual([]);
    expect(faults(over, drawing)).toEqual([
      'part-differs: A shows the wrong face: its show face looks the other way.',
    ]);
  });

  test('a part that stands elsewhere, or is not there', () => {
    expect(faults(standing(board(), 3))).toEqual(['part-misplaced: A stands 3 mm from where it was drawn.']);
    expect(compare(new Hollows(solids), { members: [anchor] }, [DRAWING], 0.5).faults).toMatchObject([
      { code: 'part-missing', on: 'A' },
    ]);
  });

  test('a box may be off by a step from what it was set beside: a drawer from its case, a case from the one before', () => {
    const other = { ...plainPiece(fromMm(60), fromMm(50), fromMm(18)) };
    const before = (off: number): Member => ({
      ...standing(other, off - 200),
      mark: 'Y',
      box: { nth: 1, beside: [0] },
    });
    const faultsOf = (off: number, beside: readonly number[]) => {
      const box = { ...standing(board(), 3), box: { nth: 2, beside } };
      const built = { members: [anchor, before(off), box] };
      const drawn = [
        { mark: 'Z', shape: shapeOf(anchor) },
        { mark: 'Y', shape: shapeOf(standing(other, -200)) },
        DRAWING,
      ];
      return compare(new Hollows(solids), built, drawn, 0.5).faults.map((f) => f.sentence);
    };
    const astray = ['The box that A belongs to stands 3 mm from where it was drawn.'];
    expect(faultsOf(0, [0])).toEqual(astray);
    expect(faultsOf(0, [1])).toEqual(astray);
    expect(faultsOf(1.5, [1])).toEqual([]);
    expect(faultsOf(1.5, [0, 1])).toEqual([]);
    expect(faultsOf(1.5, [0])).toEqual(astray);
  });

  test('tells how much wood is lacking and left over', () => {
    const { parts } = compare(new Hollows(solids), { members: [standing(board(400.4))] }, [DRAWING], 0.5);
    expect(parts[0]!.surplus).toBeCloseTo(0.4 * 200 * 18, 0);
    // The rabbet is longer by as much as the board, which is wood the drawing has no more of.
    expect(parts[0]!.missing).toBeCloseTo(0.4 * 9 * 6, 0);
  });
});
