export { ADHESIVES, type Adhesive, adhesive } from './adhesives.ts';
export { BASES } from './base-rules.ts';
export { BUTTONS } from './button-rules.ts';
export { CAUTIONS, type Caution, caution } from './cautions.ts';
export { CREEP_FACTORS, type CreepFactor, creepFactor } from './creep-factors.ts';
export { DOORS, HINGE_COUNTS, type HingeCount, hingeCount } from './door-rules.ts';
export { DRAWERS } from './drawer-rules.ts';
export { FACE_SCREWS } from './face-screw-rules.ts';
export { type FasteningGravity, fasteningGravity } from './fastening-gravity.ts';
export { FINISH_WORK } from './finish-work.ts';
export {
  coverageM2PerL,
  FILMS,
  FINISHES,
  type Finish,
  finish,
  OILY_CLOTHS,
  SANDING_GRITS,
} from './finishes.ts';
export { FIT_LIMITS } from './fit-limits.ts';
export { GLUE_WORK, LEAN, LEANING_BY } from './glue-work.ts';
export { GLUED_PANELS } from './glued-panel-rules.ts';
export { HANDLES } from './handle-rules.ts';
export { HOLDING } from './holding-rules.ts';
export { HOLES, PLUGS, type Plug, plug } from './hole-rules.ts';
export { GRAVITY, HELD_LID, LIDS, PINCHING, SHUT_IN } from './lid-rules.ts';
export { LOOSE_SHELVES } from './loose-shelf-rules.ts';
export {
  boardFeet,
  type DressedSize,
  dressed,
  HARDWOOD_THICKNESSES,
  hardwoodTally,
  SOFTWOOD_THICKNESSES,
  SOFTWOOD_WIDTHS,
} from './lumber.ts';
export { MACHINE_RULES } from './machine-rules.ts';
export { density, type Material, material, reckonedDensity } from './material.ts';
export { INDOORS, moistureIn, movementBetween } from './moisture.ts';
export { type CategoryLimits, en315Sanded, ps1Category, type ThicknessLimits } from './panel-thickness.ts';
export {
  PANELS,
  type Panel,
  type PanelStiffness,
  panel,
  panelStiffness,
  SHEET_SIZES,
  type SheetSize,
} from './panels.ts';
export { BISCUITS, DOWELS } from './peg-rules.ts';
export {
  POCKET_DEGREES,
  POCKET_HOLE,
  type PocketReach,
  pocketReach,
  pocketScrewLength,
  pocketThread,
} from './pocket-holes.ts';
export { ABOVE_ROW, ROW_IDS, ROWS_HELD, type RowHeld, type RowId, rowHeld } from './rows-held.ts';
export { isSolid, SCREW_DISTANCES } from './screw-distances.ts';
export {
  edgePilotShare,
  PILOT_SHARES,
  type PilotUse,
  pilotShare,
  SCREW_RULES,
  screwFigure,
  shankShare,
  WOOD_SCREWS,
  type WoodScrew,
  woodScrew,
  woodScrewOf,
} from './screws.ts';
export { SETTING_OUT } from './setting-out-rules.ts';
export {
  MOST_ON_A_SHELF,
  ROW_OF_BOOKS,
  SAG_LIMITS,
  type SagLimit,
  SHELF_LOADS,
  type ShelfLoad,
  sagLimit,
  shelfLoad,
} from './shelf-loads.ts';
export { SLIDING, SLIDING_LIMITS } from './sliding-rules.ts';
export type { Range, Sourced } from './sourced.ts';
export { densityAt12, SPECIES, type Species, species } from './species.ts';
export { SPLINES } from './spline-rules.ts';
export { STABILITY_LOADS, type StabilityLoad, stabilityLoad } from './stability-loads.ts';
export { TOOL_ACCURACIES, type ToolAccuracy, toolAccuracy } from './tool-accuracy.ts';
export { BIT_RADIUS, BITS, CLAMP, DRIVERS, type DriverBody } from './tool-bodies.ts';
export { type PocketShape, pocketShape, SINK_DEGREES } from './tool-shapes.ts';
export { VENEER } from './veneer-rules.ts';
export { airFlow, freeArea, VENTS, WARMER_BY } from './ventilation.ts';
export { WAY } from './way-rules.ts';
