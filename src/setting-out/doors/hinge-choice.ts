import type { Hinge, HingeOf, RecordOf, Screw } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import { type Ledger, type Ticks, type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { bitNear } from '../joints/bit-choice.ts';
import type { DoorLeaf } from './door-leaf.ts';

/** A door that has been cut, and what it hangs on. */
export interface Hanging {
  readonly door: RecordOf<'door'>;
  readonly part: DraftPart;
  readonly hung: 'left' | 'right';
  readonly post: DraftPart;
  readonly below: DraftPart;
  /** Whether the post is a side of the case, whose edge the door covers wholly. */
  readonly outer: boolean;
  readonly gap: Traced;
  readonly opening: DoorLeaf['opening'];
  /** Front of the case, edging included. */
  readonly frontOfCase: Traced;
  /** What may lie where a hinge would go. */
  readonly shelves: readonly DraftPart[];
}

/** A hinge and its screw with their sizes. */
export interface Chosen {
  readonly hinge: Hinge;
  readonly screw: Screw;
  readonly length: Traced;
  readonly diameter: Traced;
  readonly pilot: Traced;
}

/** A length that is stated for a hinge of the rack. */
export function ofHinge<H extends Hinge>(draft: Draft, hinge: H, field: keyof H & string): Traced {
  return draft.typed(`shop/rack/hinges/${hinge.id}/${field}`, hinge[field] as string);
}

/** What a hinge must be made for. */
function wanted(h: Hanging): HingeOf<'cup'>['suits'] {
  return h.door.hang === 'inset' ? 'inset' : h.outer ? 'overlay' : 'half-overlay';
}

function suits(hinge: Hinge, h: Hanging): boolean {
  return hinge.kind === 'butt' ? h.door.hang === 'inset' : hinge.suits === wanted(h);
}

/** The hinge that the door names, or the first of the rack that suits. */
export function chooseHinge(draft: Draft, h: Hanging): Hinge | undefined {
  const rack = draft.job.shop.rack.hinges ?? [];
  const named = rack.find((x) => x.id === h.door.hinge);
  const fitting = rack.find((x) => suits(x, h));
  if (named && suits(named, h)) return named;
  // The two of a pair may need different hinges; the one that is named counts where it suits.
  if (named && h.door.count !== 2) {
    draft.stop(
      'hinges.wrong-kind',
      h.door,
      'hinge',
      `“${named.id}” is not made for the ${h.part.name}, which needs ${WORDS[wanted(h)]}.`,
      fitting
        ? {
            says: `Hang it on “${fitting.id}”.`,
            edits: [{ record: h.door.id, field: 'hinge', value: fitting.id }],
          }
        : { says: 'Put a hinge that suits on the rack.' },
    );
    return undefined;
  }
  return fitting ?? missing(draft, h);
}

function missing(draft: Draft, h: Hanging): undefined {
  draft.stop(
    'hinges.none-suits',
    h.door,
    'hang',
    `The rack has no hinge for the ${h.part.name}, which needs ${WORDS[wanted(h)]}.`,
    { says: 'Put such a hinge, with its measures, on the rack.' },
  );
  return undefined;
}

const WORDS: Record<HingeOf<'cup'>['suits'], string> = {
  overlay: 'a cup hinge for full overlay',
  'half-overlay': 'a cup hinge for half overlay, because it covers half of an upright’s edge',
  inset: 'a butt hinge or a cup hinge for inset doors',
};

/** A hinge with the sizes of its screw. */
export function sized(draft: Draft, hinge: Hinge): Chosen {
  const l = draft.ledger;
  const screw = draft.job.shop.rack.screws.find((s) => s.id === hinge.screw)!;
  const diameter = draft.typed(`shop/rack/screws/${screw.id}/diameter`, screw.diameter);
  return {
    hinge,
    screw,
    length: draft.typed(`shop/rack/screws/${screw.id}/length`, screw.length),
    diameter,
    pilot: hingePilot(l, diameter),
  };
}

/** What is noted of a butt hinge wherever one is fixed: its screws, their pilots, and its leaf. */
export function buttFigures(
  draft: Draft,
  hinge: HingeOf<'butt'>,
): Pick<DoorLeaf, 'hinge' | 'screw' | 'screwsPerHinge' | 'screwLength' | 'screwDiameter' | 'pilot'> & {
  readonly leaf: NonNullable<DoorLeaf['leaf']>;
} {
  const chosen = sized(draft, hinge);
  return {
    hinge: hinge.id,
    screw: chosen.screw.id,
    screwsPerHinge: 2 * hinge.screws,
    screwLength: chosen.length,
    screwDiameter: chosen.diameter,
    pilot: bitNear(draft, 'twist', chosen.pilot),
    leaf: {
      length: ofHinge(draft, hinge, 'length'),
      width: ofHinge(draft, hinge, 'width'),
      thickness: draft.ledger.sum('as deep as a leaf is thick', ofHinge(draft, hinge, 'leaf')),
    },
  };
}

/** The pilot hole for a hinge's screw. */
function hingePilot(l: Ledger, diameter: Traced): Traced {
  const root = l.ratio('root of the screw', diameter, SETTING_OUT.rootShare);
  return l.round(
    'to the nearest bit',
    l.ratio('pilot hole for the screw', root, SETTING_OUT.pilotShare),
    l.row(SETTING_OUT.bitStep),
    'nearest',
  );
}

/** The screws go into a face of the door (or its edge, on butts, where there is wood enough) and of the upright. */
export function screwTooLong(draft: Draft, h: Hanging, chosen: Chosen): boolean {
  const l = draft.ledger;
  const far = l.ticks(l.row(SETTING_OUT.farFace));
  const faces = chosen.hinge.kind === 'cup' ? [h.part, h.post] : [h.post];
  const thin = faces.find((p) => l.ticks(p.thickness) - l.ticks(chosen.length) < far);
  if (!thin) return false;
  const most = toMm((l.ticks(thin.thickness) - far) as Ticks);
  draft.snags.push({
    code: 'hinges.screw-too-long',
    level: 'stop',
    where: { path: `shop/rack/hinges/${chosen.hinge.id}/screw`, part: thin.id, record: h.door.id },
    sentence: `The screws of hinge “${chosen.hinge.id}” come too near the far face of the ${thin.name}.`,
    rule: { says: SETTING_OUT.farFace.says, source: SETTING_OUT.farFace.source, confirmed: false },
    cures: [{ says: `Fix it with screws no longer than ${Math.floor(most)} mm, or use a thicker board.` }],
  });
  return true;
}
