import { type Ticks, type Traced, toMm } from '../measure/index.ts';
import { type FitKind, type PrintedFit, partsAndBoards } from '../setting-out/index.ts';
import type { Figures, Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { stackOfFit } from './fit-errors.ts';
import { lostFit } from './lost-fit.ts';
import { listed, ShopWords } from './shop-words.ts';

/** A fit that may come out of its limits; sizes in mm. */
interface Astray {
  readonly fit: PrintedFit;
  readonly code: 'fits.tight' | 'fits.loose';
  /** Whether that is to be expected, or needs every error to be at its worst at once. */
  readonly likely: boolean;
  readonly comesTo: number;
  readonly limit: number;
}

/**
 * Whether what must go together will, with the errors of this shop's tools and stock. Doors are told one by one, all
 * else together, by the one that is furthest off; a note where only the worst case fails, to mind where the likely does.
 */
export function fits({ job, setOut }: Pick<CheckInput, 'job' | 'setOut'>): readonly Snag[] {
  const groups = new Map<string, Astray[]>();
  const lost = setOut.fits.flatMap((fit) => lostFit(job, setOut, fit) ?? []);
  for (const fit of setOut.fits)
    for (const astray of strayings(job, setOut, fit)) {
      const alone = ONE_BY_ONE.has(fit.kind) ? (fit.toFit?.split('/')[0] ?? fit.id) : '';
      groups.set(alone, [...(groups.get(alone) ?? []), astray]);
    }
  const words = new ShopWords(job);
  return [...lost, ...[...groups.values()].map((group) => snagOf(setOut, words, group))];
}

const ONE_BY_ONE: ReadonlySet<FitKind> = new Set<FitKind>(['door', 'drawer', 'track']);

function strayings(job: CheckInput['job'], setOut: CheckInput['setOut'], fit: PrintedFit): Astray[] {
  const { worst, likely } = stackOfFit(job, setOut.ledger, fit);
  const mm = (t: Traced | Ticks, traced = false) => toMm(traced ? setOut.ledger.ticks(t as Traced) : t);
  const least = mm(fit.least, true);
  const most = fit.most === undefined ? Number.POSITIVE_INFINITY : mm(fit.most, true);
  const found: Astray[] = [];
  if (mm(worst.least) < least) {
    const isLikely = mm(likely.least) < least;
    const comesTo = mm(isLikely ? likely.least : worst.least);
    found.push({ fit, code: 'fits.tight', likely: isLikely, comesTo, limit: least });
  }
  if (mm(worst.greatest) > most) {
    const isLikely = mm(likely.greatest) > most;
    const comesTo = mm(isLikely ? likely.greatest : worst.greatest);
    found.push({ fit, code: 'fits.loose', likely: isLikely, comesTo, limit: most });
  }
  return found;
}

function snagOf(setOut: CheckInput['setOut'], words: ShopWords, group: readonly Astray[]): Snag {
  const worst = group.reduce((a, b) =>
    b.likely === a.likely ? (beyond(b) > beyond(a) ? b : a) : b.likely ? b : a,
  );
  const { fit, code, likely, comesTo, limit } = worst;
  const ids = [...new Set(group.flatMap((g) => g.fit.toFit ?? []))];
  const parts = ids.flatMap((id) => partsAndBoards(setOut).find((p) => p.id === id) ?? []);
  const first = parts.find((p) => p.id === fit.toFit) ?? parts[0];
  const many = new Set(group.map((g) => g.fit.id)).size;
  const tight = code === 'fits.tight';
  const drawn = toMm(setOut.ledger.ticks(fit.gap));
  const figures: Figures = tight ? words.atLeast(comesTo, limit) : words.atMost(comesTo, limit);
  return {
    code,
    level: likely ? 'mind' : 'note',
    where: first ? { path: `design/records/${first.record}`, record: first.record, part: first.id } : {},
    sentence: `${capital(fit.name)}: drawn ${gap(words, drawn)}, but ${
      likely
        ? 'with the errors of this shop’s tools it may well come to'
        : 'if every error falls the worst way it comes to'
    } ${gap(words, comesTo)}; ${allowed(words, tight, limit)}.${
      many > 1 ? ` ${many} fits may stray so; this one furthest.` : ''
    }`,
    figures,
    rule: {
      says: 'the gap of a fit is reckoned with every size of its loop as far off as its tool or its stock may be; likely is the root of the sum of squares',
      source: 'F. Scholz, “Tolerance Stack Analysis Methods” (1995); accuracies as the shop states them',
      confirmed: true,
    },
    cures: [
      {
        says:
          parts.length > 0
            ? `Cut ${listed(parts.map((p) => p.mark))} last, ${
                parts.length === 1 ? `to ${TO_MEASURED[fit.kind]}` : 'each to what you then measure'
              }.`
            : 'Measure what has been made, and set what comes next to that.',
      },
    ],
  };
}

const TO_MEASURED: Record<FitKind, string> = {
  door: 'the opening as it was built, less its gaps and the film of the finish',
  drawer: 'the case as it was built, less what its runners need',
  track: 'the tracks as they were cut',
  back: 'from the bottom of one channel to that of the other, less the play',
  shelf: 'the clear distance, and what goes into dados',
  divider: 'the clear distance, and what goes into dados',
  panel: 'the one that it must be like',
  frame: 'the strip opposite, from tip to tip',
  spline: 'both grooves as they were cut, less the play',
  button: 'the mortise as it was routed',
};

function gap(words: ShopWords, mm: number): string {
  return mm < 0 ? `${words.gap(-mm)} too tight` : mm === 0 ? 'no gap' : words.gap(mm);
}

function allowed(words: ShopWords, tight: boolean, limit: number): string {
  if (limit < 0) return `no more than ${words.gap(-limit)} can be sprung in`;
  return `it should be ${tight ? 'at least' : 'at most'} ${gap(words, limit)}`;
}

function beyond({ comesTo, limit }: Astray): number {
  return Math.abs(comesTo - limit);
}

function capital(s: string): string {
  return s.charAt(0).toUpperCase() + s.slice(1);
}
