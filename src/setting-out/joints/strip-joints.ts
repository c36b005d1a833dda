import type { Traced } from '../../measure/index.ts';
import { corners, type FrameSide } from '../case/mitred-frame.ts';
import type { Top } from '../case/top.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { opposite } from '../place.ts';
import { contactBox, sideLooking } from './contact.ts';

/** Glues the strips of a top to its board. */
export function glueTop(draft: Draft, { board, strips }: Top): void {
  for (const strip of strips.values()) glueStrip(draft, strip, board);
}

/** Glues the corners of a mitred frame. Aprons have legs between them, and no mitres. */
export function mitreCorners(draft: Draft, frame: ReadonlyMap<FrameSide, DraftPart>): void {
  for (const [a, b] of corners(frame)) if (a.features.some((f) => f.kind === 'bevel')) mitre(draft, a, b);
}

/** An edging strip glued to its board: the strip's under face on the board's edge. */
export function glueStrip(draft: Draft, strip: DraftPart, board: DraftPart): void {
  draft.joints.push({
    id: `${strip.id}>${board.id}`,
    kind: 'butt',
    duty: 'edging',
    hold: 'glue',
    part: strip.id,
    side: 'under',
    mate: board.id,
    mateSide: sideLooking(board.place, strip.place.thickness),
    contact: contactBox(draft, strip, 'under', board),
    fasteners: [],
  });
}

/** Two strips that meet in a mitre. The contact given is the corner's box; the glued face is its diagonal. */
export function mitre(draft: Draft, a: DraftPart, b: DraftPart): void {
  const corner = { min: [] as Traced[], max: [] as Traced[] };
  const l = draft.ledger;
  for (const axis of [0, 1, 2] as const) {
    const [p, q] = [a.box, b.box];
    corner.min.push(l.ticks(p.min[axis]) >= l.ticks(q.min[axis]) ? p.min[axis] : q.min[axis]);
    corner.max.push(l.ticks(p.max[axis]) <= l.ticks(q.max[axis]) ? p.max[axis] : q.max[axis]);
  }
  draft.joints.push({
    id: `${a.id}>${b.id}`,
    kind: 'mitre',
    duty: 'frame',
    hold: 'glue',
    part: a.id,
    side: 'end',
    mate: b.id,
    mateSide: sideLooking(b.place, opposite(b.place.length)),
    contact: { min: corner.min as never, max: corner.max as never },
    fasteners: [],
  });
}
