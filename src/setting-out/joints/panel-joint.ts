import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { axisOf } from '../place.ts';
import type { Bores } from './bores.ts';
import { dadoJoint } from './dado-joint.ts';
import { type FaceJointSpec, faceJoint, isShutOff } from './face-joint.ts';
import { pegJoint } from './peg-joint.ts';
import { plugWish } from './plug-choice.ts';
import { pocketJoint } from './pocket-joint.ts';

/** A panel's end that meets a face of another panel. */
export interface PanelEnd {
  readonly part: DraftPart;
  readonly edge: 'start' | 'end';
  readonly mate: DraftPart;
  /** What stands already when it is fixed. */
  readonly standing: readonly DraftPart[];
}

/** Joins two panels of a case in the way the case is joined. */
export function joinPanels(draft: Draft, bores: Bores, frame: CaseFrame, end: PanelEnd): void {
  const { part, edge, mate } = end;
  if (part.tongues[edge] !== undefined) {
    const stop = frame.joints === 'stopped-dado' ? { stop: draft.ledger.row(SETTING_OUT.dadoStop) } : {};
    dadoJoint(draft, bores, { part, end: edge, mate, tongued: frame.joints === 'tongue', ...stop });
    return;
  }
  const by = pegsOf(frame);
  // A panel parallel to the back is screwed in from behind.
  if (by && axisOf(part.place.thickness).axis !== 1) {
    pegJoint(draft, bores, { part, edge, mate, by });
    return;
  }
  const spec: FaceJointSpec = {
    ...end,
    duty: 'carries',
    glued: true,
    plugs: plugWish(draft, frame.box),
  };
  if (screwsThrough(draft, frame)) {
    if (!isShutOff(draft, spec)) {
      faceJoint(draft, bores, spec);
      return;
    }
    if (!hasJig(draft)) {
      shutOff(draft, frame.box, end);
      return;
    }
  }
  pocketJoint(draft, bores, { part, edge, face: 'under', mate, duty: 'carries' });
}

/** What is glued into the ends of a case's panels; undefined where nothing is. */
function pegsOf({ joints }: CaseFrame): 'dowels' | 'biscuits' | undefined {
  return joints === 'dowels' || joints === 'biscuits' ? joints : undefined;
}

/** True when what isn't let in is screwed through faces: where that was asked for, or there is no jig for pockets. */
export function screwsThrough(draft: Draft, { joints }: CaseFrame): boolean {
  return joints === 'face-screws' || (joints !== 'pocket-screws' && !hasJig(draft));
}

/** True when the shop can bore pocket holes. */
export function hasJig(draft: Draft): boolean {
  return draft.job.shop.tools.some((t) => t.kind === 'pocket-jig');
}

/** A panel that no driver reaches, because another stands behind the face it is screwed through. */
function shutOff(draft: Draft, box: RecordOf<'case'>, { part, mate }: PanelEnd): void {
  draft.snags.push({
    code: 'screws.shut-off',
    level: 'stop',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `Nobody could drive the screws through the ${mate.name} into the ${part.name}: another panel stands behind, on the same line.`,
    rule: {
      says: 'a short drill needs about 100 mm behind a screw',
      source: 'from memory',
      confirmed: false,
    },
    cures: [
      { says: 'Move one of the two by more than its thickness.' },
      {
        says: 'Let the panels into dados.',
        edits: [{ record: box.id, field: 'joints', value: 'dado' }],
      },
    ],
  });
}
