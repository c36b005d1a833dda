import type { Draft } from '../draft.ts';
import type { TracedBox } from '../place.ts';

/** How far an opening reaches, or all that a shelf's or a divider's record makes; undefined where that isn't made. */
export function extentOf(draft: Draft, id: string): TracedBox | undefined {
  const opening = draft.openings.find((o) => o.id === id);
  if (opening) return opening.box;
  const [first, ...others] = draft.parts.filter((p) => p.record === id);
  if (!first) return undefined;
  const l = draft.ledger;
  const outermost = (end: 'min' | 'max', sign: 1 | -1) =>
    ([0, 1, 2] as const).map((k) =>
      others.reduce(
        (t, p) => (sign * (l.ticks(p.box[end][k]) - l.ticks(t)) > 0 ? p.box[end][k] : t),
        first.box[end][k],
      ),
    ) as unknown as TracedBox['min'];
  return { min: outermost('min', -1), max: outermost('max', 1) };
}
