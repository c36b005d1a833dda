import { describe, expect, test } from 'vitest';
import { cupboard } from '../../../test/doors/door-job.ts';
import { HANDLE_STRIP } from '../../../test/doors/handle-strip.ts';
import { handleFaults } from '../../../test/generate/judge-handles.ts';
import { boxOf } from '../../../test/generate/judge-set-out.ts';
import type { JobDocument } from '../../job/index.ts';
import { type SetOut, setOut } from '../index.ts';

function jobWithHandles(
  handle: Record<string, unknown> = {},
  lengths: Readonly<Record<string, string>> = {},
  more: readonly Record<string, unknown>[] = [],
): JobDocument {
  return cupboard({}, (job) => {
    for (const [id, length] of Object.entries({ 'flat-4x30': '30 mm', 'flat-4x35': '35 mm', ...lengths }))
      job.shop.rack.screws.push({ id, kind: 'countersunk', length, diameter: '4 mm', head: '8 mm' });
    job.shop.rack.lots.push(HANDLE_STRIP);
    job.design.records.push(...more);
    job.design.records.push({ id: 'grip', kind: 'handle', parent: 'bag-doors', strip: 'oak', ...handle });
  });
}

function withHandles(...wishes: Parameters<typeof jobWithHandles>): SetOut {
  return setOut(jobWithHandles(...wishes));
}

const mm = (piece: SetOut, t: Parameters<SetOut['ledger']['ticks']>[0]) => piece.ledger.ticks(t) / 3200;

describe('shop-made handles', () => {
  const piece = withHandles();
  const handles = piece.parts.filter((p) => p.record === 'grip');

  test('one for each door of a pair, mirrored: 40 mm from the edges that open', () => {
    expect(piece.snags).toEqual([]);
    expect(handleFaults(jobWithHandles(), piece)).toEqual([]);
    const [left, right] = piece.parts.filter((p) => p.record === 'bag-doors').map((p) => boxOf(piece, p));
    const [one, other] = handles.map((p) => boxOf(piece, p));
    const middle = (b: typeof one) => (b!.min[0] + b!.max[0]) / 2 / 3200;
    expect(left!.max[0] / 3200 - middle(one)).toBe(40);
    expect(middle(other) - right!.min[0] / 3200).toBe(40);
  });

  test('are held by the longest screw that comes through neither: 4 x 30, 17.8 mm of it in the door', () => {
    const screws = piece.fasteners.filter((f) => f.through.includes(handles[0]!.id));
    // 35 mm would leave 2.8 mm of 37.8: less than the 3 mm that stay before a face.
    expect(screws.map((f) => [f.screw, mm(piece, f.holds)])).toEqual([
      ['flat-4x30', expect.closeTo(12.2, 3)],
      ['flat-4x30', expect.closeTo(12.2, 3)],
    ]);
    expect(withHandles({}, { 'flat-4x30': '18 mm', 'flat-4x35': '40 mm' }).snags[0]).toMatchObject({
      code: 'handles.no-screw',
      where: { record: 'grip' },
    });
  });

  test('stay 10 diameters from the end of the grain (NDS), which a short one has no room for', () => {
    const codes = (handle: Record<string, unknown>) => withHandles(handle).snags.map((s) => s.code);
    expect(codes({ length: '110 mm' })).toEqual([]);
    expect(codes({ length: '100 mm' })).toEqual(['handles.no-screw', 'handles.no-screw']);
  });

  test('lie over no holes of their doors', () => {
    const row = { id: 'row', kind: 'holes', parent: 'bag-doors', diameter: '5 mm', fromRight: '40 mm' };
    const holed = (more: object) => withHandles({}, {}, [{ ...row, ...more }]).snags.map((x) => x.code);
    expect(holed({ fromBelow: '60 mm' })).toEqual([]);
    expect(holed({})).toEqual(['handles.no-place', 'handles.no-place']);
  });

  test('that come to the edge of their door are told how short, or how far in, they would do', () => {
    const across = { lay: 'across', length: '140 mm', fromEdge: '60 mm' };
    const [off] = withHandles(across).snags;
    expect(off!.code).toBe('handles.off-front');
    const words = off!.cures.map((c) => c.says);
    expect(words[0]).toMatch(/^Make it \d+ mm long\.$/);
    expect(words[1]).toMatch(/^Place its middle \d+ mm from the edge that opens\.$/);
    for (const { edits } of off!.cures.slice(0, 2)) {
      const { field, value } = edits![0]!;
      const codes = withHandles({ ...across, [field]: value }).snags.map((s) => s.code);
      expect(codes).not.toContain('handles.off-front');
    }
  });

  test('stay on their doors', () => {
    expect(withHandles({ fromEdge: '18 mm' }).snags.map((s) => s.code)).toEqual([
      'handles.off-front',
      'handles.off-front',
    ]);
  });
});
