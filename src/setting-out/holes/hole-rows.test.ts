import { describe, expect, test } from 'vitest';
import { cupboard } from '../../../test/doors/door-job.ts';
import { rowFaults } from '../../../test/generate/judge-hole-rows.ts';
import { boxOf } from '../../../test/generate/judge-set-out.ts';
import { type PlainJob, smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { type SetOut, setOut } from '../index.ts';

function withRow(row: Record<string, unknown>, change: (job: PlainJob) => void = () => {}): SetOut {
  const job = smallJob();
  job.design.records.push({ id: 'row', kind: 'holes', diameter: '8 mm', ...row });
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const piece = setOut(read.job);
  if (piece.snags.length === 0) expect(rowFaults(read.job, piece)).toEqual([]);
  return piece;
}

/** The holes of a row by part, in mm along and across it, as features have them. */
function holesOf(piece: SetOut) {
  return piece.parts.flatMap((p) =>
    p.features.flatMap((f) =>
      f.kind === 'hole' && f.use === 'row'
        ? [{ name: p.name, side: f.side, at: f.at.map((t) => piece.ledger.ticks(t) / 3200) }]
        : [],
    ),
  );
}

/** From left to right, mm. */
function extentOf(piece: SetOut, id: string): { readonly min: number; readonly max: number } {
  const opening = piece.openings.find((o) => o.id === id);
  const box = opening
    ? [opening.box.min[0], opening.box.max[0]].map((t) => piece.ledger.ticks(t))
    : piece.parts
        .filter((p) => p.record === id)
        .flatMap((p) => {
          const b = boxOf(piece, p);
          return [b.min[0]!, b.max[0]!];
        });
  return { min: Math.min(...box) / 3200, max: Math.max(...box) / 3200 };
}

const places = (piece: SetOut, k: 0 | 1) => holesOf(piece).map((h) => h.at[k]);

describe('a row of holes by its references', () => {
  const shelf = { parent: 'shelf', fromFront: '50 mm' };
  const bare = withRow(shelf);
  const width = bare.ledger.ticks(bare.parts.find((p) => p.record === 'shelf')!.length) / 3200;

  test('so far from one side, the others a given distance on', () => {
    expect(places(withRow({ ...shelf, count: 3, apart: '32 mm', fromLeft: '40 mm' }), 0)).toEqual([
      40, 72, 104,
    ]);
    expect(
      places(withRow({ ...shelf, count: 3, apart: '32 mm', fromRight: '40 mm' }), 0).map((x) => width - x!),
    ).toEqual([104, 72, 40]);
  });

  test('about the middle', () => {
    const [first, last] = places(withRow({ ...shelf, count: 2, apart: '128 mm' }), 0);
    expect(last! - first!).toBe(128);
    expect((first! + last!) / 2).toBeCloseTo(width / 2, 3);
  });

  test('its middle so far from one side', () => {
    const measured = { ...shelf, count: 3, apart: '32 mm', measured: 'middle' };
    expect(places(withRow({ ...measured, fromLeft: '100 mm' }), 0)).toEqual([68, 100, 132]);
    expect(
      places(withRow({ ...measured, fromRight: '100 mm' }), 0).map((x) => Number((width - x!).toFixed(3))),
    ).toEqual([132, 100, 68]);
  });

  test('about the middle of an opening, a shelf or a divider', () => {
    const row = { parent: 'top', fromFront: '50 mm', count: 2, apart: '60 mm', face: 'above', depth: '6 mm' };
    for (const about of ['left', 'right', 'upright', 'shelf']) {
      const piece = withRow({ ...row, about });
      expect(piece.snags).toEqual([]);
      const top = piece.parts.find((p) => p.record === 'top')!;
      const from = piece.ledger.ticks(top.place.origin[0]) / 3200;
      const [a, b] = places(piece, 0).map((x) => from + x!);
      const { min, max } = extentOf(piece, about);
      expect(b! - a!).toBeCloseTo(60, 3);
      expect((a! + b!) / 2).toBeCloseTo((min + max) / 2, 2);
    }
  });

  test('equally spaced, between two places or from side to side', () => {
    const between = places(withRow({ ...shelf, count: 4, fromLeft: '30 mm', fromRight: '60 mm' }), 0);
    const step = (width - 90) / 3;
    between.forEach((x, i) => expect(x).toBeCloseTo(30 + i * step, 3));
    const even = places(withRow({ ...shelf, count: 2 }), 0);
    even.forEach((x, i) => expect(x).toBeCloseTo(((i + 1) * width) / 3, 3));
  });

  test('in both sides of the case, from the outer faces, as in a mirror', () => {
    const piece = withRow({
      parent: 'case',
      panel: 'left-side',
      mirror: true,
      face: 'left',
      depth: '9 mm',
      lay: 'up',
      count: 3,
      apart: '32 mm',
      fromBelow: '60 mm',
      fromFront: '40 mm',
    });
    expect(piece.snags).toEqual([]);
    const holes = holesOf(piece);
    expect(holes.map((h) => [h.name, h.side])).toEqual(
      ['left side', 'left side', 'left side', 'right side', 'right side', 'right side'].map((n) => [
        n,
        'show',
      ]),
    );
    expect(holes.map((h) => h.at[0])).toEqual([60, 92, 124, 60, 92, 124]);
  });

  test('in a pair of doors the right one mirrors the left', () => {
    const job = cupboard({}, (plain) =>
      plain.design.records.push({
        id: 'pegs',
        kind: 'holes',
        parent: 'bag-doors',
        diameter: '5 mm',
        fromLeft: '60 mm',
        fromBelow: '300 mm',
      }),
    );
    const piece = setOut(job);
    expect(piece.snags).toEqual([]);
    const [left, right] = piece.parts.filter((p) => p.record === 'bag-doors');
    const across = (p: typeof left) =>
      p!.features.flatMap((f) =>
        f.kind === 'hole' && f.use === 'row' ? [piece.ledger.ticks(f.at[1])] : [],
      )[0]!;
    // Widths run to the left, so the near edge of the right door is its right one.
    expect(piece.ledger.ticks(left!.width) - across(left)).toBe(60 * 3200);
    expect(across(right)).toBe(60 * 3200);
  });
});

test.each([
  ['holes.too-deep', { parent: 'top', fromFront: '50 mm', face: 'above', depth: '17 mm' }],
  ['holes.wrong-way', { parent: 'top', fromFront: '50 mm', face: 'left', depth: '9 mm' }],
  ['holes.wrong-way', { parent: 'shelf', lay: 'up', count: 2, apart: '32 mm' }],
  ['holes.meet', { parent: 'shelf', count: 2, apart: '9 mm' }],
  ['holes.off-panel', { parent: 'shelf', fromFront: '8 mm' }],
])('%s: a row that can’t be bored is a stop at its record', (code, row) => {
  const piece = withRow(row);
  expect(piece.snags.map((s) => [s.code, s.where.record])).toEqual([[code, 'row']]);
});

test.each([
  ['design.hole-row', { parent: 'shelf', count: 3, fromLeft: '30 mm' }],
  ['design.hole-row', { parent: 'shelf', apart: '30 mm' }],
  ['design.hole-row', { parent: 'shelf', depth: '8 mm' }],
  ['design.hole-row', { parent: 'shelf', mirror: true }],
  ['design.hole-row', { parent: 'shelf', measured: 'middle', fromLeft: '60 mm' }],
  ['design.hole-row', { parent: 'shelf', measured: 'middle', count: 2, apart: '60 mm' }],
  ['design.hole-row', { parent: 'top', count: 2, about: 'left' }],
  ['design.hole-row', { parent: 'top', about: 'left', fromFront: '40 mm', fromLeft: '60 mm' }],
  ['document.no-such-record', { parent: 'top', about: 'top' }],
  ['design.placed-twice', { parent: 'shelf', fromFront: '40 mm', fromBack: '40 mm' }],
  [
    'design.placed-twice',
    { parent: 'shelf', count: 2, apart: '9 mm', fromLeft: '40 mm', fromRight: '40 mm' },
  ],
])('%s is told before anything is set out', (code, row) => {
  const job = smallJob();
  job.design.records.push({ id: 'row', kind: 'holes', diameter: '8 mm', ...row });
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual([code]);
});

test('a blind hole that would open against a shelf is told so, not as one that goes through', () => {
  const blind = { parent: 'case', panel: 'left-side', depth: '8 mm', face: 'right', lay: 'up' };
  const shelf = bareShelf();
  const { snags } = withRow({ ...blind, count: 1, fromBelow: `${shelf} mm` });
  expect(snags.map((s) => s.sentence)).toEqual([
    '“row”, in the left side, would open against the shelf 1 in left.',
  ]);
});

/** How high the middle of the first shelf stands above the lower end of the left side, mm. */
function bareShelf(): number {
  const piece = withRow({ parent: 'shelf', fromFront: '50 mm' });
  const box = (id: string) => boxOf(piece, piece.parts.find((p) => p.id === id)!);
  const shelf = box('shelves/shelf:1');
  return ((shelf.min[2] + shelf.max[2]) / 2 - box('case/left-side').min[2]) / 3200;
}
