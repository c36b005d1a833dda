import { DRAWERS } from '../../materials/index.ts';
import type { Drawer } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';

/** Whether no drill goes between the ends of a box: its front is then screwed on before the back closes it. */
export function isShallow(bench: Bench, drawer: Drawer): boolean {
  const l = bench.ledger;
  return l.ticks(drawer.inside.depth) < l.ticks(l.row(DRAWERS.driverRoom));
}
