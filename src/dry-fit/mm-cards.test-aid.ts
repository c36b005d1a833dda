import { fromMm, type Ticks, type Traced } from '../measure/index.ts';

/** In tests a card's numbers are the lengths themselves. */
export function onCard(mm: number): Traced {
  return fromMm(mm) as number as Traced;
}

/** Reads such a number. */
export function readCard(t: Traced): Ticks {
  return t as number as Ticks;
}
