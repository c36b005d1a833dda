import { beforeAll, describe, expect, test } from 'vitest';
import { toolChest } from '../../test/drawers/chest-job.ts';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Act, Operation } from '../build/index.ts';
import { dryFitInput, type Plan, planJob } from '../plan/index.ts';
import type { Solids } from '../solid/index.ts';
import { dryFit } from './dry-fit.ts';

let solids: Solids;
let plan: Plan;
beforeAll(async () => {
  solids = await openSolids();
  plan = planned({});
});

function planned(changes: Parameters<typeof toolChest>[0]): Plan {
  const planning = planJob(toolChest(changes), { solids }, { effort: 50_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

/** What the dry fit says after the first card of an act was changed, or left out. */
function withCard(find: (o: Operation) => boolean, change: (a: Act) => object | undefined): string {
  let changed = false;
  const operations = plan.build.operations.flatMap((o): Operation[] => {
    if (changed || !find(o)) return [o];
    changed = true;
    const does = change(o.does);
    return does ? [{ ...o, does: { ...o.does, ...does } as Act }] : [];
  });
  expect(changed).toBe(true);
  const run = dryFit(
    dryFitInput(plan.job, plan.setOut, plan.breakdown, { ...plan.build, operations }, solids),
  );
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value.faults.map((f) => f.sentence).join('\n');
}

const runners = (o: Operation) => o.does.act === 'runners';

describe('drawers, built by their cards', () => {
  test('come out as drawn, rabbeted and dadoed', () => {
    expect(plan.dryFit.faults).toEqual([]);
  });

  test.each(['screws', 'pocket-screws'])(
    'joined by %s, bottoms laid under, fronts before the case',
    (joint) => {
      const other = { joint, bottomFitting: 'applied', hang: 'overlay' };
      const built = planned({ planes: other, small: other });
      expect(built.setOut.drawers).toHaveLength(4);
      expect(built.dryFit.faults).toEqual([]);
      expect(built.setOut.snags.filter((s) => s.level === 'stop')).toEqual([]);
    },
  );

  test('a runner thicker than the room beside the box', () => {
    const { ledger } = plan.setOut;
    const twice = (a: Act) =>
      a.act === 'runners' ? { thickness: ledger.times('twice', a.thickness, 2) } : {};
    expect(withCard(runners, twice)).toMatch(/mm for a runner of/);
  });

  test('a screw too many', () => {
    expect(withCard(runners, (a) => (a.act === 'runners' ? { count: a.count + 1 } : {}))).toMatch(
      /pilot holes for/,
    );
  });

  test('pilots without runners', () => {
    expect(withCard(runners, () => undefined)).toMatch(/holes for screws, and no card drives any/);
  });

  test('something in the way of the drawer', () => {
    // The left side of the case moves with the drawer, and so runs into nothing; its bottom does not.
    const all = plan.setOut.parts.map((p) => p.mark).filter((m) => !m.startsWith('B') && !m.startsWith('N'));
    expect(withCard(runners, (a) => (a.act === 'runners' ? { moves: all } : {}))).toMatch(
      /drawn out|is not there/,
    );
  });

  test('a front without screws', () => {
    const front = (o: Operation) => o.does.act === 'screw' && o.does.mate.startsWith('N');
    expect(withCard(front, () => undefined)).toMatch(/holes for screws, and no card drives any/);
  });
});
