import type { Draft, DraftPart } from '../draft.ts';
import type { Bores } from '../joints/bores.ts';
import type { Joinable } from '../joints/joints.ts';
import { hasJig } from '../joints/panel-joint.ts';
import { findsWood, hasRoom, isWithinReach, pocketJoint } from '../joints/pocket-joint.ts';

/** A rail carries the whole case, so it is screwed up into what lies on it as well. */
export function screwUpRail(
  draft: Draft,
  bores: Bores,
  { frame, panels, top }: Pick<Joinable, 'frame' | 'panels' | 'top'>,
  part: DraftPart,
  standing: readonly DraftPart[],
): void {
  // A lid that is hinged is not to be screwed down, nor behind a top that moves.
  const loose = frame.top?.hinged || frame.top?.moves === 'buttons';
  const above = panels.lid ?? (loose ? undefined : top?.board);
  if (!above || !hasJig(draft)) return;
  const spec = {
    part,
    edge: 'far',
    face: 'under',
    mate: above,
    duty: 'carries',
    standing,
    // Its ends, or screws through the back, hold it as they are, where these find no place.
    besides: true,
  } as const;
  // A low strip has no room for pockets up its face.
  if (hasRoom(draft, spec) && findsWood(draft, spec) && isWithinReach(draft, spec))
    pocketJoint(draft, bores, spec);
}
