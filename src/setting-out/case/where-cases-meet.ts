import type { Draft, DraftPart } from '../draft.ts';
import { boxTicks } from '../place.ts';
import type { MadeCase } from './case-in-full.ts';

/** What is fixed inside a case. */
export function fixedInside({ panels, partings, stands, backs }: MadeCase): readonly DraftPart[] {
  return [
    panels.left,
    panels.right,
    panels.bottom,
    ...(panels.lid ? [panels.lid] : []),
    ...partings.map((p) => p.part),
    ...stands.between.map((p) => p.part),
    ...backs.map((b) => b.part),
  ];
}

/** Strips that edge what divides a case: they are on before it goes in. */
export function edgingInside({ partings, edging }: MadeCase): readonly DraftPart[] {
  const inside = partings.map((p) => p.part);
  return edging.strips.flatMap(([strip, panel]) => (inside.includes(panel) ? [strip] : []));
}

/** True when two parts that meet along an axis do so over more than nothing, or over so much both ways, in ticks. */
export function overlaps(draft: Draft, a: DraftPart, b: DraftPart, axis: 0 | 2, least = 0): boolean {
  const [p, q] = [boxTicks(draft.ledger, a.box), boxTicks(draft.ledger, b.box)];
  return ([0, 1, 2] as const).every(
    (k) => k === axis || Math.min(p.max[k], q.max[k]) - Math.max(p.min[k], q.min[k]) > least,
  );
}

/** What is fixed inside the neighbours that a case shares a side with: it stands behind that side. */
export function behindSharedSides(all: readonly MadeCase[], made: MadeCase): readonly DraftPart[] {
  return all
    .filter((other) => other !== made && shareSide(other, made))
    .flatMap(fixedInside)
    .filter((p) => p !== made.panels.left && p !== made.panels.right);
}

/** True for two cases that close on the same side. */
export function shareSide(a: MadeCase, b: MadeCase): boolean {
  return a.panels.right === b.panels.left || a.panels.left === b.panels.right;
}
