import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { dryFit } from '../src/dry-fit/index.ts';
import { dryFitInput } from '../src/plan/dry-fit-input.ts';
import { type Built, built, builtExample } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';

interface Chest {
  readonly design: { readonly records: readonly object[] };
}

/** The toy chest with a fixed shelf in it, under which nobody reaches through the lid. */
function chestWithShelf(): Built {
  const chest = JSON.parse(
    readFileSync(new URL('../examples/toy-chest.json', import.meta.url), 'utf8'),
  ) as Chest;
  const shelf = { id: 'shelf', kind: 'shelf', parent: 'inside', count: 1 };
  return built({ ...chest, design: { ...chest.design, records: [...chest.design.records, shelf] } });
}

test('a space under a fixed shelf in a chest is finished before it is closed', async () => {
  const of = chestWithShelf();
  // More than half of the front, which ends below the lid, is under the shelf, and less of the back.
  const marks = ['shelf', 'bottom', 'front'].map(
    (role) => of.drawn.parts.find((p) => p.role.startsWith(role))!.mark,
  );
  expect([...of.build.finishing!.before].sort()).toEqual(marks.sort());
  expect(await dryFaults(of)).toEqual([]);
});

test('fronts of drawers close no chest: nothing of the tool chest is finished before it is put together', () => {
  expect(builtExample('tool-chest').build.finishing!.before).toEqual([]);
});

test('the dry fit tells which faces are closed in bare, where no card coats them before', async () => {
  const { job, drawn, breakdown, build } = builtExample('radio-station');
  const input = dryFitInput(job, drawn, breakdown, build, await openSolids());
  const operations = build.operations.filter((o) => o.stage !== 'prefinish');
  const run = dryFit({ ...input, build: { ...build, operations } });
  let step = run.next();
  while (!step.done) step = run.next();
  expect(step.value.faults.filter((f) => f.code === 'closed-bare').map((f) => f.on)).toEqual(['D3']);
});
