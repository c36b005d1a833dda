export type { JoinedBlank } from './blanks/joined-blank.ts';
export type { Cleat } from './case/cleat.ts';
export type { Levellers } from './case/leveller.ts';
export type { ScribedTop } from './case/scribed-top.ts';
export { Dimensions, type DimensionsData } from './dimensions.ts';
export type { DoorLeaf } from './doors/door-leaf.ts';
export type { CentreRunner, Drawer, WoodenRunners } from './drawers/drawer.ts';
export type {
  Bevel,
  BiscuitSlot,
  Edge,
  Face,
  Feature,
  Groove,
  Hole,
  Notch,
  Pocket,
  Rabbet,
  Slot,
  SplineGroove,
} from './feature.ts';
export type { ChannelRow, ChannelSettings } from './fits/channel-settings.ts';
export { channelRows, channelSettings, routedChannels } from './fits/channel-settings.ts';
export type { CutSize } from './fits/cut-size.ts';
export { sawKerf, sawnSize, sawStep, twoKerfs } from './fits/cut-size.ts';
export type { Fit, FitKind, FitMember, MadeBy, PrintedFit } from './fits/fit.ts';
export { runningClear } from './fits/running-clear.ts';
export type { SplineGrooveSettings } from './fits/spline-groove-settings.ts';
export { splineGrooveSettings } from './fits/spline-groove-settings.ts';
export type { GluedPanel } from './glued/glued-panel.ts';
export {
  doorsOf,
  fixingsUsed,
  hingesUsed,
  pinsUsed,
  pullsUsed,
  runnersUsed,
  screwsUsed,
  staysUsed,
} from './hardware.ts';
export { closingOrder } from './joints/closing-order.ts';
export { driverAt } from './joints/driver-room.ts';
export { glueAreaMm2 } from './joints/glue-area.ts';
export { JOINED_BY } from './joints/joinery.ts';
export type { Duty, Fastener, Hold, Joint } from './joints/joint.ts';
export { isGlued, isPegged } from './joints/joint.ts';
export type { Peg } from './joints/peg.ts';
export type { Lid } from './lids/lid.ts';
export { inOneStrip } from './one-strip.ts';
export type { Part, Side, StockForm } from './part.ts';
export type { PartGroup } from './parts-report.ts';
export { commonName, groupParts, joinMarks, partsReport } from './parts-report.ts';
export { blankOf, partsAndBoards, partsToCut, stillJoined, stockThickness } from './parts-to-cut.ts';
export type { PinnedShelf } from './pins/pinned-shelf.ts';
export type { Axis, Direction, Place, PlaceTicks, TickBox, TracedBox } from './place.ts';
export { axisOf, boxTicks, opposite, placeTicks, thirdDirection, toPiece } from './place.ts';
export type { BoughtPull } from './pulls/bought-pull.ts';
export type { Joinery, Opening, SetOut, Surface } from './set-out.ts';
export { setOut } from './set-out-job.ts';
export type { SlidingLeaf, SlidingSet } from './sliding/sliding-set.ts';
export type { ShapeOptions } from './solids-of-parts.ts';
export { shapeOf } from './solids-of-parts.ts';
export { coatsOn, finishOf } from './surfaces/coats.ts';
export type { ExposedFace } from './surfaces/exposed-faces.ts';
export { exposedFaces } from './surfaces/exposed-faces.ts';
export { closesBehind, finishedBefore } from './surfaces/finished-before.ts';
export { goodFaces } from './surfaces/good-faces.ts';
export { SURFACE_CLASSES, type SurfaceClass, surfaceClass } from './surfaces/surface-class.ts';
