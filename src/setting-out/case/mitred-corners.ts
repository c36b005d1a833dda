import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart, PanelSpec } from '../draft.ts';
import type { Face } from '../feature.ts';
import type { Bores } from '../joints/bores.ts';
import { contactBox } from '../joints/contact.ts';
import { biscuitsInMitre } from '../joints/mitre-biscuits.ts';
import { splineInMitre } from '../joints/mitre-spline.ts';
import type { MitredCorner } from '../joints/mitred-corner.ts';
import type { CasePanels } from './case-panels.ts';

/** What a panel is cut to before its ends are mitred: longer at each of them by an allowance. */
export function roughForMitres(
  draft: Draft,
  [length, width, thickness]: readonly [Traced, Traced, Traced],
  ends: 1 | 2,
): NonNullable<PanelSpec['rough']> {
  const allowance = draft.ledger.row(SETTING_OUT.mitreAllowance);
  return {
    length: draft.ledger.sum(
      'length to cut before mitring',
      length,
      ...Array.from({ length: ends }, () => allowance),
    ),
    width,
    thickness,
  };
}

/** Cuts the ends of the panels at 45 degrees, so that their outer faces keep the full size. */
export function mitreCorners(
  sides: readonly DraftPart[],
  bottom: DraftPart,
  lid: DraftPart | undefined,
): void {
  const mitre = (part: DraftPart, edge: 'start' | 'end', fullFace: Face, with_: string) =>
    part.features.push({
      kind: 'bevel',
      id: `${part.id}#${edge}`,
      purpose: `mitre with the ${with_}`,
      edge,
      angle: 45,
      fullFace,
    });
  const [left, right] = sides;
  for (const side of sides) {
    mitre(side, 'start', 'show', bottom.name);
    if (lid) mitre(side, 'end', 'show', lid.name);
  }
  for (const [flat, outer] of [
    [bottom, 'under'],
    [lid, 'show'],
  ] as const)
    if (flat) {
      mitre(flat, 'start', outer, left!.name);
      mitre(flat, 'end', outer, right!.name);
    }
}

/** Joins the corners: glued slope on slope, with biscuits or splines where the case asks for them. */
export function joinMitres(
  draft: Draft,
  bores: Bores,
  box: RecordOf<'case'>,
  { left, right, bottom, lid }: CasePanels,
): void {
  const glue = (side: DraftPart, sideEnd: 'start' | 'end', flat: DraftPart, flatEnd: 'start' | 'end') => {
    const id = `${side.id}>${flat.id}`;
    const corner: MitredCorner = { joint: id, box, side, sideEnd, flat, flatEnd };
    const pegs =
      box.inMitres === 'biscuits'
        ? biscuitsInMitre(draft, bores, corner)
        : box.inMitres === 'spline'
          ? splineInMitre(draft, bores, corner)
          : undefined;
    draft.joints.push({
      id,
      kind: 'mitre',
      duty: 'carries',
      hold: 'glue',
      part: side.id,
      side: sideEnd,
      mate: flat.id,
      mateSide: flatEnd,
      contact: cornerOf(draft, side, flat),
      fasteners: [],
      ...(pegs ? { pegs } : {}),
    });
  };
  glue(left, 'start', bottom, 'start');
  glue(right, 'start', bottom, 'end');
  if (!lid) return;
  glue(left, 'end', lid, 'start');
  glue(right, 'end', lid, 'end');
}

/** The corner's box: the glued face is its diagonal. */
function cornerOf(draft: Draft, side: DraftPart, flat: DraftPart) {
  const [along, up] = [contactBox(draft, side, 'show', flat), contactBox(draft, flat, 'show', side)];
  const [x, z] = [side.box, flat.box];
  return {
    min: [x.min[0], along.min[1], z.min[2]],
    max: [x.max[0], up.max[1], z.max[2]],
  } as const;
}
