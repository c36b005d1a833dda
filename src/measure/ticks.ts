/**
 * A length as a whole number of ticks. One tick is 1/3200 mm, so 0.01 mm is 32 ticks and 1/128 inch is 635:
 * both systems are exact and lengths compare without a tolerance.
 */
export type Ticks = number & { readonly ticks: unique symbol };

export const TICKS_PER_MM = 3200;
/** 25.4 mm exactly (international inch, 1959). */
export const TICKS_PER_INCH = 81280;

/** Lengths fit 32 bits: about 671 m either way. */
export const LONGEST = 0x7fffffff as Ticks;

export const ZERO = 0 as Ticks;

/** Declares a whole number to be a length in ticks. Throws on fractions, NaN and what 32 bits can't hold. */
export function ticks(n: number): Ticks {
  if (!Number.isInteger(n) || n > LONGEST || n < -LONGEST) throw new RangeError(`not a whole tick: ${n}`);
  return (n === 0 ? 0 : n) as Ticks;
}

/** Millimetres to ticks, to the nearest tick (half away from zero). */
export function fromMm(mm: number): Ticks {
  return ticks(roundHalfAway(mm * TICKS_PER_MM));
}

/** Inches to ticks, to the nearest tick (half away from zero). */
export function fromInches(inches: number): Ticks {
  return ticks(roundHalfAway(inches * TICKS_PER_INCH));
}

/** Ticks to millimetres. The quotient is exact in decimals, so JSON carries it without loss. */
export function toMm(t: number): number {
  return t / TICKS_PER_MM;
}

/** Ticks to inches, as a binary fraction's nearest double. */
export function toInches(t: number): number {
  return t / TICKS_PER_INCH;
}

/** The nearest whole number, halves away from zero, so that -x always rounds to minus what x does. */
export function roundHalfAway(x: number): number {
  const r = Math.sign(x) * Math.floor(Math.abs(x) + 0.5);
  return r === 0 ? 0 : r;
}

/** How a length goes to a step: down is toward the smaller number, up toward the larger. */
export type Rounding = 'down' | 'up' | 'nearest';

/** `t` on the grid of `step` ticks. Nearest takes halves away from zero. */
export function toStep(t: number, step: number, how: Rounding): Ticks {
  if (step <= 0) throw new RangeError(`a step must be positive: ${step}`);
  const q = t / step;
  const n = how === 'down' ? Math.floor(q) : how === 'up' ? Math.ceil(q) : roundHalfAway(q);
  return ticks(n * step);
}
