import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { Act } from '../src/build/index.ts';
import { formatOf, readJob } from '../src/job/index.ts';
import { parseLength, printSetting, type Ticks, type Traced } from '../src/measure/index.ts';
import { type Plan, planJob } from '../src/plan/index.ts';
import type { PrintedFit } from '../src/setting-out/index.ts';

const EXAMPLES = new URL('../examples/', import.meta.url);
const solids = await openSolids();

function planOf(name: string, effort: number): Plan {
  const read = readJob(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const run = planJob(read.job, { solids }, { effort });
  let step = run.next();
  while (!step.done) step = run.next();
  return step.value;
}

/** Every number that the cards of one part set something by, in ticks. */
function settings(plan: Plan, mark: string): Record<'sawn' | 'set' | 'deep' | 'placed' | 'wide', number[]> {
  const t = (x: Traced) => plan.setOut.ledger.ticks(x) as number;
  const found = {
    sawn: [] as number[],
    set: [] as number[],
    deep: [] as number[],
    placed: [] as number[],
    wide: [] as number[],
  };
  // A size may have been cut, and a channel made, while the part was still one with others.
  const marks = [mark];
  const on = (act: Act) => 'workpieces' in act && act.workpieces.some((w) => marks.includes(w));
  for (let at: string | undefined = mark; at !== undefined; ) {
    const cuts = plan.build.operations.flatMap(({ does }) =>
      does.act === 'saw' && does.yields.some((y) => y?.name === at) ? [does] : [],
    );
    found.sawn.push(...cuts.map((c) => t(c.at)));
    const parted = plan.build.operations.flatMap(({ does }) =>
      (does.act === 'part' || does.act === 'rip-apart') && does.yields.includes(at!) ? [does.workpiece] : [],
    );
    if (parted[0]) marks.push(parted[0]);
    at = cuts.find((c) => c.workpiece !== at)?.workpiece ?? parted[0];
  }
  for (const { does } of plan.build.operations) {
    if (does.act === 'bevel' && on(does)) found.sawn.push(t(does.at));
    if (does.act === 'set' && does.workpiece === mark)
      for (const touch of does.touches) if (touch.gap !== undefined) found.set.push(Math.abs(t(touch.gap)));
    if (does.act === 'rabbet' && on(does)) found.deep.push(t(does.depth));
    if (does.act === 'spline-groove' && 'routed' in does.by && on(does)) found.deep.push(t(does.by.depth));
    if (does.act === 'groove' && on(does)) {
      found.deep.push(t(does.depth));
      for (const fences of does.channels) {
        found.placed.push(t(fences[0]!));
        found.wide.push(t(fences.at(-1)!) - t(fences[0]!) + t(does.bit));
      }
    }
  }
  return found;
}

function unprinted(plan: Plan, fit: PrintedFit): string[] {
  const { ledger, parts, splines } = plan.setOut;
  const format = formatOf(plan.job.shop);
  return fit.loop.flatMap((m) => {
    if (m.made.by !== 'tool' && !m.name.startsWith('width of the dado')) return [];
    const printed = ledger.ticks(m.printed);
    const again = parseLength(printSetting(printed, format), plan.job.shop.units);
    if (!again.ok || again.value !== printed) return [`${m.name} can't be printed`];
    const part = [...parts, ...splines].find((p) => p.id === m.part)!;
    const { sawn, set, deep, placed, wide } = settings(plan, part.mark);
    const cards =
      /^(length|width) of /.test(m.name) && m.made.by === 'tool' && /saw/.test(m.made.kind)
        ? sawn
        : /^(clear|distance) /.test(m.name)
          ? set
          : /^(depth |how much is sawn off )/.test(m.name)
            ? deep
            : m.name.startsWith('place ')
              ? placed
              : wide;
    return cards.includes(printed as number)
      ? []
      : [
          `${m.name}: ${printed / 3200} mm is on no card of ${part.mark}, which say ${cards.map((c) => c / 3200)}`,
        ];
  });
}

test.each(readdirSync(EXAMPLES).filter((name) => name.endsWith('.json')))(
  'every made dimension in the fits of %s is the number on a card',
  (name) => {
    const quick = planOf(name, 200_000);
    // Where flaws leave little to cut from, all parts find a place only after a longer search.
    const plan = quick.breakdown.missing.length > 0 ? planOf(name, 3_000_000) : quick;
    const { ledger, fits } = plan.setOut;
    expect(fits.length).toBeGreaterThan(0);
    const faults = fits.flatMap((fit) => unprinted(plan, fit).map((what) => `${fit.id}: ${what}`));
    expect(faults).toEqual([]);
    for (const fit of fits) {
      const t = (x: Traced): Ticks => ledger.ticks(x);
      const sum = fit.loop.reduce((all, m) => all + m.sign * (m.times ?? 1) * t(m.printed), 0);
      expect(t(fit.printed), fit.id).toBe(sum);
    }
  },
);
