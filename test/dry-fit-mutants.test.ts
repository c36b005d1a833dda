import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { type DryFitInput, outcomeOf } from '../src/dry-fit/dry-fit.ts';
import { boundsOf } from '../src/dry-fit/shape-bounds.ts';
import { Workshop } from '../src/dry-fit/workshop.ts';
import { toMm } from '../src/measure/index.ts';
import { dryFitInput } from '../src/plan/dry-fit-input.ts';
import type { Solids } from '../src/solid/index.ts';
import { built, demoDocument } from './build/built.ts';
import { equipped } from './generate/equipped.ts';
import { smallJob } from './generate/small-job.ts';
import { type Mutant, mutants, readMutated } from './mutants/mutate.ts';

/** `EVERY=1 npx vitest run test/dry-fit-mutants` breaks the plans in every way there is; it takes long. */
const EVERY = Number(process.env.EVERY ?? 0);

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

/** The finished piece, the screws in it and what is left over by name, all lengths in mm. */
function endOf(shop: Workshop): unknown {
  const standing = shop.assemblies.get('case')?.members ?? [];
  const members = standing
    .map(({ mark, piece, turn, origin }) => {
      // Cuts in any order make the same piece, and it doesn't matter where on the bench it was begun.
      const [cuts, ways] = [piece.cuts.map(boundsOf), piece.ways].map((all) =>
        [...all].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1)),
      );
      const at = origin.map((x, i) => toMm(x - standing[0]!.origin[i]!));
      return { mark, turn, size: piece.size.map(toMm), cuts, ways, at };
    })
    .sort((a, b) => (a.mark < b.mark ? -1 : 1));
  const screws = shop.screws.map((s) => [...s.parts, s.radius].join()).sort();
  return { members, screws, loose: [...shop.loose.keys()].sort() };
}

/** As near as marking out comes, mm. */
const MARKING = 0.7;

/** True when two ends are the same, lengths as near as they can be marked. */
function same(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= MARKING;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [Object.entries(a), Object.entries(b)];
  return left.length === right.length && left.every(([key, value]) => same(value, Reflect.get(b, key)));
}

/** The shop before each card of a plan, and at the end. */
function states(input: DryFitInput): readonly Workshop[] {
  const all = [new Workshop(input.build.stock, input.read, input)];
  for (const o of input.build.operations) {
    const next = likewise(all.at(-1)!, input);
    next.run(o);
    all.push(next);
  }
  return all;
}

/** Another shop in which everything lies as in this one, and is in the same condition. */
function likewise(shop: Workshop, input: DryFitInput): Workshop {
  const copy = new Workshop([], input.read, input);
  takeOver(copy.condition, shop.condition);
  const { condition } = copy;
  takeOver(copy, shop);
  return Object.assign(copy, { condition });
}

/** Copies what one object remembers to another: no list, set or map is shared. */
function takeOver(to: object, from: object): void {
  for (const [key, value] of Object.entries(from))
    Reflect.set(
      to,
      key,
      value instanceof Map
        ? new Map(value)
        : value instanceof Set
          ? new Set(value)
          : Array.isArray(value)
            ? [...value]
            : value,
    );
}

/** The sentence that a mistake is caught with; `identical` when the same piece comes of it; undefined if it slips by. */
function verdictOn(mutant: Mutant, base: DryFitInput, before: readonly Workshop[]): string | undefined {
  const { build, from, widerKerf } = mutant;
  const input: DryFitInput = { ...base, build, kerfOf: (tool) => base.kerfOf(tool) + (widerKerf ?? 0) };
  const anew = from === 0 || widerKerf !== undefined;
  const shop = anew ? new Workshop(build.stock, input.read, input) : likewise(before[from]!, input);
  for (const o of build.operations.slice(from)) {
    shop.run(o);
    // One fault is enough, and the piece needn't be finished.
    if (shop.faults[0]) return shop.faults[0].sentence;
  }
  const [fault] = outcomeOf(shop, input).faults;
  if (fault) return fault.sentence;
  return same(endOf(shop), endOf(before.at(-1)!)) ? 'identical' : undefined;
}

/** Some of each kind of mistake, spread over the plan. */
function sampled(all: readonly Mutant[], each: number): Mutant[] {
  const byOperator = new Map<string, Mutant[]>();
  for (const m of all) byOperator.set(m.operator, [...(byOperator.get(m.operator) ?? []), m]);
  return [...byOperator.values()].flatMap((of) =>
    of.filter((_, i) => Math.floor((i * each) / of.length) !== Math.floor(((i - 1) * each) / of.length)),
  );
}

describe.each([
  ['the glaze cabinet', demoDocument(), 2],
  ['a small cupboard', equipped(smallJob()), 4],
])('%s', (name, document, each) => {
  test('its plan is clean, and every mistake made in it is caught with a sentence, or changes nothing', {
    timeout: 3_600_000,
  }, () => {
    const { job, drawn, breakdown, build } = built(document);
    const given = dryFitInput(job, drawn, breakdown, build, solids);
    const base = { ...given, read: readMutated(given.read) };
    const before = states(base);
    expect(outcomeOf(before.at(-1)!, base)).toMatchObject({ fits: true, faults: [] });
    const all = [...mutants(build, base.read)];
    const chosen = EVERY ? all.filter((_, i) => i % EVERY === 0) : sampled(all, each);
    const caught: string[] = [];
    const unchanged: string[] = [];
    const slipped: string[] = [];
    for (const m of chosen) {
      const verdict = verdictOn(m, base, before);
      (verdict === undefined ? slipped : verdict === 'identical' ? unchanged : caught).push(m.name);
      if (verdict !== undefined) expect(verdict.length, m.name).toBeGreaterThan(8);
    }
    console.log(
      `${name}: of ${chosen.length} mistakes (out of ${all.length}) ${caught.length} are caught, ${unchanged.length} change nothing, ${slipped.length} slip by`,
    );
    expect(slipped).toEqual([]);
    // What changes nothing is two cards that don't need one another, done the other way round, and the like.
    expect(unchanged.length).toBeLessThan(chosen.length / 4);
    expect(caught.length).toBeGreaterThan(80);
  });
});
