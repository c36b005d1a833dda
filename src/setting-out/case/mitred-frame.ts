import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, PanelSpec, Triple } from '../draft.ts';
import { mitredTip } from '../edging/mitred-tip.ts';
import type { Direction } from '../place.ts';

/** A side of a frame seen from above. */
export type FrameSide = 'front' | 'left' | 'right' | 'back';

/** A frame of strips on edge, seen from above: outer size, the strips' thickness, and which sides there are. */
export interface FrameSpec {
  readonly record: string;
  readonly stem: string;
  /** What it belongs to, behind its name; nothing where there is only one. */
  readonly of: string;
  readonly family: PanelSpec['family'];
  readonly lot: PanelSpec['lot'];
  readonly at: Triple;
  /** Outer width and depth, and the strips' height. */
  readonly size: Triple;
  readonly thickness: Traced;
  readonly sides: readonly FrameSide[];
  /** Rough sizes of a strip from its finished length. */
  readonly rough: (length: Traced) => NonNullable<PanelSpec['rough']>;
}

/** How each strip lies: its show face looks outward, its width stands upright. */
const RUNS: Record<FrameSide, Direction> = { front: '+x', left: '-y', right: '+y', back: '-x' };

/** What follows a strip at its start and at its end, going round with the show face outward. */
const NEIGHBOURS: Record<FrameSide, readonly [start: FrameSide, end: FrameSide]> = {
  front: ['left', 'right'],
  right: ['front', 'back'],
  back: ['right', 'left'],
  left: ['back', 'front'],
};

/**
 * Strips mitred at the corners where two of them meet, square where one ends alone. Every strip's length is that
 * of its outer, longer face.
 */
export function mitredFrame(draft: Draft, spec: FrameSpec): ReadonlyMap<FrameSide, DraftPart> {
  const l = draft.ledger;
  const [width, depth, height] = spec.size;
  const [x, y, z] = spec.at;
  const t = spec.thickness;
  const parts = new Map<FrameSide, DraftPart>();
  for (const side of spec.sides) {
    const along = side === 'front' || side === 'back' ? width : depth;
    const at: Triple =
      side === 'right'
        ? [l.less('inner face of the right strip', l.sum('right end of the frame', x, width), t), y, z]
        : side === 'back'
          ? [x, l.less('inner face of the back strip', l.sum('back of the frame', y, depth), t), z]
          : [x, y, z];
    const part = draft.panel({
      record: spec.record,
      role: `${spec.stem}-${side}`,
      name: `${side} strip of the ${spec.stem}${spec.of}`,
      family: spec.family,
      lot: spec.lot,
      at,
      size: side === 'front' || side === 'back' ? [along, t, height] : [t, along, height],
      length: RUNS[side],
      width: '+z',
      rough: spec.rough(along),
    });
    NEIGHBOURS[side].forEach((neighbour, i) => {
      if (!spec.sides.includes(neighbour)) return;
      mitredTip(part, i === 0 ? 'start' : 'end', neighbour);
    });
    parts.set(side, part);
  }
  return parts;
}

/** The corners of a frame at which two strips meet, each once. */
export function corners(
  parts: ReadonlyMap<FrameSide, DraftPart>,
): readonly (readonly [DraftPart, DraftPart])[] {
  const found: [DraftPart, DraftPart][] = [];
  for (const [side, part] of parts) {
    const next = parts.get(NEIGHBOURS[side][1]);
    if (next) found.push([part, next]);
  }
  return found;
}
