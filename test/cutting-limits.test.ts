import { describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { PlannedNode } from '../src/breakdown/index.ts';
import { checkJob } from '../src/job/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import { demoDocument } from './build/built.ts';

async function planned(cutting: object): Promise<Plan> {
  const demo = demoDocument();
  const read = checkJob({ ...demo, shop: { ...demo.shop, cutting } });
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join());
  const planning = planJob(read.job, { solids: await openSolids() }, { effort: 600_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

/** How many directions cuts take down to the deepest of them. */
function stages(node: PlannedNode, before: string, now = 0): number {
  if (node.kind !== 'cut') return now;
  const here = node.across === before ? now : now + 1;
  return Math.max(...node.parts.map((p) => stages(p, node.across, here)));
}

describe('limits of a shop', () => {
  test.each([
    [{ stages: 3, first: 'rip' }],
    [{ stages: 3, first: 'crosscut', hold: '40 mm' }],
    [{ objectives: ['cost', 'settings', 'cuts'], carryAfter: 2 }],
    [{ objectives: ['cost', 'leftover'], wanted: [{ length: '600 mm', width: '200 mm' }] }],
  ])('the cabinet is cut within %j, and the cards still give it', async (cutting) => {
    const plan = await planned(cutting);
    expect(plan.breakdown.missing).toEqual([]);
    expect(plan.breakdown.lots.flatMap((l) => l.verdict.findings)).toEqual([]);
    expect(plan.dryFit.faults).toEqual([]);
    const sheets = plan.breakdown.lots.filter((l) => l.lot.form === 'sheet').flatMap((l) => l.sheets);
    if ('stages' in cutting) for (const s of sheets) expect(stages(s.root, '')).toBeLessThanOrEqual(3);
  });

  test('a limit that nothing can keep is told, with the place to loosen it', async () => {
    const plan = await planned({ hold: '2 m' });
    const snags = plan.snags.filter((s) => s.code === 'stock.rules-forbid');
    expect(snags.length).toBeGreaterThan(0);
    expect(snags[0]!.where.path).toBe('shop/cutting');
  });

  test('every part that is spoiled can be cut again from what the plan names, if there is anything', async () => {
    const { breakdown, setOut } = await planned({});
    expect(breakdown.spares.map((s) => s.part.id)).toEqual(setOut.parts.map((p) => p.id));
    const left = new Map(breakdown.leftovers.map((l) => [l.name, l]));
    const t = (x: Parameters<typeof setOut.ledger.ticks>[0]) => setOut.ledger.ticks(x);
    const named = breakdown.spares.filter((s) => s.from === 'leftover');
    expect(named.length).toBeGreaterThan(0);
    for (const { part, name } of named) {
      const from = left.get(name!)!;
      expect(from.lot).toBe(part.lot);
      const [l, w] = [t(part.length), t(part.width)];
      const lies = l <= t(from.length) && w <= t(from.width);
      expect(lies || (part.grain === 'free' && w <= t(from.length) && l <= t(from.width))).toBe(true);
    }
  });
});
