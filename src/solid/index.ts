export type { Frame, Mesh, Point, Shape } from './shape.ts';
export type { Body, Solids } from './solids.ts';
