import type { OperationKind } from './operation-kind.ts';

/**
 * Minutes that one operation of a kind takes, setting up included, and how long it must then be left alone.
 * From memory of small-shop work; a rough guide, shown as such.
 */
export const MINUTES: Record<OperationKind, { readonly active: number; readonly waiting: number }> = {
  'yard-cut': { active: 10, waiting: 0 },
  gather: { active: 15, waiting: 0 },
  mark: { active: 1, waiting: 0 },
  'test-cut': { active: 8, waiting: 0 },
  'true-edge': { active: 5, waiting: 0 },
  'square-end': { active: 5, waiting: 0 },
  rip: { active: 4, waiting: 0 },
  crosscut: { active: 3, waiting: 0 },
  plane: { active: 8, waiting: 0 },
  'glue-up': { active: 15, waiting: 0 },
  bevel: { active: 4, waiting: 0 },
  rabbet: { active: 12, waiting: 0 },
  groove: { active: 8, waiting: 0 },
  notch: { active: 5, waiting: 0 },
  scribe: { active: 20, waiting: 0 },
  slot: { active: 5, waiting: 0 },
  'biscuit-slot': { active: 1, waiting: 0 },
  pocket: { active: 1, waiting: 0 },
  drill: { active: 1, waiting: 0 },
  edge: { active: 6, waiting: 0 },
  iron: { active: 3, waiting: 0 },
  trim: { active: 3, waiting: 0 },
  flush: { active: 4, waiting: 0 },
  sand: { active: 4, waiting: 0 },
  rehearse: { active: 8, waiting: 0 },
  assemble: { active: 5, waiting: 0 },
  plug: { active: 1, waiting: 30 },
  screw: { active: 1, waiting: 0 },
  mortise: { active: 12, waiting: 0 },
  hang: { active: 8, waiting: 0 },
  measure: { active: 8, waiting: 0 },
  adjust: { active: 8, waiting: 0 },
  'check-square': { active: 5, waiting: 0 },
  cure: { active: 1, waiting: 0 },
  mask: { active: 5, waiting: 0 },
  prefinish: { active: 6, waiting: 0 },
  rub: { active: 12, waiting: 0 },
  finish: { active: 40, waiting: 0 },
  wax: { active: 15, waiting: 0 },
  inspect: { active: 10, waiting: 0 },
  rest: { active: 2, waiting: 0 },
  move: { active: 3, waiting: 0 },
  level: { active: 10, waiting: 0 },
  anchor: { active: 15, waiting: 0 },
};

/** Kinds that must be left alone until the shop’s glue has set, or its coat is dry. */
export const WAITS: Partial<Record<OperationKind, 'glue' | 'coat'>> = {
  edge: 'glue',
  'glue-up': 'glue',
  cure: 'glue',
  prefinish: 'coat',
  finish: 'coat',
};
