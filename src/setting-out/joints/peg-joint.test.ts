import { describe, expect, test } from 'vitest';
import { PEGS } from '../../../test/generate/equipped.ts';
import { lotOf, type PlainJob, recordOf, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { BiscuitSlot, Hole } from '../feature.ts';
import { fixingsUsed } from '../hardware.ts';
import type { SetOut } from '../set-out.ts';
import { setOut } from '../set-out-job.ts';

function pieceWith(joints: string, change: (job: PlainJob) => void = () => {}): SetOut {
  const job = smallJob();
  recordOf(job, 'case').joints = joints;
  job.shop.rack.fixings = PEGS;
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

const mm = (piece: SetOut, t: Traced) => toMm(piece.ledger.ticks(t));
const of = (piece: SetOut, id: string) => piece.parts.find((p) => p.id === id)!;
const dowelled = (piece: SetOut, id: string) =>
  of(piece, id).features.filter((f): f is Hole => f.kind === 'hole' && f.use === 'dowel');
const slotted = (piece: SetOut, id: string) =>
  of(piece, id).features.filter((f): f is BiscuitSlot => f.kind === 'biscuit-slot');

describe('dowels', () => {
  const piece = pieceWith('dowels');

  test('in 18 mm boards they are 8 mm, between a third and half as thick (common practice)', () => {
    expect(piece.snags).toEqual([]);
    expect(new Set(fixingsUsed(piece).keys())).toEqual(new Set(['dowel-8']));
  });

  test('holes are 1/16 in deeper than a dowel reaches on either side, and leave 4 mm of the face (common practice; from memory)', () => {
    const [peg] = piece.pegs;
    const [inEnd] = dowelled(piece, 'shelves/shelf:1');
    const [inFace] = dowelled(piece, 'case/left-side');
    expect(mm(piece, inFace!.depth!)).toBe(14);
    expect(mm(piece, peg!.holds[1])).toBeCloseTo(14 - 25.4 / 16, 2);
    expect(mm(piece, inEnd!.depth!) + 14).toBeCloseTo(35 + 25.4 / 8, 0);
    expect(mm(piece, inEnd!.depth!) + 14).toBeGreaterThanOrEqual(35 + 25.4 / 8 - 0.01);
  });

  test('they stand in the middle of the end, at the same places in both parts', () => {
    for (const h of dowelled(piece, 'shelves/shelf:1')) expect(mm(piece, h.at[1])).toBe(9);
    const ends = dowelled(piece, 'case/bottom').filter((h) => h.side === 'start');
    const faces = dowelled(piece, 'case/left-side').filter((h) => h.id.includes('case/bottom'));
    expect(faces.map((h) => mm(piece, h.at[1]))).toEqual(ends.map((h) => mm(piece, h.at[0])));
    expect(new Set(faces.map((h) => mm(piece, h.at[0])))).toEqual(new Set([9]));
  });

  test('nothing is screwed from panel to panel, and all of it is glued', () => {
    const panels = piece.joints.filter((j) => j.hold === 'dowels');
    expect(panels).toHaveLength(9);
    for (const j of panels) expect(j.pegs!.length).toBeGreaterThan(1);
  });

  test('a thinner board takes thinner ones; none that suits is a stop with its cure', () => {
    const thin = pieceWith('dowels', (job) => {
      lotOf(job, 'birch18').thickness = '15 mm';
    });
    expect(new Set(fixingsUsed(thin).keys())).toEqual(new Set(['dowel-6']));
    const none = pieceWith('dowels', (job) => {
      job.shop.rack.fixings = [];
    });
    expect(none.snags.map((s) => s.code)).toContain('pegs.none-suits');
  });

  test('shelves on both sides of a divider at one height have their dowels beside each other', () => {
    const level = pieceWith('dowels', (job) => {
      recordOf(job, 'shelves').count = 1;
      recordOf(job, 'shelf').at = '(left.height - case.thickness) / 2';
    });
    expect(level.snags.filter((s) => s.level === 'stop')).toEqual([]);
    const holes = dowelled(level, 'upright/divider').filter((h) => h.side === 'show' || h.side === 'under');
    const places = (side: string) => holes.filter((h) => h.side === side).map((h) => mm(level, h.at[1]));
    for (const a of places('show'))
      for (const b of places('under')) expect(Math.abs(a - b)).toBeGreaterThanOrEqual(10);
  });
});

describe('biscuits', () => {
  const piece = pieceWith('biscuits');

  test('stand 6 to 8 in apart, 2 in from the ends at least (common practice)', () => {
    expect(piece.snags).toEqual([]);
    const along = slotted(piece, 'case/bottom')
      .filter((s) => s.side === 'start')
      .map((s) => mm(piece, s.at[0]));
    along.slice(1).forEach((at, i) => {
      expect(at - along[i]!).toBeLessThanOrEqual(203.2);
      expect(at - along[i]!).toBeGreaterThanOrEqual(100);
    });
    expect(along[0]).toBeGreaterThanOrEqual(50.8);
  });

  test('a slot takes half a biscuit, and is as wide as the cutter', () => {
    for (const s of slotted(piece, 'case/left-side')) {
      expect(mm(piece, s.depth)).toBeGreaterThanOrEqual(11.5 + 0.5);
      expect(mm(piece, s.kerf)).toBe(4);
      expect(s.run).toBe('width');
    }
  });

  test('biscuits of another thickness than the slot do not serve', () => {
    const thick = pieceWith('biscuits', (job) => {
      job.shop.tools.push({
        id: 'joiner',
        kind: 'biscuit-joiner',
        accuracy: '0.3 mm',
        step: '0.1 mm',
        kerf: '3.2 mm',
        cutter: '100 mm',
      });
    });
    expect(thick.snags.map((s) => s.code)).toContain('pegs.none-suits');
  });
});

test('dividers and shelves whose dowels point two ways whichever comes last are refused', () => {
  const piece = pieceWith('dowels', (job) => {
    job.design.records = job.design.records.filter((r) => !['shelves', 'shelf'].includes(String(r.id)));
    // Cubbies on both sides of a divider: an upright between two shelves, and both of them fixed to it.
    for (const bay of ['left', 'right']) {
      recordOf(job, bay).split = 'down';
      for (const level of ['low', 'middle', 'high'])
        job.design.records.push({
          id: `${bay}-${level}`,
          kind: 'opening',
          parent: bay,
          size: 'equal',
          ...(level === 'middle' ? { split: 'across' } : {}),
        });
      for (const half of ['one', 'two'])
        job.design.records.push({
          id: `${bay}-${half}`,
          kind: 'opening',
          parent: `${bay}-middle`,
          size: 'equal',
        });
    }
  });
  const stop = piece.snags.find((s) => s.code === 'joints.cannot-close');
  expect(stop?.cures[0]?.edits).toEqual([{ record: 'case', field: 'joints', value: 'dado' }]);
});
