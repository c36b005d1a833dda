import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge } from '../feature.ts';
import type { Bores } from '../joints/bores.ts';
import { sideLooking } from '../joints/contact.ts';
import { faceJoint } from '../joints/face-joint.ts';
import type { Joinable } from '../joints/joints.ts';
import { axisOf } from '../place.ts';
import type { CaseFrame } from './frame-of-case.ts';
import { screwUpRail } from './screw-up-rail.ts';

/**
 * Screws what lies on a back through it into the edges that it covers: of the lid, and of the sides where the
 * back is laid on them; a spacer into that of the bottom.
 */
export function joinBehindBack(
  draft: Draft,
  bores: Bores,
  { frame, panels, top, backs }: Pick<Joinable, 'frame' | 'panels' | 'top' | 'backs'>,
  behind: readonly DraftPart[],
): void {
  const back = backs[0]?.part;
  if (!back) return;
  for (const strip of behind) {
    const before = draft.joints.length;
    // A spacer is so low that screws into the sides would stand too near their ends.
    const edges = strip.role === 'spacer' ? [panels.bottom] : [panels.lid, panels.left, panels.right];
    for (const panel of edges)
      if (panel && isCovered(draft, panel, back, strip))
        faceJoint(draft, bores, {
          part: panel,
          edge: sideLooking(panel.place, '+y') as Edge,
          mate: strip,
          over: back,
          duty: 'carries',
          glued: false,
          plugs: { wanted: false, asked: false },
          standing: [],
          besides: true,
        });
    screwUpRail(draft, bores, { frame, panels, top }, strip, []);
    if (draft.joints.length === before) holdsNowhere(draft, frame);
  }
}

/** True where a panel ends at the back, and the strip lies over the middle of its edge. */
function isCovered(draft: Draft, panel: DraftPart, back: DraftPart, strip: DraftPart): boolean {
  const t = (x: Traced) => draft.ledger.ticks(x);
  if (t(panel.box.max[1]) !== t(back.box.min[1])) return false;
  const { axis } = axisOf(panel.place.thickness);
  const middle = (t(panel.box.min[axis]) + t(panel.box.max[axis])) / 2;
  return [back, strip].every((p) => t(p.box.min[axis]) < middle && t(p.box.max[axis]) > middle);
}

function holdsNowhere(draft: Draft, frame: CaseFrame): void {
  const hanging = draft.tree.childOf(frame.box.id, 'hanging')!;
  draft.stop(
    'hanging.no-hold',
    hanging,
    'by',
    'Behind the back of this case there is nothing that the strip of its cleat could be screwed to.',
    {
      says: 'Let the back stand in grooves: the strip then goes between the sides.',
      edits: [{ record: frame.back!.id, field: 'fitting', value: 'groove' }],
    },
    { says: 'Hang it by rails.', edits: [{ record: hanging.id, field: 'by', value: 'rails' }] },
  );
}
