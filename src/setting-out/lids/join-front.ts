import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import type { Joinable } from '../joints/joints.ts';
import { hasJig, joinPanels } from '../joints/panel-joint.ts';
import { findsWood, pocketJoint } from '../joints/pocket-joint.ts';
import { standingPanels } from '../joints/standing-panels.ts';

/** Joins a fixed front to both sides, and with pockets to the bottom that it stands on, where these find a place. */
export function joinFront(
  draft: Draft,
  bores: Bores,
  { frame, panels, partings }: Joinable,
  front: DraftPart,
): void {
  const standing = standingPanels(frame, panels, partings).filter((p) => p !== front);
  joinPanels(draft, bores, frame, { part: front, edge: 'start', mate: panels.left, standing });
  joinPanels(draft, bores, frame, { part: front, edge: 'end', mate: panels.right, standing });
  const down = {
    part: front,
    edge: 'near',
    face: 'under',
    mate: panels.bottom,
    duty: 'carries',
    standing,
    besides: true,
  } as const;
  if (hasJig(draft) && findsWood(draft, down)) pocketJoint(draft, bores, down);
}
