import { expect, test } from 'vitest';
import { built, demoDocument } from '../../test/build/built.ts';

const { build, drawn } = built(demoDocument());

test('the first cut of a build is made on waste, and every sheet is cut after it', () => {
  const saws = build.operations.filter((o) => o.does.act === 'saw' && o.stage === 'sheets');
  const trial = build.operations.findIndex((o) => o.kind === 'test-cut');
  // What can't be cut again is looked over between the two.
  const lookedAt = (id: string) => id.endsWith('/only-once');
  const between = build.operations.slice(trial + 1, build.operations.indexOf(saws[0]!));
  expect(between.filter((o) => !lookedAt(o.id))).toEqual([]);
  const after = new Map(build.operations.map((o) => [o.id, o.after]));
  for (const o of saws.filter((s) => s.kind === 'true-edge'))
    expect(o.after.flatMap((id) => (lookedAt(id) ? after.get(id)! : [id]))).toContain('sheets/test-cut');
});

test('an edge is trued from the raw edge, not from the one it makes', () => {
  for (const o of build.operations.filter((x) => x.kind === 'true-edge'))
    expect(o.reference).toBe('the raw long edge');
});

test('an offcut narrower than the rail’s 200 mm is packed out and fixed down to be trued, and no wider one', () => {
  const widths = new Map(build.stock.map((w) => [w.name, drawn.ledger.ticks(w.width) / 3200]));
  const trued = build.operations.filter((o) => o.kind === 'true-edge');
  const packed = trued.filter((o) => o.lines.join(' ').includes('fix both down'));
  const narrow = trued.filter((o) => o.does.act === 'saw' && widths.get(o.does.workpiece)! < 210);
  expect(packed.map((o) => o.id)).toEqual(narrow.map((o) => o.id));
  expect(narrow.length).toBe(2);
});
