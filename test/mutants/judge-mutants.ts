import { type DryFitInput, outcomeOf } from '../../src/dry-fit/dry-fit.ts';
import { Hollows } from '../../src/dry-fit/hollows.ts';
import { type Box, boundsOf } from '../../src/dry-fit/shape-bounds.ts';
import type { Way } from '../../src/dry-fit/virtual-piece.ts';
import { Workshop } from '../../src/dry-fit/workshop.ts';
import { toMm } from '../../src/measure/index.ts';
import { dryFitInput } from '../../src/plan/dry-fit-input.ts';
import type { Point, Solids } from '../../src/solid/index.ts';
import type { Built } from '../build/built.ts';
import { type Mutant, mutants, readMutated } from './mutate.ts';

/** What became of the mistakes made in a plan, by name. */
export interface MutantsJudged {
  /** How many mistakes there are to be made in it. */
  readonly outOf: number;
  readonly caught: readonly string[];
  /** Those that the same piece comes of. */
  readonly unchanged: readonly string[];
  /** Those after which nothing stands further off than rounding on honest cards may bring it: rows that lie nearly alike from either edge. */
  readonly near: readonly string[];
  readonly slipped: readonly string[];
}

/** Makes mistakes in a plan, those that are chosen of all there are, and runs it with each; undefined where the plan itself isn't clean. */
export function judgeMutants(
  { job, drawn, breakdown, build }: Built,
  solids: Solids,
  choose: (all: readonly Mutant[]) => readonly Mutant[],
): MutantsJudged | undefined {
  const given = dryFitInput(job, drawn, breakdown, build, solids);
  // Most hollows are the same in every run.
  const base = { ...given, read: readMutated(given.read), hollows: new Hollows(solids) };
  const before = states(base);
  if (!outcomeOf(before.at(-1)!, base).fits) return undefined;
  const all = [...mutants(build, base.read)];
  const judged = {
    outOf: all.length,
    caught: [] as string[],
    unchanged: [] as string[],
    near: [] as string[],
    slipped: [] as string[],
  };
  for (const m of choose(all)) {
    const verdict = verdictOn(m, base, before);
    if (verdict.length < 4) throw new Error(`${m.name}: ${verdict}`);
    (verdict in judged ? judged[verdict as 'unchanged' | 'near' | 'slipped'] : judged.caught).push(m.name);
  }
  return judged;
}

/** What is printed of it. */
export function rateOf(name: string, { outOf, caught, unchanged, near, slipped }: MutantsJudged): string {
  const made = caught.length + unchanged.length + near.length + slipped.length;
  return `${name}: of ${made} mistakes (out of ${outOf}) ${caught.length} are caught, ${unchanged.length} change nothing, ${near.length} come as near as rounding does, ${slipped.length} slip by`;
}

/** The finished piece, the screws in it and what is left over by name, all lengths in mm. */
function endOf(shop: Workshop): unknown {
  const standing = shop.assemblies.get('case')?.members ?? [];
  const members = standing
    .map(({ mark, piece, turn, origin }) => {
      // Cuts in any order make the same piece, and it doesn't matter where on the bench it was begun.
      const [cuts, ways] = [
        new Set(piece.cuts.map((c) => inTheWood(boundsOf(c), piece.size.map(toMm)))),
        new Set(piece.ways.map(fromEitherSide)),
      ];
      const at = origin.map((x, i) => toMm(x - standing[0]!.origin[i]!));
      return { mark, turn, size: piece.size.map(toMm), cuts, ways, at };
    })
    .sort((a, b) => (a.mark < b.mark ? -1 : 1));
  const screws = shop.screws.map((s) => [...s.parts, s.radius].join()).sort();
  return { members, screws, loose: [...shop.loose.keys()].sort() };
}

/** What of a cut is in the wood: how far out of it the tool runs makes no other piece. */
export function inTheWood({ min, max }: Box, size: readonly number[]): Box {
  const within = (x: number, i: number) => Math.min(size[i]!, Math.max(0, x));
  return { min: min.map(within) as unknown as Point, max: max.map(within) as unknown as Point };
}

/** A plain hole right through is the same hole, whichever side it was bored from; only what may be bored wider at its mouth tells. */
function fromEitherSide(way: Way): Partial<Way> {
  const { side: _, at, along, ...rest } = way;
  if (way.kind !== 'hole' || way.depth !== undefined || way.plugged !== undefined) return way;
  return {
    ...rest,
    at: at.map((x, i) => (along[i] === 0 ? x : 0)) as unknown as Point,
    along: along.map(Math.abs) as unknown as Point,
  };
}

/** As near as marking out comes; and as far as two roundings to 1/32 inch may bring a place from where it was drawn, mm. */
const MARKING = 0.7;
const ROUNDING = 1.6;

/** True when two ends are the same, lengths as near as so many millimetres. */
function same(a: unknown, b: unknown, apart: number): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= apart;
  if (a instanceof Set && b instanceof Set) return a.size === b.size && eachFinds([...a], [...b], apart);
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const [left, right] = [Object.entries(a), Object.entries(b)];
  return (
    left.length === right.length && left.every(([key, value]) => same(value, Reflect.get(b, key), apart))
  );
}

/** True when each of some things is the same as another of as many, in whatever order. */
function eachFinds(some: readonly unknown[], others: readonly unknown[], apart: number): boolean {
  const left = [...others];
  return some.every((x) => {
    const i = left.findIndex((y) => same(x, y, apart));
    if (i >= 0) left.splice(i, 1);
    return i >= 0;
  });
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

/** The sentence that a mistake is caught with; else `unchanged`, `near` or `slipped`. */
function verdictOn(mutant: Mutant, base: DryFitInput, before: readonly Workshop[]): string {
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
  const [end, right] = [endOf(shop), endOf(before.at(-1)!)];
  return same(end, right, MARKING) ? 'unchanged' : same(end, right, ROUNDING) ? 'near' : 'slipped';
}

/** Some of each kind of mistake, spread over the plan. */
export function sampled(all: readonly Mutant[], each: number): Mutant[] {
  const byOperator = new Map<string, Mutant[]>();
  for (const m of all) byOperator.set(m.operator, [...(byOperator.get(m.operator) ?? []), m]);
  return [...byOperator.values()].flatMap((of) =>
    of.filter((_, i) => Math.floor((i * each) / of.length) !== Math.floor(((i - 1) * each) / of.length)),
  );
}
