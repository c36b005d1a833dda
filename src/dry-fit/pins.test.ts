import { beforeAll, describe, expect, test } from 'vitest';
import { pantry } from '../../test/pins/pantry-job.ts';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Act, Operation } from '../build/index.ts';
import { dryFitInput, type Plan, planJob } from '../plan/index.ts';
import type { Solids } from '../solid/index.ts';
import { dryFit } from './dry-fit.ts';

let solids: Solids;
let plan: Plan;
beforeAll(async () => {
  solids = await openSolids();
  const planning = planJob(pantry(), { solids }, { effort: 100_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  plan = step.value;
});

/** What the dry fit says after one card was changed. */
function withCard<K extends Act['act']>(
  act: K,
  change: (a: Extract<Act, { act: K }>) => Partial<Extract<Act, { act: K }>>,
): readonly string[] {
  let changed = false;
  const operations = plan.build.operations.map((o): Operation => {
    if (changed || o.does.act !== act) return o;
    changed = true;
    return { ...o, does: { ...o.does, ...change(o.does as Extract<Act, { act: K }>) } as Act };
  });
  const input = dryFitInput(plan.job, plan.setOut, plan.breakdown, { ...plan.build, operations }, solids);
  const run = dryFit(input);
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value.faults.map((f) => f.sentence);
}

describe('shelves on pins, built by their cards', () => {
  test('lie as drawn', () => {
    expect(plan.dryFit.faults).toEqual([]);
  });

  test('a card that counts another level is found out', () => {
    expect(withCard('rest', (a) => ({ level: a.level + 1 })).join()).toMatch(/does not lie on pins at level/);
  });

  test('pins of another size find no holes', () => {
    const { ledger } = plan.setOut;
    expect(withCard('rest', (a) => ({ hole: ledger.times('twice', a.hole, 2) })).join()).toMatch(
      /does not lie on pins/,
    );
  });

  test('a row drilled from the wrong end lets its shelves down', () => {
    const faults = withCard('pin-holes', (a) => ({ from: a.from === 'start' ? 'end' : 'start' }));
    expect(faults.join()).toMatch(/does not lie on pins|lacks \d+ of the cuts/);
  });

  test('one row where two are needed', () => {
    const faults = withCard('pin-holes', (a) => ({
      rows: a.rows.map((r) => ({ ...r, lines: [r.lines[0]!] })),
    }));
    expect(faults.join()).toMatch(/both at the front and at the back/);
  });

  test('holes drilled too deep come out behind', () => {
    const { ledger } = plan.setOut;
    expect(withCard('pin-holes', (a) => ({ depth: ledger.times('twice', a.depth, 2) })).join()).toMatch(
      /comes out behind/,
    );
  });
});
