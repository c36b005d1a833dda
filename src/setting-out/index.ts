export type { Bevel, Edge, Face, Feature, Hole, Pocket, Rabbet } from './feature.ts';
export type { Duty, Fastener, Hold, Joint } from './joint.ts';
export type { Part, Side, StockForm } from './part.ts';
export type { PartGroup } from './parts-report.ts';
export { commonName, groupParts, joinMarks, partsReport } from './parts-report.ts';
export type { Axis, Direction, Place, PlaceTicks, TickBox, TracedBox } from './place.ts';
export { axisOf, boxTicks, opposite, placeTicks, thirdDirection, toPiece } from './place.ts';
export type { Opening, SetOut, Surface } from './set-out.ts';
export { setOut } from './set-out-job.ts';
