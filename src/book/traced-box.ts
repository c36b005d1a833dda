import type { Ledger, Traced } from '../measure/index.ts';
import { type Axis, axisOf, type Part, type TracedBox } from '../setting-out/index.ts';

const NAMES = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;

/**
 * Sums and differences that drawings show, kept by ledger: a view drawn again refers to the same entries instead of
 * adding new ones.
 */
const KEPT = new WeakMap<Ledger, Map<string, Traced>>();

function kept(ledger: Ledger, key: string, make: () => Traced): Traced {
  const known = KEPT.get(ledger) ?? new Map<string, Traced>();
  KEPT.set(ledger, known);
  const t = known.get(key) ?? make();
  known.set(key, t);
  return t;
}

/** A part's bounding box where it stands, with traced corners. */
export function partBox(ledger: Ledger, part: Part): TracedBox {
  const min = [...part.place.origin] as [Traced, Traced, Traced];
  const max = [...part.place.origin] as [Traced, Traced, Traced];
  const runs = [
    [part.place.length, part.length],
    [part.place.width, part.width],
    [part.place.thickness, part.thickness],
  ] as const;
  for (const [direction, size] of runs) {
    const { axis, sign } = axisOf(direction);
    const at = part.place.origin[axis];
    if (sign > 0)
      max[axis] = kept(ledger, `${at}+${size}`, () =>
        ledger.sum(`${NAMES[axis * 2 + 1]} of the ${part.name}`, at, size),
      );
    else
      min[axis] = kept(ledger, `${at}-${size}`, () =>
        ledger.less(`${NAMES[axis * 2]} of the ${part.name}`, at, size),
      );
  }
  return { min, max };
}

/** The length from one traced place to another, as a ledger entry. */
export function between(ledger: Ledger, reason: string, from: Traced, to: Traced): Traced {
  return kept(ledger, `${to}-${from}`, () => ledger.less(reason, to, from));
}

/** A part's size along an axis of the piece. */
export function sizeAlong(part: Part, axis: Axis): Traced {
  if (axisOf(part.place.length).axis === axis) return part.length;
  return axisOf(part.place.width).axis === axis ? part.width : part.thickness;
}
