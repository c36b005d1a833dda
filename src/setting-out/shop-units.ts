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
import type { Cure, CureEdit, Snag } from '../snag/index.ts';

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
  const say = (text: string, typed?: ReadonlyMap<string, string>) => inInches(text, format, typed);
  const cure = (c: Cure): Cure => {
    const typed = typedInInches(c, format);
    const { edits } = c;
    return {
      ...c,
      says: say(c.says, typed),
      ...(edits ? { edits: edits.map((e) => retyped(e, typed)) } : {}),
    };
  };
  return {
    ...snag,
    sentence: say(snag.sentence),
    ...(snag.rule ? { rule: { ...snag.rule, says: say(snag.rule.says) } } : {}),
    cures: snag.cures.map(cure),
  };
}

function retyped(edit: CureEdit, typed: ReadonlyMap<string, string>): CureEdit {
  const value = typed.get(String(edit.value));
  return value === undefined ? edit : { ...edit, value };
}

/** A length that a cure types, and nothing else. */
const TYPED = /^(\d+(?:\.\d+)?) mm$/;

/**
 * What a cure types into the document, in the shop's units: to the side that its sentence names, else up, since room that is
 * left is seldom too much.
 */
function typedInInches({ says, edits = [] }: Cure, format: LengthFormat): ReadonlyMap<string, string> {
  const typed = new Map<string, string>();
  for (const { value } of edits) {
    const mm = TYPED.exec(String(value))?.[1];
    if (mm === undefined) continue;
    const said = [...says.matchAll(AMOUNT)].find(([, , first, joint]) => first === mm && joint === undefined);
    const how = said?.[1] === undefined ? 'up' : wayOf(said[1]);
    typed.set(String(value), printed(mm, format, how));
  }
  return typed;
}

/** Amounts in inches; one that a cure types as it types it. */
function inInches(
  text: string,
  format: LengthFormat,
  typed: ReadonlyMap<string, string> = new Map(),
): string {
  return text.replace(
    AMOUNT,
    (_, limit: string | undefined, first: string, joint: string | undefined, second) => {
      const same = joint === undefined ? typed.get(`${first} mm`) : undefined;
      if (same !== undefined) return `${limit ?? ''}${same}`;
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
