import { describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { PlannedNode } from '../src/breakdown/index.ts';
import { checkJob } from '../src/job/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import { demoDocument } from './build/built.ts';

interface Stock {
  readonly have?: number;
  readonly [field: string]: unknown;
}

/** The demo with the stock of its first lot changed. */
function withStock(change: (stock: Stock) => Stock) {
  const demo = demoDocument();
  const rack = demo.shop.rack as { lots: { stock: Stock[] }[] };
  rack.lots[0]!.stock = rack.lots[0]!.stock.map(change);
  return demo;
}

async function planned(cutting: object, change: (stock: Stock) => Stock = (s) => s): Promise<Plan> {
  const demo = withStock(change);
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

function leaves(node: PlannedNode): readonly PlannedNode[] {
  return node.kind === 'cut' ? node.parts.flatMap(leaves) : [node];
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

  test('sheets are cut roughly at the yard, travel home, and are trued before anything is measured', async () => {
    const vehicle = { length: '1600 mm', width: '1300 mm' };
    const plan = await planned({ yard: { cuts: 2, over: '12 mm', vehicle } });
    expect(plan.breakdown.missing).toEqual([]);
    expect(plan.breakdown.lots.flatMap((l) => l.verdict.findings)).toEqual([]);
    expect(plan.dryFit.faults).toEqual([]);
    const rough = plan.build.operations.filter((o) => o.kind === 'yard-cut');
    expect(rough.length).toBeGreaterThan(0);
    // Whatever comes home is no larger than the vehicle, followed here from the cards alone.
    const mm = (t: Parameters<typeof plan.setOut.ledger.ticks>[0]) => plan.setOut.ledger.ticks(t) / 3200;
    const lying = new Map(plan.build.stock.map((w) => [w.name, [mm(w.length), mm(w.width)]]));
    const bought = new Set(
      plan.breakdown.lots.flatMap((l) => l.sheets.flatMap((s) => (s.source.onRack ? [] : [s.name]))),
    );
    for (const { does } of rough) {
      if (does.act !== 'saw') continue;
      const size = lying.get(does.workpiece)!;
      const axis = does.across === 'length' ? 0 : 1;
      lying.delete(does.workpiece);
      const halves = [mm(does.at), size[axis]! - mm(does.at)];
      does.yields.forEach((y, i) => {
        if (y)
          lying.set(
            y.name,
            size.map((s, k) => (k === axis ? halves[i]! : s)),
          );
      });
    }
    for (const [name, size] of lying) {
      if (!bought.has(name.split(/[.-]/)[0]!) || name.startsWith('L')) continue;
      expect(Math.max(...size), name).toBeLessThanOrEqual(1600);
      expect(Math.min(...size), name).toBeLessThanOrEqual(1300);
    }
    // Of each piece from the yard an edge is trued before anything else is cut off it.
    const yielded = rough.flatMap((o) => (o.does.act === 'saw' ? o.does.yields : []));
    const cut = new Set<string>();
    for (const o of plan.build.operations) {
      if (o.does.act !== 'saw' || o.kind === 'yard-cut' || cut.has(o.does.workpiece)) continue;
      cut.add(o.does.workpiece);
      if (yielded.some((y) => y?.name === (o.does as { workpiece: string }).workpiece))
        expect(o.kind).toBe('true-edge');
    }
  });

  test('a yard that cuts nothing and a car that is too small are told with the way out', async () => {
    const plan = await planned({ yard: { vehicle: { length: '1200 mm', width: '900 mm' } } });
    const snag = plan.snags.find((s) => s.code === 'stock.rules-forbid')!;
    expect(snag.cures[0]!.says).toContain('yard');
  });

  test('parts come beside the flaws of a sheet, and the card that trues it says how it must lie', async () => {
    const flaws = [
      { id: 'void', x: '300 mm', y: '150 mm', length: '60 mm', width: '45 mm' },
      { id: 'patch', x: '1200 mm', y: '610 mm', length: '30 mm', width: '30 mm' },
    ];
    const plan = await planned({}, (s) => ({ ...s, ...(s.have ? { flaws } : {}) }));
    expect(plan.breakdown.missing).toEqual([]);
    expect(plan.breakdown.lots.flatMap((l) => l.verdict.findings)).toEqual([]);
    expect(plan.dryFit.faults).toEqual([]);
    const sheet = plan.breakdown.lots.flatMap((l) => l.sheets).find((s) => s.source.flaws.length > 0)!;
    const { ledger } = plan.setOut;
    for (const piece of leaves(sheet.root)) {
      if (piece.kind !== 'piece') continue;
      const [x, y, l, w] = [piece.x, piece.y, piece.length, piece.width].map((t) => ledger.ticks(t) / 3200);
      for (const [fx, fy, fl, fw] of [
        [300, 150, 60, 45],
        [1200, 610, 30, 30],
      ] as const)
        expect(x! + l! <= fx || fx + fl <= x! || y! + w! <= fy || fy + fw <= y!).toBe(true);
    }
    const card = plan.build.operations.find((o) => o.id === `${sheet.name}/true-edge`)!;
    expect(card.lines.join(' ')).toContain('void');
  });

  test('an offcut worth more than a sheet stays on the rack', async () => {
    const plan = await planned({}, (s) => ({ ...s, ...(s.have ? { value: 1000 } : {}) }));
    expect(plan.breakdown.lots[0]!.sheets.every((s) => !s.source.onRack)).toBe(true);
  });

  test('flaws told of several sheets at once are refused', () => {
    const flaws = [{ id: 'void', x: '1 mm', y: '1 mm', length: '1 mm', width: '1 mm' }];
    const read = checkJob(withStock((s) => ({ ...s, have: 2, flaws })));
    expect(read.ok ? [] : read.snags.map((s) => s.code)).toContain('stock.flaws-of-several');
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
      const [l, w] = [t(part.cut.length), t(part.cut.width)];
      const lies = l <= t(from.length) && w <= t(from.width);
      expect(lies || (part.grain === 'free' && w <= t(from.length) && l <= t(from.width)), part.id).toBe(
        true,
      );
    }
  });
});
