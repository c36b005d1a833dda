import { describe, expect, test } from 'vitest';
import { demoDocument } from '../../test/build/built.ts';
import { type Breakdown, breakDown } from '../breakdown/index.ts';
import { checkJob, type JobDocument } from '../job/index.ts';
import { setOut } from '../setting-out/index.ts';
import { searchOn } from './search-on.ts';

/** The demo with everything bought, so that it takes some thought to need few sheets. */
function job(): JobDocument {
  const demo = demoDocument();
  const rack = demo.shop.rack as { lots: { stock: Record<string, unknown>[] }[] };
  for (const lot of rack.lots) lot.stock = lot.stock.map(({ have: _, ...s }) => ({ price: 50, ...s }));
  const read = checkJob(demo);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return read.job;
}

function first(of: JobDocument) {
  const drawn = setOut(of);
  const cutting = breakDown(of, drawn, { effort: 1 });
  let step = cutting.next();
  while (!step.done) step = cutting.next();
  return { job: of, setOut: drawn, breakdown: step.value };
}

const cost = (b: Breakdown) => b.lots.reduce((sum, l) => sum + l.plan.cost, 0);

describe('the search for better cutting', () => {
  test('what it finds costs less each time, holds before the judge, and is the same on every run', () => {
    const run = () => {
      const plan = first(job());
      const finds = [plan.breakdown];
      let share = 0;
      for (const step of searchOn(plan)) {
        if ('better' in step) {
          expect(cost(step.better)).toBeLessThan(cost(finds.at(-1)!));
          expect(step.better.lots.every((l) => l.verdict.holds)).toBe(true);
          finds.push(step.better);
          break;
        }
        expect(step.share).toBeGreaterThanOrEqual(share - 1e-9);
        share = step.share;
        if (share > 1 / 3) break;
      }
      return finds.map(cost);
    };
    expect(run()).toEqual(run());
  }, 60_000);

  test('it ends when told to, with nothing worse than there was', () => {
    const plan = first(job());
    const stop = { requested: false };
    const search = searchOn(plan, stop);
    search.next();
    stop.requested = true;
    for (const step of search)
      if ('better' in step) expect(cost(step.better)).toBeLessThan(cost(plan.breakdown));
  });
});
