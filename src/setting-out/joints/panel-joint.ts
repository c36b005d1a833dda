import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Face } from '../feature.ts';
import { axisOf } from '../place.ts';
import type { Bores } from './bores.ts';
import { dadoJoint } from './dado-joint.ts';
import { type FaceJointSpec, faceJoint, findsScrew, isShutOff } from './face-joint.ts';
import { pegJoint } from './peg-joint.ts';
import { plugWish } from './plug-choice.ts';
import { isWithinReach, type PocketJointSpec, pocketJoint } from './pocket-joint.ts';

/** A panel's end that meets a face of another panel. */
export interface PanelEnd {
  readonly part: DraftPart;
  readonly edge: 'start' | 'end';
  readonly mate: DraftPart;
  /** What stands already when it is fixed. */
  readonly standing: readonly DraftPart[];
  /** True where a back closes the space behind it before glue that it must not be screwed in has set: no driver comes to pockets then. */
  readonly shutIn?: boolean;
  /** The face for its pockets, where that isn’t the one that looks away. */
  readonly face?: Face;
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
  const spec: FaceJointSpec = { duty: 'carries', glued: true, plugs: plugWish(draft, frame.box), ...end };
  const pockets: PocketJointSpec = { duty: 'carries', ...end, face: end.face ?? 'under' };
  const through = screwsThrough(draft, frame);
  const shutIn = end.shutIn === true;
  if (through || shutIn || isOutOfReach(draft, frame, pockets)) {
    if (!isShutOff(draft, spec)) {
      if (!through) throughInstead(draft, pockets, shutIn ? SHUT_IN : NO_DRIVER);
      faceJoint(draft, bores, spec);
      return;
    }
    if (shutIn || !hasJig(draft)) {
      shutOff(draft, frame.box, end);
      return;
    }
  }
  const orThrough = () =>
    frame.box.joints !== 'pocket-screws' && !isShutOff(draft, spec) && findsScrew(draft, spec);
  const before = draft.joints.length;
  pocketJoint(draft, bores, { besides: orThrough, ...pockets });
  if (draft.joints.length > before) return;
  throughInstead(draft, pockets, NO_PLACE);
  faceJoint(draft, bores, spec);
}

/** True when no driver would get at the pockets of a joint, and pockets were not asked for. */
export function isOutOfReach(draft: Draft, { box }: CaseFrame, pockets: PocketJointSpec): boolean {
  return box.joints !== 'pocket-screws' && !isWithinReach(draft, pockets);
}

/** Why a joint has no pockets, and what would give it some. */
export interface WhyThrough {
  readonly because: string;
  readonly rule: string;
  readonly source: string;
  readonly cure: string;
}

export const NO_DRIVER: WhyThrough = {
  because: 'behind pockets there would be no room for a driver',
  rule: 'an angled head on a bit of 100 mm needs about 180 mm from a joint, along the board',
  source: 'from memory of usual tools',
  cure: 'Leave 180 mm clear between the panels, and pockets hide the screws.',
};

const SHUT_IN: WhyThrough = {
  because: 'the back is in its grooves behind it before the mitres have set',
  rule: 'mitres close all at once, with a back in their grooves, and nothing is screwed before their glue holds',
  source: 'common practice',
  cure: 'Let the back into rabbets or lay it on, and pockets hide the screws.',
};

const NO_PLACE: WhyThrough = {
  ...NO_DRIVER,
  because: 'its pockets find no places that a driver reaches, clear of other screws',
};

/** Tells that a joint is screwed through a face where pockets would be hidden. */
export function throughInstead(
  draft: Draft,
  { part, mate }: PocketJointSpec,
  why: WhyThrough = NO_DRIVER,
): void {
  const code = 'pockets.through-instead';
  if (draft.snags.some((s) => s.code === code && s.where.record === part.record)) return;
  draft.snags.push({
    code,
    level: 'note',
    where: { path: `design/records/${part.record}`, part: part.id, record: part.record },
    sentence: `The ${part.name} is screwed through the ${mate.name}: ${why.because}.`,
    rule: { says: why.rule, source: why.source, confirmed: false },
    cures: [{ says: why.cure }],
  });
}

/** What is glued into the ends of a case's panels; undefined where nothing is. */
export function pegsOf({ joints }: CaseFrame): 'dowels' | 'biscuits' | undefined {
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
