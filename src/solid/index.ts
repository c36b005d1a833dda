export type { HeavyBody, Mass } from './mass.ts';
export { massOf, massTogether } from './mass.ts';
export type { Frame, Mesh, Point, Shape } from './shape.ts';
export type { Body, Solids } from './solids.ts';
