import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { stripsTooNarrow } from '../edging/strips-too-narrow.ts';
import { axisOf } from '../place.ts';
import type { CaseFrame } from './frame-of-case.ts';

/** Solid strips on the front edges of the case's panels: each panel's own, as long and as thick as it. */
export function frontEdging(
  draft: Draft,
  frame: CaseFrame,
  panels: readonly DraftPart[],
): readonly (readonly [DraftPart, DraftPart])[] {
  const { edging } = frame;
  if (!edging) return [];
  const l = draft.ledger;
  const strip = draft.lot(edging.strip);
  const width = draft.typed(`shop/rack/lots/${strip.id}/width`, strip.width!);
  const allowance = l.row(SETTING_OUT.edgingAllowance);
  const words = { boardsAre: 'the panels are', boards: 'the panels’' };
  return panels.map((panel): readonly [DraftPart, DraftPart] => {
    stripsTooNarrow(draft, {
      record: edging,
      field: 'strip',
      lot: strip,
      thickness: panel.thickness,
      ...words,
    });
    const upright = axisOf(panel.place.length).axis === 2;
    const { start, end } = panel.tongues;
    const tongues = [start, end].filter((t) => t !== undefined);
    // What goes into a neighbour is behind that neighbour's own edging.
    const length = tongues.length
      ? l.less('length of the edging, between the neighbours', panel.length, ...tongues)
      : panel.length;
    const begins = (at: Traced) =>
      start === undefined ? at : l.sum('where the edging begins, beside the neighbour', at, start);
    const [px, y, pz] = panel.box.min;
    const [x, z] = upright ? [px, begins(pz)] : [begins(px), pz];
    const across = upright ? 0 : 2;
    const size = [panel.thickness, frame.edgingThickness, length] as const;
    const part = draft.panel({
      record: edging.id,
      role: `on:${panel.id}`,
      name: `edging for ${panel.name}`,
      family: 'edging',
      lot: strip,
      at: [x, l.less('front of the edging', y, frame.edgingThickness), z],
      size: across === 0 ? size : [size[2], size[1], size[0]],
      length: upright ? '+z' : '+x',
      // The show face looks to the front.
      width: upright ? '-x' : '+z',
      between: tongues.length > 0,
      rough: {
        length: tongues.length
          ? length
          : l.sum('length to cut before trimming', panel.length, allowance, allowance),
        width,
        thickness: frame.edgingThickness,
      },
    });
    return [part, panel];
  });
}
