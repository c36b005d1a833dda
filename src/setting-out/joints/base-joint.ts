import { pocketShape } from '../../materials/index.ts';
import { fromMm, toMm } from '../../measure/index.ts';
import type { BackIn } from '../case/back.ts';
import type { CasePanels } from '../case/case-panels.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { FrameSide } from '../case/mitred-frame.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { axisOf } from '../place.ts';
import type { Parting } from '../spaces/openings.ts';
import type { Bores } from './bores.ts';
import { type FaceJointSpec, faceJoint, facesWood, findsScrew, isShutOff } from './face-joint.ts';
import { screwsMeet } from './move-aside.ts';
import { hasJig, NO_DRIVER, screwsThrough, throughInstead, type WhyThrough } from './panel-joint.ts';
import { plugWish } from './plug-choice.ts';
import { findsWood, hasRoom, isWithinReach, type PocketJointSpec, pocketJoint } from './pocket-joint.ts';
import { standingPanels } from './standing-panels.ts';

/** A case on its base. */
interface Based {
  readonly frame: CaseFrame;
  readonly panels: CasePanels;
  readonly partings: readonly Parting[];
  readonly base: ReadonlyMap<FrameSide, DraftPart>;
  readonly backs: readonly BackIn[];
  readonly front: Parting | undefined;
}

/**
 * The base is screwed up into the bottom from inside where it stands under the bottom; down through it without a jig,
 * or where pockets find no room.
 */
export function baseUnderBottom(draft: Draft, bores: Bores, parts: Based): void {
  const through = screwsThrough(draft, parts.frame) && !hasJig(draft);
  const standing = [
    ...standingPanels(parts.frame, parts.panels, parts.partings),
    // A back slides into its grooves while the case is put together.
    ...parts.backs.filter((b) => b.record.fitting === 'groove').map((b) => b.part),
    ...(parts.front ? [parts.front.part] : []),
  ];
  let joined = 0;
  /** A strip under the bottom on which screws find no place. */
  let shut: DraftPart | undefined;
  for (const strip of parts.base.values()) {
    const spec: PocketJointSpec = {
      part: strip,
      edge: 'far',
      face: 'under',
      mate: parts.panels.bottom,
      duty: 'base',
      standing: [...parts.base.values()],
      // Two strips hold the frame, where others find no place.
      besides: true,
    };
    const down: FaceJointSpec = {
      part: strip,
      edge: 'far',
      mate: parts.panels.bottom,
      duty: 'base',
      glued: false,
      plugs: plugWish(draft, parts.frame.box),
      standing,
      besides: true,
    };
    if (underRabbet(draft, parts, strip) || isFull(draft, strip)) continue;
    if (!hasRoom(draft, spec) && isShutOff(draft, down)) {
      shut ??= strip;
      continue;
    }
    const why = through ? undefined : noPockets(draft, spec, down);
    if (why !== undefined) throughInstead(draft, spec, why);
    if (!(through || why !== undefined ? facesWood(draft, down) : findsWood(draft, spec))) continue;
    const before = draft.joints.length;
    if (through || why !== undefined) faceJoint(draft, bores, down);
    else pocketJoint(draft, bores, spec);
    if (draft.joints.length > before) joined++;
    else shut ??= strip;
  }
  if (joined < 2 && shut) screwsMeet(draft, parts.panels.bottom, shut);
  else if (parts.base.size > 0 && joined < 2)
    draft.stop(
      'base.under-side',
      parts.frame.base!,
      'setback',
      'The base stands under the sides, where it can’t be screwed up into the bottom.',
      {
        says: 'Set the base back by at least the thickness of a side.',
        edits: [{ record: parts.frame.base!.id, field: 'setback', value: '40 mm' }],
      },
    );
}

/** Why a strip is better screwed down through the bottom than up into it, where that can be done. */
function noPockets(draft: Draft, up: PocketJointSpec, down: FaceJointSpec): WhyThrough | undefined {
  if (!facesWood(draft, down) || !findsScrew(draft, down)) return undefined;
  if (!hasRoom(draft, up)) return tooLow(draft, up.part);
  return isWithinReach(draft, up) || isShutOff(draft, down) ? undefined : NO_DRIVER;
}

function tooLow(draft: Draft, strip: DraftPart): WhyThrough {
  const { mouth } = pocketShape(toMm(draft.ledger.ticks(strip.thickness)));
  return {
    because: 'pockets would run right across it',
    rule: 'a pocket leans 15 degrees and is bored 9.5 mm wide',
    source: 'common practice',
    cure: `Make it at least ${Math.ceil(mouth) + 1} mm high, and pockets hide the screws.`,
  };
}

/** True for a strip that runs under a rabbet in which a side stands: too little of the bottom is left there. */
function underRabbet(draft: Draft, { panels }: Based, strip: DraftPart): boolean {
  const l = draft.ledger;
  const { start } = panels.left.tongues;
  if (start === undefined || axisOf(strip.place.length).axis === 0) return false;
  const clear = l.ticks(panels.inside.left);
  return (
    l.ticks(strip.box.min[0]) < clear || l.ticks(strip.box.max[0]) > clear + l.ticks(panels.inside.width)
  );
}

/** True for an apron with pockets at both ends that leave no place for others between them. */
function isFull(draft: Draft, strip: DraftPart): boolean {
  if (!strip.features.some((f) => f.kind === 'pocket' && (f.edge === 'start' || f.edge === 'end')))
    return false;
  const { mouth } = pocketShape(toMm(draft.ledger.ticks(strip.thickness)));
  return draft.ledger.ticks(strip.length) < fromMm(2 * mouth + PLACE);
}

/** Room for two pockets between those at the ends of an apron, mm. */
const PLACE = 50;
