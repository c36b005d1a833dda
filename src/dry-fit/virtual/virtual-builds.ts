import type { Chance } from '../../measure/index.ts';
import { type Blame, blamed } from './blame.ts';

/** A dimension in the loop of a fit, and how far off it may be made. */
export interface MadeDimension {
  /** In a maker's words: `length of the bottom`. */
  readonly name: string;
  /** What decides the error: dimensions with the same one, in whatever fit, are off together. */
  readonly error: string;
  /** How far the gap changes when the dimension is one larger: 1, -1, or a multiple. */
  readonly weight: number;
  /** How much larger or smaller it may turn out, in ticks. */
  readonly limit: number;
  /** Where the middle of its errors lies, in ticks; nothing when absent. */
  readonly offset?: number;
}

/** Two things that must go together. Lengths in ticks. */
export interface VirtualFit {
  readonly id: string;
  readonly name: string;
  /** The gap when everything is as its card says. */
  readonly gap: number;
  readonly least: number;
  readonly most?: number;
  readonly loop: readonly MadeDimension[];
  /** How far off the gap may be once a part has been cut to the measured opening; absent where none can be. */
  readonly cutToFit?: number;
}

/** What came of one fit in all builds. Lengths in ticks. */
export interface FitOutcome {
  readonly id: string;
  readonly name: string;
  /** The gap when all errors are at their worst together. */
  readonly worst: readonly [least: number, greatest: number];
  /** Ninety-eight of a hundred builds lie between. */
  readonly likely: readonly [least: number, greatest: number];
  /** Whether it came right in every build. */
  readonly sure: boolean;
  /** The same when its part is cut to the measured opening; absent where none can be. */
  readonly sureCutToFit?: boolean;
  /** Its dimensions, the one that matters most first. */
  readonly matters: readonly string[];
}

export interface VirtualOutcome {
  readonly builds: number;
  /** Builds in which every fit came right, as printed and with the advised parts cut to fit. */
  readonly clean: number;
  readonly cleanCutToFit: number;
  readonly fits: readonly FitOutcome[];
  /** The dimensions that spoiled most fits first; where none was spoiled, those that came nearest to it. */
  readonly matters: readonly Blame[];
}

/**
 * Builds a piece many times over with errors drawn by chance. Each error is the sum of three even draws within its
 * limit: it never goes beyond, and its standard deviation is a third of it, as a stack-up by root sum square
 * takes it to be.
 */
export function virtualBuilds(fits: readonly VirtualFit[], builds: number, chance: Chance): VirtualOutcome {
  const keys = [...new Set(fits.flatMap((f) => f.loop.map((m) => m.error)))];
  const place = new Map(keys.map((k, i) => [k, i]));
  const limits = new Float64Array(keys.length);
  for (const m of fits.flatMap((f) => f.loop)) limits[place.get(m.error)!] = m.limit;
  const terms = fits.map((f) => termsOf(f, place));
  const middles = fits.map((f) => f.gap + f.loop.reduce((sum, m) => sum + m.weight * (m.offset ?? 0), 0));
  const gaps = fits.map(() => new Float64Array(builds));
  const spoiled = fits.map(() => 0);
  const spoiledCut = fits.map(() => 0);
  const blame = new Float64Array(keys.length);
  const error = new Float64Array(keys.length);
  let clean = 0;
  let cleanCutToFit = 0;
  for (let b = 0; b < builds; b++) {
    for (let k = 0; k < keys.length; k++) error[k] = limits[k]! * thirds(chance);
    let right = true;
    let rightCut = true;
    for (const [f, fit] of fits.entries()) {
      const { at, weight } = terms[f]!;
      let gap = middles[f]!;
      for (let t = 0; t < at.length; t++) gap += weight[t]! * error[at[t]!]!;
      gaps[f]![b] = gap;
      const fine = holds(fit, gap);
      // A part cut to the opening as it is takes up all errors but those of that one cut.
      const cut = fit.cutToFit === undefined ? fine : holds(fit, fit.gap + fit.cutToFit * thirds(chance));
      if (!fine) {
        right = false;
        spoiled[f]!++;
        blamed(blame, terms[f]!, error, gap < fit.least ? -1 : 1);
      }
      if (!cut) {
        rightCut = false;
        spoiledCut[f]!++;
      }
    }
    if (right) clean++;
    if (rightCut) cleanCutToFit++;
  }
  return {
    builds,
    clean,
    cleanCutToFit,
    fits: fits.map((fit, f): FitOutcome => {
      const reach = fit.loop.length === 0 ? 0 : reachOf(terms[f]!, limits);
      const sorted = gaps[f]!.sort();
      const at = (share: number) => sorted[Math.min(builds - 1, Math.floor(share * builds))]!;
      return {
        id: fit.id,
        name: fit.name,
        worst: [Math.floor(middles[f]! - reach), Math.ceil(middles[f]! + reach)],
        likely: [Math.floor(at(0.01)), Math.ceil(at(0.99))],
        sure: spoiled[f] === 0,
        ...(fit.cutToFit === undefined ? {} : { sureCutToFit: spoiledCut[f] === 0 }),
        matters: byWeight(fit),
      };
    }),
    matters: ranked(fits, keys, blame),
  };
}

