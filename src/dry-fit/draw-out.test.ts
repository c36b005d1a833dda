import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Act, Operation } from '../build/index.ts';
import { readJob } from '../job/index.ts';
import { toMm } from '../measure/index.ts';
import { dryFitInput, type Plan, planJob } from '../plan/index.ts';
import type { Solids } from '../solid/index.ts';
import { dryFit } from './dry-fit.ts';

const SEWING_BOX = new URL('../../test/cases/plans/drawers-on-wooden-runners.json', import.meta.url);

let solids: Solids;
let plan: Plan;
beforeAll(async () => {
  solids = await openSolids();
  const read = readJob(readFileSync(SEWING_BOX, 'utf8'));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planJob(read.job, { solids }, { effort: 50_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  plan = step.value;
});

/** The codes that the dry fit gives after the first card that is found was changed. */
function codesWith(find: (o: Operation) => boolean, change: (a: Act) => Act): readonly string[] {
  const at = plan.build.operations.findIndex(find);
  expect(at).toBeGreaterThanOrEqual(0);
  const operations = plan.build.operations.map((o, i) => (i === at ? { ...o, does: change(o.does) } : o));
  const run = dryFit(
    dryFitInput(plan.job, plan.setOut, plan.breakdown, { ...plan.build, operations }, solids),
  );
  let step = run.next();
  while (!step.done) step = run.next();
  return [...new Set(step.value.faults.map((f) => f.code))].sort();
}

const outer = (o: Operation) => o.does.act === 'groove' && o.does.face === 'show';
const tried = (o: Operation) => o.does.act === 'draw-out';

describe('a drawer on wooden runners', () => {
  test('is held over its whole way', () => {
    expect(plan.dryFit.faults).toEqual([]);
  });

  test('its card says in figures how much of the runners still carries it', () => {
    const { lines, lengths, does } = plan.build.operations.find(tried)!;
    expect(lines[0]).toContain('{1} of the runners still carries it');
    const mm = lengths.map((t) => toMm(plan.setOut.ledger.ticks(t)));
    expect(does.act === 'draw-out' && lengths[0] === does.travel).toBe(true);
    expect(mm[1]! * 2).toBeGreaterThan(mm[0]! - 3);
    expect(mm[1]! * 2).toBeLessThan(mm[0]! + 3);
  });

  test('drawn out twice as far, it falls', () => {
    const { ledger } = plan.setOut;
    const twice = codesWith(tried, (a) =>
      a.act === 'draw-out' ? { ...a, travel: ledger.times('twice', a.travel, 2) } : a,
    );
    expect(twice).toContain('not-carried');
  });

  test('whose groove is too shallow by half, it doesn’t go in', () => {
    const { ledger } = plan.setOut;
    const half = codesWith(outer, (a) =>
      a.act === 'groove' ? { ...a, depth: ledger.share('half', a.depth, [1, 1], 0) } : a,
    );
    expect(half).toEqual(['in-the-way', 'part-differs']);
  });

  test('whose groove is in the inner face, it runs into the strip', () => {
    const turned = codesWith(outer, (a) => (a.act === 'groove' ? { ...a, face: 'under' } : a));
    expect(turned).toContain('in-the-way');
  });
});
