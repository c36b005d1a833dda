import { type Ticks, ticks } from './ticks.ts';

/** One made dimension of a fit. */
export interface LoopMember {
  readonly name: string;
  /** 1 when a larger dimension opens the gap, -1 when it closes it. */
  readonly sign: 1 | -1;
  /** The drawn size. */
  readonly size: Ticks;
  /** How much larger and how much smaller it may turn out; neither is below zero. */
  readonly plus: Ticks;
  readonly minus: Ticks;
  /** Members with the same name here share one error (two sides cut from one lot have one thickness). */
  readonly sharedBy?: string;
}

/** What a loop adds up to. */
export interface StackUp {
  /** The gap as drawn. */
  readonly drawn: Ticks;
  /** The gap when every error is at its worst at once. */
  readonly worst: { readonly least: Ticks; readonly greatest: Ticks };
  /** The gap to expect when errors are independent: three standard deviations either side, rounded outward. */
  readonly likely: { readonly least: Ticks; readonly greatest: Ticks };
  /** Half the width of `likely`, in ticks, to a millionth. */
  readonly rss: number;
}

/**
 * Adds up a signed loop of dimensions: worst case T = sum |a| t, and root sum square T = sqrt(sum a^2 t^2), where
 * each t is taken as three standard deviations of an unrelated, centred, normal error. Unequal limits are centred
 * first. Members that share an error are one term with the sum of their signs, so a shared error can cancel.
 * Source: F. Scholz, "Tolerance Stack Analysis Methods" (1995).
 * Throws when limits are below zero, or members that share an error have different limits.
 */
export function stackUp(loop: readonly LoopMember[]): StackUp {
  let drawn = 0;
  const errors = new Map<string, { weight: number; plus: number; minus: number }>();
  loop.forEach((m, i) => {
    if (m.plus < 0 || m.minus < 0) throw new RangeError(`limits of ${m.name} are below zero`);
    drawn += m.sign * m.size;
    const key = m.sharedBy === undefined ? `alone ${i}` : `shared ${m.sharedBy}`;
    const known = errors.get(key);
    if (known === undefined) errors.set(key, { weight: m.sign, plus: m.plus, minus: m.minus });
    else if (known.plus !== m.plus || known.minus !== m.minus)
      throw new Error(`${m.name} shares its error with ${m.sharedBy} but has other limits`);
    else known.weight += m.sign;
  });

  let least = drawn;
  let greatest = drawn;
  let square = 0;
  for (const { weight, plus, minus } of errors.values()) {
    const up = weight > 0 ? plus : minus;
    const down = weight > 0 ? minus : plus;
    greatest += Math.abs(weight) * up;
    least -= Math.abs(weight) * down;
    square += (weight * (plus + minus)) ** 2 / 4;
  }
  // The worst limits lie evenly about the centre of the shifted errors. Roots are rounded before use.
  const centre = (least + greatest) / 2;
  const rss = Math.round(Math.sqrt(square) * 1e6) / 1e6;
  return {
    drawn: ticks(drawn),
    worst: { least: ticks(least), greatest: ticks(greatest) },
    likely: { least: ticks(Math.floor(centre - rss)), greatest: ticks(Math.ceil(centre + rss)) },
    rss,
  };
}