/** The errors of a loop, each once: what shares an error may cancel. */
interface Terms {
  readonly at: Int32Array;
  readonly weight: Float64Array;
}

function termsOf(fit: VirtualFit, place: ReadonlyMap<string, number>): Terms {
  const weights = new Map<number, number>();
  for (const m of fit.loop) {
    const k = place.get(m.error)!;
    weights.set(k, (weights.get(k) ?? 0) + m.weight);
  }
  return { at: Int32Array.from(weights.keys()), weight: Float64Array.from(weights.values()) };
}

function reachOf({ at, weight }: Terms, limits: Float64Array): number {
  let reach = 0;
  for (let t = 0; t < at.length; t++) reach += Math.abs(weight[t]!) * limits[at[t]!]!;
  return reach;
}

function holds(fit: VirtualFit, gap: number): boolean {
  return gap >= fit.least && (fit.most === undefined || gap <= fit.most);
}

/** A draw between -1 and 1, more often near nothing. */
function thirds(chance: Chance): number {
  return (chance.share() + chance.share() + chance.share()) * (2 / 3) - 1;
}

/** Names of a loop's dimensions, by how far each moves the gap. */
function byWeight(fit: VirtualFit): readonly string[] {
  return [...fit.loop]
    .sort((a, b) => Math.abs(b.weight) * b.limit - Math.abs(a.weight) * a.limit || (a.name < b.name ? -1 : 1))
    .map((m) => m.name);
}

/** What spoiled fits, most first; without any, what takes the greatest share of the room that a fit has. */
function ranked(fits: readonly VirtualFit[], keys: readonly string[], blame: Float64Array): readonly Blame[] {
  const name = new Map<string, string>();
  const share = new Map<string, number>();
  for (const fit of fits) {
    const room = Math.min(fit.gap - fit.least, (fit.most ?? Number.POSITIVE_INFINITY) - fit.gap);
    for (const m of fit.loop) {
      if (!name.has(m.error)) name.set(m.error, m.name);
      const part = (Math.abs(m.weight) * m.limit) / Math.max(1, room);
      share.set(m.error, Math.max(share.get(m.error) ?? 0, part));
    }
  }
  return keys
    .map((error, k): Blame & { readonly share: number } => ({
      error,
      name: name.get(error)!,
      spoiled: blame[k]!,
      share: share.get(error)!,
    }))
    .sort((a, b) => b.spoiled - a.spoiled || b.share - a.share || (a.error < b.error ? -1 : 1))
    .map(({ share: _, ...row }) => row);
}
