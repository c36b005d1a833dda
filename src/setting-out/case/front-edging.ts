import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { mitredTip } from '../edging/mitred-tip.ts';
import { stripsTooNarrow } from '../edging/strips-too-narrow.ts';
import { axisOf } from '../place.ts';
import { type EndSide, edgesFront, endStrip, endsOf } from './end-edging.ts';
import type { CaseFrame } from './frame-of-case.ts';

/** What edges the panels of a case: strips and the panels they are glued to, and pairs of strips that meet in a mitre. */
export interface CaseEdging {
  readonly strips: readonly (readonly [strip: DraftPart, panel: DraftPart])[];
  readonly corners: readonly (readonly [DraftPart, DraftPart])[];
}

/** Strips on the front edges of a case's panels, each panel's own, and on ends that show: mitred with one another, unless they are tape. */
export function caseEdging(draft: Draft, frame: CaseFrame, panels: readonly DraftPart[]): CaseEdging {
  const { edging } = frame;
  if (!edging) return { strips: [], corners: [] };
  const lot = draft.lot(edging.strip);
  const words = { boardsAre: 'the panels are', boards: 'the panels’' };
  const strips: (readonly [DraftPart, DraftPart])[] = [];
  const corners: (readonly [DraftPart, DraftPart])[] = [];
  for (const panel of panels) {
    stripsTooNarrow(draft, { record: edging, field: 'strip', lot, thickness: panel.thickness, ...words });
    const ends = endsOf(draft, frame, panel);
    const front = edgesFront(frame) ? frontStrip(draft, frame, panel, ends) : undefined;
    const on = new Map(ends.map((side) => [side, endStrip(draft, frame, panel, side)]));
    if (on.size > 0) draft.edged.set(panel.id, on);
    // Going round the panel: the strip before its front, that of the front, the one behind it.
    const round = [on.get('left'), front, on.get('right') ?? on.get('upper')].filter((s) => s !== undefined);
    for (const strip of round) strips.push([strip, panel]);
    if (front && lot.tape === undefined)
      round.slice(1).forEach((next, i) => {
        corners.push([round[i]!, next]);
      });
  }
  return { strips, corners };
}

/** The strip on a panel's front edge: as long as the panel, or between its neighbours, or out over the ends that are edged. */
function frontStrip(draft: Draft, frame: CaseFrame, panel: DraftPart, ends: readonly EndSide[]): DraftPart {
  const l = draft.ledger;
  const strip = draft.lot(frame.edging!.strip);
  const width = draft.typed(`shop/rack/lots/${strip.id}/width`, strip.width!);
  const mitred = ends.length > 0 && strip.tape === undefined;
  const allowance = l.row(mitred ? SETTING_OUT.mitreAllowance : SETTING_OUT.edgingAllowance);
  const upright = axisOf(panel.place.length).axis === 2;
  const { start, end } = panel.tongues;
  const tongues = [start, end].filter((t) => t !== undefined);
  // What goes into a neighbour is behind that neighbour's own edging.
  const bare = tongues.length
    ? l.less('length of the edging, between the neighbours', panel.length, ...tongues)
    : panel.length;
  const length =
    ends.length > 0
      ? l.sum(
          'length of the edging, over the strips on the ends',
          bare,
          ...ends.map(() => frame.edgingThickness),
        )
      : bare;
  const begins = (at: Traced) =>
    start !== undefined
      ? l.sum('where the edging begins, beside the neighbour', at, start)
      : ends.includes('left')
        ? l.less('where the edging begins, before the strip on the end', at, frame.edgingThickness)
        : at;
  const [px, y, pz] = panel.box.min;
  const [x, z] = upright ? [px, begins(pz)] : [begins(px), pz];
  const size = [panel.thickness, frame.edgingThickness, length] as const;
  const part = draft.panel({
    record: frame.edging!.id,
    role: `on:${panel.id}`,
    name: `edging for ${panel.name}`,
    family: 'edging',
    lot: strip,
    at: [x, l.less('front of the edging', y, frame.edgingThickness), z],
    size: upright ? size : [size[2], size[1], size[0]],
    length: upright ? '+z' : '+x',
    // The show face looks to the front.
    width: upright ? '-x' : '+z',
    between: tongues.length > 0,
    rough: {
      length: tongues.length ? length : l.sum('length to cut before trimming', length, allowance, allowance),
      width,
      thickness: frame.edgingThickness,
    },
  });
  if (tongues.length > 0 && ends.length === 0) draft.besideNeighbours.set(part, { panel, goesIn: tongues });
  if (mitred) for (const side of ends) mitredTip(part, side === 'left' ? 'start' : 'end', side);
  return part;
}
