import type { ToolKind } from '../../job/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { stripsAlong } from '../edging/outer-box.ts';
import type { Direction } from '../place.ts';

/** What a dimension is made by; how far off it may turn out follows from that. */
export type MadeBy =
  | { readonly by: 'tool'; readonly kind: ToolKind }
  /** Stock of one measured thickness: its error counts once in a loop, however often the lot occurs. */
  | { readonly by: 'lot'; readonly lot: string }
  | { readonly by: 'hardware'; readonly id: string }
  | { readonly by: 'finish'; readonly id: string }
  /** Found on the bench, or made to what was found there. */
  | { readonly by: 'measured' };

/** One made dimension of a fit. */
export interface FitMember {
  /** In a maker's words: `length of the bottom`. */
  readonly name: string;
  /** As drawn. */
  readonly length: Traced;
  /** As its card prints it; worked out from what it is made by where this is absent. */
  readonly printed?: Traced;
  /** 1 when a larger dimension opens the gap, -1 when it closes it. */
  readonly sign: 1 | -1;
  /** How often the same thing stands in the loop; once when absent. */
  readonly times?: number;
  readonly made: MadeBy;
  /** The part that it is a dimension of. */
  readonly part?: string;
}

export type FitKind =
  | 'door'
  | 'drawer'
  | 'track'
  | 'back'
  | 'shelf'
  | 'divider'
  | 'panel'
  | 'frame'
  | 'spline'
  | 'button';

/**
 * Two things that must go together: a loop of made dimensions, signed, whose drawn values sum to the drawn gap. It
 * isn't read off the trace: what is the same number there is made twice on the bench, and its errors don't cancel.
 */
export interface Fit {
  /** The part or record that is fitted, and along what: `door1/width`. */
  readonly id: string;
  readonly kind: FitKind;
  /** In a maker's words: `the door of bay1 in its opening, across`. */
  readonly name: string;
  readonly gap: Traced;
  /** The gap that must be left; less than nothing where the parts may be pressed or sprung together. */
  readonly least: Traced;
  /** The widest gap that still does; absent where any does. */
  readonly most?: Traced;
  readonly loop: readonly FitMember[];
  /** The gap lies from front to back: a case that leans to one side leaves it as it is. */
  readonly deep?: true;
  /** Set where sizes are printed so that the least gap is left, though by the drawing the film of the finish takes of it. */
  readonly keepsLeast?: true;
  /** The part that may be cut last, to the measured opening. */
  readonly toFit?: string;
}

/** A fit as it is printed: what each member is set to, and the gap that these numbers leave. */
export interface PrintedFit extends Fit {
  readonly loop: readonly (FitMember & { readonly printed: Traced })[];
  readonly printed: Traced;
  /** Set when a part of it is cut once the rest of the loop stands and is measured: their errors don't count. */
  readonly cutLater?: true;
}

/** A size that a part is cut to. */
export function cut(draft: Draft, part: DraftPart, size: 'length' | 'width', sign: 1 | -1): FitMember {
  return {
    name: `${size} of the ${part.name}`,
    length: part[size],
    sign,
    made: { by: 'tool', kind: sawOf(draft) },
    part: part.id,
  };
}

/** A size that a part is cut to, and the strips that are glued to both ends of it: both close a gap. */
export function withEdging(draft: Draft, part: DraftPart, size: 'length' | 'width'): readonly FitMember[] {
  return [cut(draft, part, size, -1), ...stripsAlong(draft, part, size).map((strip) => thick(strip, -1))];
}

/** How thick the stock of a part is. */
export function thick(part: DraftPart, sign: 1 | -1): FitMember {
  return {
    name: `thickness of the ${part.name}`,
    length: part.thickness,
    sign,
    made: { by: 'lot', lot: part.lot },
    part: part.id,
  };
}

/** A distance that a tool is set to, or that is marked. */
export function setBy(kind: ToolKind, name: string, length: Traced, sign: 1 | -1, part?: string): FitMember {
  return { name, length, sign, made: { by: 'tool', kind }, ...(part === undefined ? {} : { part }) };
}

/** The saw that parts are cut with. */
function sawOf(draft: Draft): ToolKind {
  const owns = (kind: ToolKind) => draft.job.shop.tools.some((t) => t.kind === kind);
  return !owns('circular-saw') && owns('mitre-saw') ? 'mitre-saw' : 'circular-saw';
}

/** A face that looks into the gap of a fit, and gets finish. */
export interface FinishedFace {
  /** Absent for an applied top that closes a space above. */
  readonly part: DraftPart | undefined;
  /** Which way it looks, in the piece. */
  readonly looks: Direction;
  /** A wall or a floor of a channel there, that is filled or taped where its part is finished before it is put together. */
  readonly channel?: true;
}

/** Two faces, each of a part and the way it looks. */
export function between(
  first: DraftPart | undefined,
  looks: Direction,
  other: DraftPart | undefined,
  looksBack: Direction,
): readonly FinishedFace[] {
  return [
    { part: first, looks },
    { part: other, looks: looksBack },
  ];
}

/** A fit as it is drawn, before its finish. */
export interface FitSpec extends Fit {
  /** The finished faces that look into the gap; none when absent. Their film is taken off the gap in the end. */
  readonly faces?: readonly FinishedFace[];
}

/** Adds a fit; what is finished of it is reckoned when all of the piece stands. */
export function addFit(draft: Draft, { faces = [], ...fit }: FitSpec): void {
  if (faces.length > 0) draft.faced.set(draft.fits.length, faces);
  draft.fits.push(fit);
}
