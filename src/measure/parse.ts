import { type Figure, type Misread, Reader, wholeNearest } from './read-number.ts';
import { LONGEST, TICKS_PER_INCH, TICKS_PER_MM, type Ticks, ticks } from './ticks.ts';

/** What lengths are typed in when no unit is given. */
export type Units = 'mm' | 'in';

/** A length that was read; `exact` is false when it had to go to the nearest tick. */
export interface ReadLength {
  readonly ok: true;
  readonly value: Ticks;
  readonly exact: boolean;
}

type Unit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

const TICKS_IN: Readonly<Record<Unit, number>> = {
  mm: TICKS_PER_MM,
  cm: 10 * TICKS_PER_MM,
  m: 1000 * TICKS_PER_MM,
  in: TICKS_PER_INCH,
  ft: 12 * TICKS_PER_INCH,
};

const SPELLINGS: Readonly<Record<Unit, readonly string[]>> = {
  mm: ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  in: ['in', 'inch', 'inches'],
  ft: ['ft', 'foot', 'feet'],
};

const UNIT_OF = new Map<string, Unit>(
  (Object.keys(SPELLINGS) as Unit[]).flatMap((unit) => SPELLINGS[unit].map((word) => [word, unit] as const)),
);

/**
 * Reads a length as makers write it: `23 1/4"`, `4' 11 1/16"`, `4 ft 11 in`, `-3/8 in`, `1-3/4`, `1¾`, `0.164 in`,
 * `590 mm`, `1,5 m`. A bare number is in `units`. Never throws: what can't be read says why and where.
 *
 * Thousands are not set apart, because `1,580` is 1580 to one reader and 1.58 to another; so a comma with exactly
 * three digits behind it is refused, but in metres (there it can't be thousands: lengths end at 671 m).
 */
export function parseLength(text: string, units: Units): ReadLength | Misread {
  const r = new Reader(text);
  if (r.tooLong) return r.misread('this is too long for a length', 0);
  r.skipSpace();
  if (r.atEnd) return r.misread('a length is missing; write 590 mm or 23 1/4"', 0);
  const from = r.place;
  const negative = r.take('-');
  if (!negative) r.take('+');
  r.skipSpace();

  const size = magnitude(r, units);
  if (!size.ok) return size;
  r.skipSpace();
  if (!r.atEnd) return r.misread('this is left over', r.place);

  const { value, exact } = wholeNearest(negative ? -size.over : size.over, size.under);
  if (Math.abs(value) > LONGEST) return r.misread('this is longer than 671 m', from);
  return { ok: true, value: ticks(value), exact };
}

/** A length in ticks, as an exact fraction. */
interface Magnitude {
  readonly ok: true;
  readonly over: bigint;
  readonly under: bigint;
}

function magnitude(r: Reader, units: Units): Magnitude | Misread {
  const from = r.place;
  const figure = r.figure();
  if (!figure.ok) return figure;
  const unit = readUnit(r);
  if (typeof unit === 'object') return unit;
  const feet = inTicks(r, from, figure, unit ?? units);
  if (!feet.ok || unit !== 'ft') return feet;

  // 4' 11", 4'-11" and 4' - 11": what follows feet is inches.
  r.skipSpace();
  const dash = r.place;
  const dashed = r.take('-');
  r.skipSpace();
  if (r.atEnd) return dashed ? r.misread('inches are missing after the feet', dash) : feet;
  if (!figure.whole) return r.misread('feet with inches after them must be whole', from);
  const inchesAt = r.place;
  const inches = r.figure();
  if (!inches.ok) return inches;
  const second = readUnit(r);
  if (typeof second === 'object') return second;
  if (second !== undefined && second !== 'in') return r.misread('only inches can follow feet', inchesAt);
  if (inches.over >= 12n * inches.under) return r.misread('inches after feet must be less than 12', inchesAt);
  const rest = inTicks(r, inchesAt, inches, 'in');
  if (!rest.ok) return rest;
  return { ok: true, over: feet.over * rest.under + rest.over * feet.under, under: feet.under * rest.under };
}

function inTicks(r: Reader, place: number, figure: Figure, unit: Unit): Magnitude | Misread {
  if (figure.doubtful && unit !== 'm')
    return r.misread(
      'a comma with three digits behind it could set thousands apart; write 1580, or 1.580 or 1,58 for a decimal',
      place,
    );
  return { ok: true, over: figure.over * BigInt(TICKS_IN[unit]), under: figure.under };
}

function readUnit(r: Reader): Unit | undefined | Misread {
  r.skipSpace();
  const from = r.place;
  if (r.take('"') || r.take("''")) return 'in';
  if (r.take("'")) return 'ft';
  const word = r.word();
  if (word === '') return undefined;
  return (
    UNIT_OF.get(word) ?? r.misread(`${word} is not a unit of length here; use mm, cm, m, in or ft`, from)
  );
}
