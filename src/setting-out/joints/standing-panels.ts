import type { CasePanels } from '../case/case-panels.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { DraftPart } from '../draft.ts';
import type { Parting } from '../spaces/openings.ts';

/**
 * Panels of a case that stand before its top or its rails are fixed. Shelves that are only screwed in, and carry no
 * upright, come last; those that are let in come with the panels that take them.
 */
export function standingPanels(
  { joints }: Pick<CaseFrame, 'joints'>,
  { left, right, bottom }: Pick<CasePanels, 'left' | 'right' | 'bottom'>,
  partings: readonly Parting[],
): readonly DraftPart[] {
  const letIn = joints !== 'pocket-screws' && joints !== 'face-screws';
  const carries = new Set(partings.flatMap((p) => (p.upright ? [p.from, p.to] : [])));
  const early = partings.filter((p) => p.upright || p.behind || p.thin || letIn || carries.has(p.part));
  return [left, right, bottom, ...early.map((p) => p.part)];
}
