import type { ToolKind } from '../../job/index.ts';
import { FILMS, finish } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { stripsAlong } from '../edging/outer-box.ts';

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

/** A fit as it is drawn, before its finish. */
export interface FitSpec extends Fit {
  /** How many finished faces look into the gap; none when absent. Their film is taken off the gap. */
  readonly faces?: number;
}

/** Adds a fit; where faces in its gap are finished, their film is a member like any other. */
export function addFit(draft: Draft, { faces = 0, ...fit }: FitSpec): void {
  const film = faces > 0 ? filmOf(draft, faces) : undefined;
  if (!film) {
    draft.fits.push(fit);
    return;
  }
  const l = draft.ledger;
  const all = l.times('film on every face in the gap', film.length, faces);
  draft.fits.push({
    ...fit,
    gap: l.less('gap that the finish leaves', fit.gap, all),
    loop: [...fit.loop, film],
  });
}

/** The film on finished faces: coats by dry film, of the first finish in the cupboard; undefined where there is none. */
function filmOf(draft: Draft, faces: number): FitMember | undefined {
  const id = draft.job.shop.rack.finishes[0]?.material;
  const known = id === undefined ? undefined : finish(id);
  const coat = FILMS.find((row) => row.id === `finish.film.${id}`);
  if (!known || !coat) return undefined;
  const coats = draft.job.shop.rack.finishes[0]?.label?.coats ?? known.coats[1];
  return {
    name: `${known.name} on one face, ${coats} coat${coats > 1 ? 's' : ''}`,
    length: draft.ledger.times('film of the finish on one face', draft.ledger.row(coat), coats),
    sign: -1,
    times: faces,
    made: { by: 'finish', id: known.id },
  };
}
