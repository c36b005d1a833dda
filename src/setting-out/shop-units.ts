import { formatOf, type Shop } from '../job/index.ts';
import {
  fromMm,
  type LengthFormat,
  printLength,
  printStep,
  type Rounding,
  TICKS_PER_INCH,
  type Ticks,
  toStep,
} from '../measure/index.ts';
import type { Cure, Snag } from '../snag/index.ts';

/** An amount of millimetres, with the words before it that tell which way it may be off; of two, `9 to 12 mm`, both. */
const AMOUNT = /((?:at most|at least|no \w+ than) )?(\d+(?:\.\d+)?)(?:( to | x )(\d+(?:\.\d+)?))? mm\b/g;

/**
 * A snag in the units of the shop. Sentences are written in millimetres, in which most figures of the trade are given;
 * where a shop works in inches its maker is to read those, so each amount is turned as it leaves the room: limits to the
 * safe side, and those below an inch as finely as a rule is read.
 */
export function inShopUnits(snag: Snag, shop: Pick<Shop, 'units' | 'precision'>): Snag {
  if (shop.units === 'mm') return snag;
  const format = formatOf(shop);
  const say = (text: string, asTyped: readonly unknown[] = []) => inInches(text, format, asTyped);
  const cure = (c: Cure): Cure => ({
    ...c,
    says: say(
      c.says,
      (c.edits ?? []).map((e) => e.value),
    ),
  });
  return {
    ...snag,
    sentence: say(snag.sentence),
    ...(snag.rule ? { rule: { ...snag.rule, says: say(snag.rule.says) } } : {}),
    cures: snag.cures.map(cure),
  };
}

/** What a cure types into the document stays as it is typed. */
function inInches(text: string, format: LengthFormat, asTyped: readonly unknown[]): string {
  return text.replace(
    AMOUNT,
    (whole, limit: string | undefined, first: string, joint: string | undefined, second) => {
      if (asTyped.includes(`${first} mm`)) return whole;
      const how = wayOf(limit);
      if (joint === undefined) return `${limit ?? ''}${printed(first, format, how)}`;
      return `${limit ?? ''}${printed(first, format, joint === ' to ' ? 'up' : how)}${joint}${printed(second, format, joint === ' to ' ? 'down' : how)}`;
    },
  );
}

function wayOf(limit: string | undefined): Rounding {
  if (limit === undefined) return 'nearest';
  return /least|less|shorter|thinner|narrower|lower/.test(limit) ? 'up' : 'down';
}

function printed(mm: string, format: LengthFormat, how: Rounding): string {
  const size = fromMm(Number(mm));
  const fine: LengthFormat = size < TICKS_PER_INCH ? { unit: 'in', denominator: 64 } : format;
  return printLength(toStep(size, printStep(fine), how) as Ticks, fine).text;
}
