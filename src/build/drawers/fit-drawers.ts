import type { Bench } from '../bench.ts';
import { makeBox } from './box.ts';
import { fitFront } from './front.ts';
import { hangBox } from './hang-box.ts';
import { isShallow } from './shallow.ts';

/** Makes the boxes of the drawers, puts them on their runners and their fronts on. */
export function fitDrawers(bench: Bench): void {
  const { drawers } = bench.setOut;
  for (const drawer of drawers) makeBox(bench, drawer);
  for (const drawer of drawers) hangBox(bench, drawer);
  for (const drawer of drawers) if (!isShallow(bench, drawer)) fitFront(bench, drawer);
}
