import type { RecordOf } from '../../job/index.ts';
import { SLIDING } from '../../materials/index.ts';
import { type Ticks, type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Edge, Face } from '../feature.ts';
import type { Bores } from '../joints/bores.ts';
import { inPart, outward, planeOf, sideLooking } from '../joints/contact.ts';
import { axisOf } from '../place.ts';
import type { Tracks } from './sliding-tracks.ts';

/** A row of grooves, one for each track, in a panel below or above doors. */
export interface GrooveRow {
  readonly record: RecordOf<'sliding-doors'>;
  readonly panel: DraftPart;
  readonly looks: '+z' | '-z';
  readonly tracks: Tracks;
  readonly depth: Traced;
  /** The two ends of the opening along x, and the front of the panels. */
  readonly left: Traced;
  readonly right: Traced;
  readonly front: Traced;
  /** What stands at the two ends. */
  readonly start: DraftPart;
  readonly end: DraftPart;
}

/** Cuts the grooves; false when a stop says why they can't be. */
export function cutGrooves(draft: Draft, bores: Bores, asked: GrooveRow): boolean {
  const l = draft.ledger;
  const row = intoDados(draft, asked);
  const { record, panel, tracks, depth } = row;
  const face = sideLooking(panel.place, row.looks) as Face;
  const edge = sideLooking(panel.place, '-y') as Edge;
  const first = l.sum('front wall of the first groove', row.front, tracks.walls[0]!);
  const own = l.less('from the panel’s edge to the first groove', first, panel.box.min[1]);
  if (l.ticks(own) < l.ticks(l.row(SLIDING.web))) {
    draft.stop(
      'sliding.groove-at-edge',
      record,
      'setIn',
      `The first groove in the ${panel.name} would leave less than ${mm(l.ticks(l.row(SLIDING.web)))} mm of wood in front of it.`,
      { says: 'Set the doors further in, or use narrower edging.' },
    );
    return false;
  }
  if (!floorsHold(draft, row, face)) return false;
  const { from, to } = runOf(draft, row);
  tracks.walls.forEach((wall, i) => {
    const y = l.sum('front wall of the groove', row.front, wall);
    panel.features.push({
      kind: 'groove',
      id: `${panel.id}#${record.id}:${row.looks === '+z' ? 'lower' : 'upper'}:${i + 1}`,
      purpose: `track ${i + 1} of the sliding doors`,
      face,
      edge,
      inset: l.less('from the panel’s edge to the groove', y, panel.box.min[1]),
      width: tracks.groove,
      depth,
      from,
      to,
    });
  });
  bores.hollow(panel.id, hollowOf(draft, row));
  return true;
}

/**
 * Where what stands at an end goes into a dado of this panel, the grooves run on into it: an end that only met the
 * dado's wall would leave a sliver or a gap as soon as either is a hair off. A quarter of the thickness reaches the
 * middle of a tongue, and stays short of one in the further half.
 */
function intoDados(draft: Draft, row: GrooveRow): GrooveRow {
  const l = draft.ledger;
  const end = row.looks === '+z' ? 'start' : 'end';
  const further = (part: DraftPart) =>
    l.ratio('how far the grooves run on into its dado', part.thickness, SLIDING.intoDado);
  return {
    ...row,
    left:
      row.start.tongues[end] === undefined
        ? row.left
        : l.less('where the grooves begin, in the dado', row.left, further(row.start)),
    right:
      row.end.tongues[end] === undefined
        ? row.right
        : l.sum('where the grooves end, in the dado', row.right, further(row.end)),
  };
}

/** From end to end where the panel ends beside the opening, in its dado there or in a mitre; else from face to face. */
function runOf(
  draft: Draft,
  { panel, left, right }: GrooveRow,
): { readonly from: Traced; readonly to: Traced } {
  const l = draft.ledger;
  const ends = (edge: 'start' | 'end') => {
    const mitred = panel.features.some((f) => f.kind === 'bevel' && f.edge === edge);
    const beyond = mitred ? panel.thickness : panel.tongues[edge];
    return beyond === undefined ? 0 : l.ticks(beyond);
  };
  const from = inPart(draft, panel, 0, left, 'where the grooves begin');
  const to = inPart(draft, panel, 0, right, 'where the grooves end');
  const rest = l.ticks(panel.length) - l.ticks(to);
  return {
    from: l.ticks(from) <= ends('start') ? draft.nothing : from,
    to: rest <= ends('end') ? panel.length : to,
  };
}

/** Grooves on the two faces of one panel leave wood between them. */
function floorsHold(draft: Draft, { record, panel, depth }: GrooveRow, face: Face): boolean {
  const l = draft.ledger;
  const other = panel.features.find(
    (f) => f.kind === 'groove' && f.face !== face && f.purpose.includes('sliding doors'),
  );
  if (other?.kind !== 'groove') return true;
  const left = l.ticks(panel.thickness) - l.ticks(depth) - l.ticks(other.depth);
  if (left >= l.ticks(l.row(SLIDING.floor))) return true;
  draft.stop(
    'sliding.grooves-meet',
    record,
    'upperGroove',
    `The grooves on both faces of the ${panel.name} leave only ${mm(left)} mm of it.`,
    { says: 'Let it be of a thicker board, or make the grooves shallower.' },
  );
  return false;
}

function hollowOf(draft: Draft, { panel, looks, tracks, depth, left, right, front }: GrooveRow) {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const side = sideLooking(panel.place, looks);
  const surface = t(planeOf(panel, side));
  const { sign } = axisOf(outward(panel.place, side));
  const floor = surface - sign * t(depth);
  const y = t(front);
  return {
    min: [t(left), y + t(tracks.walls[0]!), Math.min(surface, floor)],
    max: [t(right), y + t(tracks.walls.at(-1)!) + t(tracks.groove), Math.max(surface, floor)],
  } as const;
}

function mm(ticks: number): string {
  return String(Math.round(toMm(ticks as Ticks) * 10) / 10);
}
