import { BASES, DRAWERS, SETTING_OUT } from '../../materials/index.ts';
import type { Ledger, LengthRow, Traced } from '../../measure/index.ts';
import type { Duty } from './joint.ts';

/** The trade figures that a row of screws, dowels or biscuits is spaced by. */
export interface SpacingRule {
  readonly least: LengthRow;
  readonly most: LengthRow;
  readonly end: LengthRow;
  readonly endLeast: LengthRow;
}

const RULES: Partial<Record<Duty, SpacingRule>> = {
  carries: {
    least: SETTING_OUT.carrySpacingLeast,
    most: SETTING_OUT.carrySpacingMost,
    end: SETTING_OUT.carryEnd,
    endLeast: SETTING_OUT.carryEndLeast,
  },
  base: {
    least: SETTING_OUT.baseSpacingLeast,
    most: SETTING_OUT.baseSpacingMost,
    end: SETTING_OUT.baseEnd,
    endLeast: SETTING_OUT.baseEndLeast,
  },
  drawer: {
    least: DRAWERS.cornerSpacingLeast,
    most: DRAWERS.cornerSpacingMost,
    end: DRAWERS.cornerEnd,
    endLeast: DRAWERS.cornerEndLeast,
  },
  foot: {
    least: SETTING_OUT.footSpacingLeast,
    most: SETTING_OUT.footSpacingMost,
    end: SETTING_OUT.footEnd,
    endLeast: SETTING_OUT.footEndLeast,
  },
  frame: {
    least: BASES.apronSpacingLeast,
    most: BASES.apronSpacingMost,
    end: BASES.apronEnd,
    endLeast: BASES.apronEndLeast,
  },
  back: {
    least: SETTING_OUT.backSpacingLeast,
    most: SETTING_OUT.backSpacingMost,
    end: SETTING_OUT.panelEdgeEnd,
    endLeast: SETTING_OUT.panelEdgeEnd,
  },
  filler: {
    least: SETTING_OUT.connectSpacingLeast,
    most: SETTING_OUT.connectSpacingMost,
    end: SETTING_OUT.connectEnd,
    endLeast: SETTING_OUT.connectEndLeast,
  },
  connect: {
    least: SETTING_OUT.connectSpacingLeast,
    most: SETTING_OUT.connectSpacingMost,
    end: SETTING_OUT.connectEnd,
    endLeast: SETTING_OUT.connectEndLeast,
  },
};

/** Distances of the screws from the low end of a joint, and the least distance any may have from either end. */
export interface Spacing {
  readonly at: readonly Traced[];
  readonly endLeast: Traced;
}

/**
 * Screws along a joint of the given length: the fewest that stand no further apart than the duty allows, as close
 * to its ends as they may; closer than the least spacing only where the joint is too short for two screws
 * otherwise. Places are on the grid of `step`. The wood may ask for more from the ends (`fromEnds`) than the duty does.
 */
export function spaceScrews(
  ledger: Ledger,
  duty: Duty,
  length: Traced,
  step: Traced,
  fromEnds?: Traced,
): Spacing {
  const rule = RULES[duty];
  if (!rule) throw new Error(`no screws in a joint that is there for ${duty}`);
  return spaceBy(ledger, rule, length, step, fromEnds);
}

/** A row along a joint, spaced by trade figures of its own. */
export function spaceBy(
  ledger: Ledger,
  rule: SpacingRule,
  length: Traced,
  step: Traced,
  fromEnds?: Traced,
): Spacing {
  const l = ledger;
  const further = (t: Traced) =>
    fromEnds === undefined ? t : l.greatest('as far from the end as the wood asks for', t, fromEnds);
  const end = further(l.row(rule.end));
  const endLeast = further(l.row(rule.endLeast));
  const least = l.row(rule.least);
  const most = l.row(rule.most);
  const t = (x: Traced) => l.ticks(x);
  const between = l.less('length of the joint between its end screws', length, end, end);
  const gaps = Math.max(1, Math.ceil(t(between) / t(most)));
  const even = (n: number) => l.share('an even spacing', between, new Array<number>(n).fill(1), 0);

  if (t(between) > 0) {
    const spacing = even(gaps);
    if (t(spacing) >= t(least)) return row(l, length, spacing, gaps, step, endLeast);
    // Closer to the ends, at the least spacing; or one screw fewer, further apart.
    if (t(length) - gaps * t(least) >= 2 * t(endLeast)) return row(l, length, least, gaps, step, endLeast);
    if (gaps > 1)
      return row(
        l,
        length,
        l.least('no further apart than allowed', even(gaps - 1), most),
        gaps - 1,
        step,
        endLeast,
      );
    if (t(spacing) >= t(least) / 4) return row(l, length, spacing, 1, step, endLeast);
  }
  const middle = l.round(
    'middle of the joint',
    l.ratio('middle of the joint', length, SETTING_OUT.half),
    step,
    'down',
  );
  return { at: [middle], endLeast };
}

function row(l: Ledger, length: Traced, raw: Traced, gaps: number, step: Traced, endLeast: Traced): Spacing {
  const spacing = l.round('spacing of the screws', raw, step, 'down');
  const rest = l.less(
    'what the row of screws leaves at its ends',
    length,
    l.times('from the first screw to the last', spacing, gaps),
  );
  const first = l.round(
    'from the end of the joint to the first screw',
    l.ratio('half at either end', rest, SETTING_OUT.half),
    step,
    'down',
  );
  const at = [first];
  for (let i = 1; i <= gaps; i++)
    at.push(
      l.sum('from the end of the joint to the screw', first, l.times('spacings up to here', spacing, i)),
    );
  return { at, endLeast };
}
