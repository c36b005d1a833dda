import { describe, expect, test } from 'vitest';
import { recordOf, smallJob } from '../../test/generate/small-job.ts';
import { checkJob } from '../job/index.ts';
import { inMm } from '../measure/index.ts';
import { groupParts, joinMarks, partsReport, type SetOut, setOut } from './index.ts';

function small(change: (job: ReturnType<typeof smallJob>) => void = () => {}): SetOut {
  const job = smallJob();
  change(job);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

describe('marks', () => {
  test('three or more in a row are joined', () => {
    expect(joinMarks(['E1'])).toBe('E1');
    expect(joinMarks(['E1', 'E2'])).toBe('E1, E2');
    expect(joinMarks(['E1', 'E2', 'E3', 'E5', 'G1'])).toBe('E1–E3, E5, G1');
    expect(joinMarks(['E9', 'E10', 'E11'])).toBe('E9–E11');
    expect(joinMarks(['E1', 'G2', 'J3'])).toBe('E1, G2, J3');
  });

  test('adding a shelf renames nothing else', () => {
    const marks = (piece: SetOut) => new Map(piece.parts.map((p) => [p.id, p.mark]));
    const before = marks(small());
    const after = marks(
      small((j) => {
        j.design.records.push({ id: 'extra', kind: 'shelf', parent: 'right', at: '500 mm' });
      }),
    );
    // Edging is numbered in the order of its panels, and the new shelf's comes last.
    for (const [id, mark] of before) expect(after.get(id), id).toBe(mark);
  });
});

describe('groups', () => {
  test('hold every part once, and only parts that are alike', () => {
    const piece = small();
    const groups = groupParts(piece);
    expect(groups.flatMap((g) => g.parts.map((p) => p.id)).sort()).toEqual(
      piece.parts.map((p) => p.id).sort(),
    );
    const of = (id: string) => groups.find((g) => g.parts.some((p) => p.id === id))!.parts.map((p) => p.id);
    // Shelves of equal bays are alike, whichever side of the upright they stand on.
    expect(of('shelves/shelf:1')).toEqual(['shelves/shelf:1', 'shelves/shelf:2', 'shelf/shelf']);
    // Mirror images are not alike.
    expect(of('case/left-side')).toEqual(['case/left-side']);
  });

  test('a shelf set back is not like one that is not', () => {
    const piece = small((j) => {
      Object.assign(recordOf(j, 'shelf'), { setback: '0.01 mm' });
    });
    const group = groupParts(piece).find((g) => g.parts.some((p) => p.id === 'shelf/shelf'))!;
    expect(group.parts).toHaveLength(1);
  });
});

test('the parts list has the documented fields, in mm', () => {
  const piece = small();
  const report = inMm(piece.ledger, partsReport(piece)) as {
    overall_mm: unknown;
    parts: Record<string, unknown>[];
  };
  expect(report.overall_mm).toEqual({ width: 1000, height: 800, depth: 350 });
  for (const row of report.parts)
    expect(Object.keys(row)).toEqual(
      expect.arrayContaining(
        'ids mark name material length_mm width_mm thickness_mm count grain features'.split(' '),
      ),
    );
  const shelves = report.parts.find((r) => r.count === 3 && String(r.mark).startsWith('E'))!;
  expect(shelves).toMatchObject({ mark: 'E1–E3', material: 'birch18', length_mm: 448, thickness_mm: 18 });
  expect(report.parts.reduce((n, r) => n + Number(r.count), 0)).toBe(piece.parts.length);
});
