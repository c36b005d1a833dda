import { roundHalfAway, TICKS_PER_INCH, TICKS_PER_MM, type Ticks, toMm, toStep } from './ticks.ts';

/** How lengths are printed: to a fraction of an inch (in feet and inches if asked), or to a step of millimetres. */
export type LengthFormat =
  | { readonly unit: 'in'; readonly denominator: 16 | 32 | 64; readonly feet?: boolean }
  | { readonly unit: 'mm'; readonly step: 0.5 | 0.1 };

/** A printed length; `exact` tells whether the print is the length. */
export interface PrintedLength {
  readonly text: string;
  readonly exact: boolean;
}

/** The grid that a format prints on, in ticks. A whole number for every format, so printing is exact arithmetic. */
export function printStep(format: LengthFormat): Ticks {
  return format.unit === 'in'
    ? ((TICKS_PER_INCH / format.denominator) as Ticks)
    : (roundHalfAway(TICKS_PER_MM * format.step) as Ticks);
}

/** The length that a format prints: the nearest on its grid, halves away from zero. */
export function printedTicks(t: Ticks, format: LengthFormat): Ticks {
  return toStep(t, printStep(format), 'nearest');
}

/** A length for reading: `23 1/4"`, `-3/8"`, `4' 11 1/16"`, `590 mm`, `368.5 mm`. */
export function printLength(t: Ticks, format: LengthFormat): PrintedLength {
  const shown = printedTicks(t, format);
  const size = Math.abs(shown);
  const sign = shown < 0 ? '-' : '';
  const text = format.unit === 'in' ? inches(size, format.feet === true) : millimetres(size);
  return { text: sign + text, exact: shown === t };
}

/** A length for JSON, in mm. Every tick is a decimal of at most seven places, so nothing is lost. */
export function toJsonMm(t: Ticks): number {
  return toMm(t);
}

function millimetres(size: number): string {
  const tenths = roundHalfAway((size * 10) / TICKS_PER_MM);
  const whole = Math.floor(tenths / 10);
  const tenth = tenths % 10;
  return tenth === 0 ? `${whole} mm` : `${whole}.${tenth} mm`;
}

function inches(size: number, feet: boolean): string {
  const whole = Math.floor(size / TICKS_PER_INCH);
  const sixtyFourths = ((size % TICKS_PER_INCH) * 64) / TICKS_PER_INCH;
  const part = sixtyFourths === 0 ? '' : reduced(sixtyFourths, 64);
  // After feet a zero is kept, 4' 0 1/2", as drawings do: nobody then wonders whether a digit is missing.
  if (feet && whole >= 12) return `${Math.floor(whole / 12)}' ${whole % 12}${part === '' ? '' : ` ${part}`}"`;
  return `${mixed(whole, part)}"`;
}

function mixed(whole: number, part: string): string {
  if (part === '') return `${whole}`;
  return whole === 0 ? part : `${whole} ${part}`;
}

/** A proper fraction whose denominator is a power of two, in lowest terms. */
function reduced(over: number, under: number): string {
  let [a, b] = [over, under];
  while (a % 2 === 0) {
    a /= 2;
    b /= 2;
  }
  return `${a}/${b}`;
}
