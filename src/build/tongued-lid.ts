import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { isLetIn, type Standing } from './seating.ts';

/**
 * A lid whose tongues go into channels of both sides: it lies on the uprights before the sides are pushed on to it. Not where
 * these stand in channels of the bottom: then it slides in last, from behind.
 */
export function isTongued(bench: Bench, lid: Part): boolean {
  const takes = takesTongue(bench, lid);
  const stand = bench.setOut.joints.some((j) => takes.includes(j.part) && isLetIn(j) && j.side === 'start');
  return (
    !stand &&
    lid.features.some((f) => f.kind === 'rabbet' && (f.edge === 'start' || f.edge === 'end')) &&
    bench.setOut.joints.some((j) => j.part === lid.id && isLetIn(j) && j.kind === 'dado')
  );
}

/** The sides that take the tongues of a lid. */
export function takesTongue(bench: Bench, lid: Part): readonly string[] {
  return bench.setOut.joints.filter((j) => j.part === lid.id && isLetIn(j)).map((j) => j.mate);
}

/**
 * A lid with a side there already, which two cases share, is pushed into that: it would not come down on tongues of uprights as
 * well. These slide in under it later.
 */
export function goesIntoSide(bench: Bench, standing: Standing, lid: Part): boolean {
  return (
    takesTongue(bench, lid).some((id) => standing.has(id)) &&
    bench.setOut.joints.some((j) => j.mate === lid.id && isLetIn(j))
  );
}
