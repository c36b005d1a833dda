import { FIT_LIMITS, SPLINES } from '../../materials/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { SplineGroove } from '../feature.ts';
import { addFit, cut, setBy, thick } from './fit.ts';
import { splineGrooveSettings, splineTool } from './spline-groove-settings.ts';

/** A spline and the grooves that it goes into. */
interface FittedSpline {
  readonly strip: DraftPart;
  readonly side: DraftPart;
  readonly flat: DraftPart;
  /** One of the two grooves, which are alike. */
  readonly groove: SplineGroove;
}

/** A spline in its grooves: across them both, so that the slopes close, and in their width. */
export function fitsOfSpline(draft: Draft, { strip, side, flat, groove }: FittedSpline): void {
  const l = draft.ledger;
  const { width, depth } = groove;
  const tool = splineTool(draft.job.shop);
  const deep = [side, flat].map((p) =>
    setBy(tool, `depth of the groove in the slope of the ${p.name}`, depth, 1, p.id),
  );
  addFit(draft, {
    id: `${strip.id}/width`,
    kind: 'spline',
    name: `the ${strip.name} across both grooves`,
    gap: l.less('room across', l.sum('both grooves', ...deep.map((m) => m.length)), strip.width),
    least: draft.nothing,
    most: l.row(SPLINES.lost),
    loop: [...deep, cut(draft, strip, 'width', -1)],
    toFit: strip.id,
  });
  addFit(draft, {
    id: `${strip.id}/thickness`,
    kind: 'spline',
    name: `the ${strip.name} in the width of its grooves`,
    gap: l.less('room in the width', width, strip.thickness),
    least: draft.nothing,
    most: l.row(FIT_LIMITS.dadoLoose),
    loop: [
      // It is tried with a piece of the very stock, so it is off as the stock is.
      {
        name: `width of the grooves for the ${strip.name}`,
        length: width,
        printed: splineGrooveSettings(l, draft.job.shop, groove).width,
        sign: 1,
        made: { by: 'lot', lot: strip.lot },
      },
      thick(strip, -1),
    ],
  });
}
