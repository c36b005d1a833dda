import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { cured, setOutInput } from '../../test/checks/checked-job.ts';
import { scheduleBuild } from '../build/index.ts';
import type { JobDocument } from '../job/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { sag } from './sag.ts';
import { tipsForward } from './tips-forward.ts';

const NOTHING = scheduleBuild({ shop: { people: [], tools: [] } as never, work: {} }, []).schedule;
const BUILD = {
  schedule: NOTHING,
  operations: [],
  stages: [],
  gauges: [],
  stories: [],
  glueUps: [],
  stock: [],
  snags: [],
} satisfies CheckInput['build'];

function found(job: JobDocument): readonly Snag[] {
  const input = { ...setOutInput(job), build: BUILD };
  return [...sag(input), ...tipsForward(input)];
}

const named = (s: Snag) => `${s.code} ${s.where.part ?? s.where.record}`;

const lot = (thickness: number) => ({
  id: `birch${thickness}`,
  name: `Birch ${thickness} mm`,
  material: 'birch-plywood',
  form: 'sheet',
  nominal: `${thickness} mm`,
  thickness: `${thickness - 0.3} mm`,
  stock: [{ id: `b${thickness}`, length: '3000 mm', width: '1500 mm', price: 100 }],
});

const drawn = fc.record({
  width: fc.integer({ min: 500, max: 2000 }),
  depth: fc.integer({ min: 220, max: 450 }),
  load: fc.option(fc.integer({ min: 1, max: 120 }), { nil: undefined }),
  onBottom: fc.integer({ min: 1, max: 200 }),
  count: fc.integer({ min: 1, max: 3 }),
  thicker: fc.subarray([15, 21, 24, 30]),
  opening: fc.option(fc.integer({ min: 300, max: 900 }), { nil: undefined }),
  setback: fc.option(fc.integer({ min: 20, max: 90 }), { nil: undefined }),
});

test('every cure with edits, tried on any bookcase, leaves a piece that can be set out, without that snag', () => {
  let tried = 0;
  fc.assert(
    fc.property(drawn, (d) => {
      const records: object[] = [];
      if (d.opening !== undefined && d.opening < d.width - 200)
        records.push(
          { id: 'left', kind: 'opening', parent: 'inside', size: `${d.opening} mm` },
          { id: 'right', kind: 'opening', parent: 'inside' },
        );
      const split = records.length > 0;
      if (d.setback !== undefined && 2 * d.setback < d.depth - 60)
        records.push({
          id: 'base',
          kind: 'base',
          parent: 'case',
          board: 'sides',
          height: '80 mm',
          setback: `${d.setback} mm`,
        });
      const job = bookcase({
        width: `${d.width} mm`,
        depth: `${d.depth} mm`,
        ...(d.load === undefined ? {} : { load: `${d.load} kg` }),
        box: { load: `${d.onBottom} kg` },
        inside: split ? { split: 'across' } : {},
        shelf: { count: d.count, ...(split ? { parent: 'left' } : {}) },
        records,
        lots: d.thicker.map(lot),
      });
      if (setOutInput(job).setOut.snags.length > 0) return;
      for (const snag of found(job))
        for (const { edits } of snag.cures) {
          if (!edits) continue;
          tried++;
          const after = cured(job, edits);
          expect(setOutInput(after).setOut.snags.map((s) => s.code)).toEqual([]);
          expect(found(after).map(named)).not.toContain(named(snag));
        }
    }),
    { numRuns: 150, seed: 4 },
  );
  expect(tried).toBeGreaterThan(50);
});
