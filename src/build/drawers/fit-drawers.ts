import type { Bench } from '../bench.ts';
import { stand } from '../turning.ts';
import { makeBox } from './box.ts';
import { fitFront } from './front.ts';
import { onBoughtRunners } from './on-bought-runners.ts';
import { onCentreRunner } from './on-centre-runner.ts';
import { onWoodenRunners } from './on-wooden-runners.ts';
import { isShallow } from './shallow.ts';

/** Makes the boxes of the drawers, puts them on their runners and their fronts on. */
export function fitDrawers(bench: Bench): void {
  const { drawers } = bench.setOut;
  for (const drawer of drawers) makeBox(bench, drawer);
  if (drawers.length > 0) stand(bench, 'fill');
  for (const drawer of drawers) {
    if (drawer.runner) onBoughtRunners(bench, drawer, drawer.runner);
    if (drawer.wooden) onWoodenRunners(bench, drawer, drawer.wooden);
    if (drawer.centre) onCentreRunner(bench, drawer, drawer.centre);
  }
  for (const drawer of drawers) if (!isShallow(bench, drawer)) fitFront(bench, drawer);
}
