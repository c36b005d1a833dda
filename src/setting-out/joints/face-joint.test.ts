import { describe, expect, test } from 'vitest';
import { type PlainJob, recordOf, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Hole } from '../feature.ts';
import type { SetOut } from '../set-out.ts';
import { setOut } from '../set-out-job.ts';

const SCREWS = [
  { id: 'face-40', kind: 'countersunk', length: '40 mm', diameter: '4 mm', head: '8 mm', have: 0 },
  { id: 'face-50', kind: 'countersunk', length: '50 mm', diameter: '4 mm', head: '8 mm', have: 0 },
  { id: 'face-60', kind: 'countersunk', length: '60 mm', diameter: '4 mm', head: '8 mm', have: 0 },
  { id: 'face-80', kind: 'countersunk', length: '80 mm', diameter: '4 mm', head: '8 mm', have: 0 },
  { id: 'thick-60', kind: 'countersunk', length: '60 mm', diameter: '7 mm', head: '12 mm', have: 100 },
];

function facedWith(change: (job: PlainJob) => void = () => {}): SetOut {
  const job = smallJob();
  recordOf(job, 'case').joints = 'face-screws';
  job.shop.rack.screws.push(...(structuredClone(SCREWS) as never[]));
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

const mm = (piece: SetOut, t: Traced) => toMm(piece.ledger.ticks(t));
const holes = (piece: SetOut, id: string, use: Hole['use'], of: string) =>
  piece.parts
    .find((p) => p.id === id)!
    .features.filter((f): f is Hole => f.kind === 'hole' && f.use === use && f.id.includes(of));

describe('screws through a face', () => {
  const piece = facedWith();
  const joint = piece.joints.find((j) => j.id === 'case/left-side>case/bottom')!;
  const screw = piece.fasteners.find((f) => f.id === joint.fasteners[0])!;

  test('go through the outer part into the middle of the other’s edge', () => {
    expect(piece.snags).toEqual([]);
    expect(joint).toMatchObject({ kind: 'butt', mateSide: 'start', side: 'under' });
    expect(screw).toMatchObject({ through: ['case/left-side', 'case/bottom'], direction: '+x' });
    for (const h of holes(piece, 'case/bottom', 'pilot', 'left-side')) expect(mm(piece, h.at[1])).toBe(9);
  });

  test('stand with two thirds of their length in the second part (common practice), the shortest that do', () => {
    // Sides of 18 mm: 54 mm and more.
    expect(screw.screw).toBe('face-60');
    expect(mm(piece, screw.holds)).toBe(42);
  });

  test('are at most a third as thick as the edge (common practice), though thicker ones lie on the rack', () => {
    expect(piece.fasteners.some((f) => f.screw === 'thick-60')).toBe(false);
  });

  test('on the rack come before those to be bought', () => {
    const owned = facedWith((job) => {
      Object.assign(job.shop.rack.screws.find((s) => s.id === 'face-40')!, { have: 50 });
    });
    const first = owned.joints.find((j) => j.id === 'case/left-side>case/bottom')!.fasteners[0];
    expect(owned.fasteners.find((f) => f.id === first)!.screw).toBe('face-40');
  });

  test('have a pilot of 90 % of the root in dense plywood (NDS 12.1.5, as restated; root 2.5 mm from memory)', () => {
    const without = facedWith((job) => {
      job.shop.rack.bits = [];
    });
    const [pilot] = holes(without, 'case/bottom', 'pilot', 'left-side');
    expect(mm(without, pilot!.diameter)).toBeCloseTo(2.3, 1);
  });

  test('are bored for with the bits that the shop has, where one is within 0.3 mm', () => {
    const owning = facedWith((job) => {
      job.shop.rack.bits = [
        { id: 'two', kind: 'twist', diameter: '2 mm' },
        { id: 'two-half', kind: 'twist', diameter: '2.5 mm' },
      ] as never;
    });
    const [pilot] = holes(owning, 'case/bottom', 'pilot', 'left-side');
    expect(mm(owning, pilot!.diameter)).toBe(2.5);
  });

  test('stay 25 mm and more from a corner of the edge (common practice)', () => {
    for (const h of holes(piece, 'case/bottom', 'pilot', 'left-side')) {
      const width = mm(piece, piece.parts.find((p) => p.id === 'case/bottom')!.width);
      expect(Math.min(mm(piece, h.at[0]), width - mm(piece, h.at[0]))).toBeGreaterThanOrEqual(25);
    }
  });

  test('say whether their heads are seen', () => {
    const sight = (id: string) => piece.joints.find((j) => j.id === id)!.heads!.sight;
    expect(sight('case/left-side>case/bottom')).toBe('seen');
    expect(sight('case/bottom>upright/divider')).toBe('out-of-sight');
  });
});

describe('heads that would be seen', () => {
  const plug = (id: string, diameter: string, length = '8 mm', have = 50) => ({
    id,
    kind: 'plug',
    diameter,
    length,
    have,
  });
  const plugged = (fixings: readonly object[], heads?: string) =>
    facedWith((job) => {
      job.shop.rack.fixings = fixings;
      if (heads) recordOf(job, 'case').heads = heads;
    });
  const side = (piece: SetOut) => piece.joints.find((j) => j.id === 'case/left-side>case/bottom')!;

  test('are plugged where plugs lie on the rack: the narrowest that is as wide as the head, a third of the board deep', () => {
    const piece = plugged([plug('twelve', '12 mm'), plug('six', '6 mm'), plug('eight', '8 mm')]);
    expect(piece.snags).toEqual([]);
    expect(side(piece).heads).toMatchObject({ sight: 'seen', finish: 'plugged' });
    const screw = piece.fasteners.find((f) => f.id === side(piece).fasteners[0])!;
    // 18 mm less 6 leaves 12 under the head: three times that is 36 mm and more.
    expect(screw).toMatchObject({ plug: 'eight', screw: 'face-40' });
    expect(mm(piece, screw.holds)).toBe(28);
    const [hole] = holes(piece, 'case/left-side', 'clearance', 'case/bottom');
    expect(mm(piece, hole!.counterbore!.depth)).toBe(6);
    expect(hole!.countersink).toBeUndefined();
  });

  test('a short plug is sunk less, so that it can be trimmed', () => {
    const piece = plugged([plug('short', '10 mm', '6 mm')]);
    const [hole] = holes(piece, 'case/left-side', 'clearance', 'case/bottom');
    expect(mm(piece, hole!.counterbore!.depth)).toBe(5);
  });

  test('stay countersunk if asked so, and where nobody sees them', () => {
    const fixings = [plug('ten', '10 mm')];
    expect(plugged(fixings, 'countersunk').fasteners.some((f) => f.plug)).toBe(false);
    const below = plugged(fixings).joints.find((j) => j.id === 'case/bottom>upright/divider')!;
    expect(below.heads).toMatchObject({ sight: 'out-of-sight', finish: 'countersunk' });
  });

  test('asked to be plugged, without a plug that suits, stop the plan', () => {
    expect(plugged([], 'plugged').snags.map((s) => s.code)).toContain('plugs.none-suits');
    expect(plugged([plug('thin', '3 mm')], 'plugged').snags.map((s) => s.code)).toContain('plugs.none-suits');
  });
});

describe('a panel that stands right behind another', () => {
  const opposite = (job: PlainJob) => {
    recordOf(job, 'shelves').at = '200 mm';
    delete recordOf(job, 'shelves').count;
    job.design.records.push({ id: 'opposite', kind: 'shelf', parent: 'right', at: '200 mm' });
  };

  test('is held by pocket screws, where there is a jig for them', () => {
    const piece = facedWith(opposite);
    expect(piece.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const held = piece.joints.filter(
      (j) => [j.part, j.mate].includes('opposite/shelf') && j.duty === 'carries',
    );
    expect(held.map((j) => j.hold).sort()).toEqual(['face-screws', 'pocket-screws'].sort());
  });

  test('stops the plan where there is none, and says what to do', () => {
    const piece = facedWith((job) => {
      opposite(job);
      job.shop.tools = job.shop.tools.filter((t) => t.kind !== 'pocket-jig') as never;
    });
    const snag = piece.snags.find((s) => s.code === 'screws.shut-off')!;
    expect(snag.where.record).toBe('opposite');
    expect(snag.cures).toHaveLength(2);
  });
});
