import { expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { dryFit } from '../src/dry-fit/index.ts';
import { dryFitInput } from '../src/plan/index.ts';
import { built } from './build/built.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, smallJob } from './generate/small-job.ts';

/** The small cupboard with pegs in both sides, hooks under its shelf and cord holes through its top. */
function pegged(): PlainJob {
  const job = equipped(smallJob()) as PlainJob;
  const row = (id: string, fields: Record<string, unknown>) =>
    job.design.records.push({ id, kind: 'holes', ...fields });
  row('pegs', {
    parent: 'case',
    panel: 'left-side',
    mirror: true,
    face: 'left',
    purpose: 'for pegs',
    diameter: '12 mm',
    depth: '12 mm',
    lay: 'up',
    count: 3,
    apart: '80 mm',
    fromBelow: '90 mm',
    fromFront: '60 mm',
  });
  row('hooks', {
    parent: 'shelf',
    face: 'below',
    purpose: 'for hooks',
    diameter: '3 mm',
    depth: '10 mm',
    count: 4,
    fromLeft: '40 mm',
    fromRight: '40 mm',
    fromFront: '60 mm',
  });
  row('cords', { parent: 'top', diameter: '30 mm', count: 2, apart: '120 mm', fromBack: '60 mm' });
  return job;
}

test('a hole on the middle of its part is told by that alone, without a figure', async () => {
  const job = equipped(smallJob()) as PlainJob;
  job.design.records.push({
    id: 'hand',
    kind: 'holes',
    parent: 'shelf',
    diameter: '10 mm',
    count: 3,
    apart: '90 mm',
  });
  // Across it stands where the shelf is half as deep.
  const { job: read, drawn, breakdown, build } = built(job);
  const card = build.operations.find((o) => o.id.includes('-row-'))!;
  expect(card.does).toMatchObject({ act: 'drill', middle: ['length', 'width'] });
  const l = drawn.ledger;
  const at = card.does.act === 'drill' ? card.does.at : [];
  expect(at.map((p) => p.map((t) => (t === 'middle' ? t : l.ticks(t) / 3200)))).toEqual([
    [90, 'middle'],
    ['middle', 'middle'],
  ]);
  // Of two middles each is told by what it lies between.
  expect(card.lines.find((l) => l.startsWith('On the middle'))).toMatch(
    /^On the middle between the .+ and the .+: on the middle between the .+ and the .+ and \{1\} to each side of it\.$/,
  );
  const run = dryFit(dryFitInput(read, drawn, breakdown, build, await openSolids()));
  let step = run.next();
  while (!step.done) step = run.next();
  expect(step.value.faults).toEqual([]);
});

test('rows of holes are bored where they were drawn, by what their cards say', async () => {
  const { job, drawn, breakdown, build } = built(pegged());
  expect(drawn.snags).toEqual([]);
  const input = dryFitInput(job, drawn, breakdown, build, await openSolids());
  const run = dryFit(input);
  let step = run.next();
  while (!step.done) step = run.next();
  expect(step.value.faults).toEqual([]);
  const cards = build.operations.filter((o) => o.id.includes('-row-'));
  expect(cards.map((c) => c.title)).toEqual([
    'Holes in the outer face of A1 (left side), for pegs',
    'Holes in the outer face of A2 (right side), for pegs',
    'Holes through C1 (top), “cords”',
    'Holes in the under face of E3 (shelf in right), for hooks',
  ]);
  // Half way along the top: the card finds the middle, and the holes come to both sides of it.
  const cords = cards[2]!;
  expect(cords.does).toMatchObject({ middle: ['length'] });
  expect(cords.does.act === 'drill' && cords.does.at.length).toBe(1);
  expect(cords.lines[0]).toBe(
    'Find the middle between the left end and the right end: mark the same distance from both, a little less than half, and halve what lies between the two marks.',
  );
  expect(cords.lines[2]).toMatch(/: \{\d\} to each side of the middle\.$/);
  const hooks = cards.at(-1)!;
  expect(hooks.does).toMatchObject({ act: 'drill', open: true, side: 'under' });
  expect(hooks.lines.join(' ')).toMatch(
    /\{2\} from the front edge: at \{3\}, \{4\}, \{5\} and \{6\} from the left end/,
  );
});
