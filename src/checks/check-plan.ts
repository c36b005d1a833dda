import type { Snag } from '../snag/index.ts';
import { bits } from './bits.ts';
import type { CheckInput } from './check-input.ts';
import { chosenJoints } from './chosen-joints.ts';
import { clampReach } from './clamp-reach.ts';
import { drawers } from './drawers.ts';
import { edgeScrews } from './edge-screws.ts';
import { enoughMaterial } from './enough-material.ts';
import { fits } from './fits.ts';
import { hanging } from './hanging.ts';
import { hinges } from './hinges.ts';
import { levellers } from './levellers.ts';
import { lids } from './lids.ts';
import { lifting, sheetLifting } from './lifting.ts';
import { looseShelves } from './loose-shelves.ts';
import { sag } from './sag.ts';
import { beyondTheRail, sawReach } from './saw-reach.ts';
import { screwHold } from './screw-hold.ts';
import { screwPaths } from './screw-path.ts';
import { sliding } from './sliding.ts';
import { supplies } from './supplies.ts';
import { tickedCuts } from './ticked-cuts.ts';
import { tipsForward } from './tips-forward.ts';
import { topMoves } from './top-moves.ts';
import { vents } from './vents.ts';
import { wayHome } from './way-home.ts';

/** Every check, in the order in which a maker would ask. */
const CHECKS: readonly ((input: CheckInput) => readonly Snag[])[] = [
  tickedCuts,
  enoughMaterial,
  sag,
  drawers,
  screwPaths,
  edgeScrews,
  screwHold,
  topMoves,
  hinges,
  lids,
  looseShelves,
  sliding,
  vents,
  fits,
  hanging,
  levellers,
  tipsForward,
  bits,
  sawReach,
  beyondTheRail,
  clampReach,
  lifting,
  supplies,
  wayHome,
  chosenJoints,
];

/**
 * Looks a plan over: material, sag, screws, tipping, tools, lifting, the way home. Gives what setting-out, breakdown and build
 * have not said themselves; their own snags are not repeated. In the order of the checks, worst not first.
 */
export function checkPlan(input: CheckInput): readonly Snag[] {
  return CHECKS.flatMap((check) => check(input));
}

/**
 * Looks over what is sawn from a list, which is no piece of furniture: material and whether the cut plan holds, the reach of saw and
 * rail, the weight of sheets.
 */
export function checkSawing(input: Omit<CheckInput, 'weigh'>): readonly Snag[] {
  return [enoughMaterial, sawReach, beyondTheRail, sheetLifting].flatMap((check) => check(input));
}
