import fc from 'fast-check';
import { edgedFront } from './edged-fronts.ts';
import { optional, withoutAbsent } from './optional.ts';
import { type Field, length, type Typed, type Units } from './typed-length.ts';

/** Drawers for an opening that takes so many. */
export function drawerWishes(
  units: Units,
  most: number,
): fc.Arbitrary<{ readonly fill: 'drawers'; readonly drawers: Field }> {
  const text = (from: number, to: number) => length(units, from, to).map((t) => t.text);
  return fc
    .record({
      board: fc.constantFrom('board', 'other'),
      bottomBoard: fc.constant('thin'),
      frontBoard: fc.constantFrom('board', 'other'),
      hang: fc.constantFrom('inset', 'overlay'),
      count: fc.integer({ min: 1, max: most }),
      grade: optional(text(3, 12)),
      gap: optional(text(1.5, 4)),
      joint: optional(fc.constantFrom('rabbet', 'dado', 'screws', 'pocket-screws')),
      bottomFitting: optional(fc.constantFrom('groove', 'applied')),
      carriedBy: fc.constantFrom(...CARRIED),
      oneStrip: optional(fc.constant('fronts')),
      load: optional(fc.constantFrom('5 kg', '20 lb')),
      edged: edgedFront,
    })
    .map((drawers) => ({ fill: 'drawers', drawers: withoutAbsent(carried(drawers)) }));
}

/** Strips carry most: in shallow cases they are left out for bought runners anyway. */
const CARRIED = [
  undefined,
  ...Array.from({ length: 5 }, () => 'wooden-runners'),
  ...Array.from({ length: 4 }, () => 'centre-runner'),
];

/** Runners for a generated rack. */
export function runners(): readonly Field[] {
  return [70, 140, 250, 350, 450, 550].map((mm) => ({
    id: `runner-${mm}`,
    length: `${mm} mm`,
    thickness: '12.7 mm',
    height: '35 mm',
    screw: 'runner-screw',
    caseScrews: ['20 mm', `${mm - 25} mm`],
    drawerScrews: ['15 mm', `${mm - 20} mm`],
    carries: '30 kg',
  }));
}

/** The fronts of each opening have a strip of their own. */
export function stripOf(opening: string, drawers: Field): Field {
  return drawers.oneStrip === undefined ? drawers : { ...drawers, oneStrip: opening };
}

/** Drawers on wooden runners have their strips, and corners in whose way their grooves are not. */
function carried<T extends { readonly carriedBy?: string | undefined; readonly joint?: string | undefined }>(
  drawers: T,
): T & { readonly runnerStrip?: string } {
  if (drawers.carriedBy === undefined) return drawers;
  // Each drawer on a centre runner stands on what is below it.
  if (drawers.carriedBy === 'centre-runner')
    return { ...drawers, runnerStrip: 'runner-strip', count: 1, grade: undefined, bottomFitting: undefined };
  return { ...drawers, runnerStrip: 'runner-strip', joint: drawers.joint === undefined ? undefined : 'dado' };
}

/** Wooden runners want a deep case; in a shallow one drawers are carried by bought ones. */
export function carriedIn(depth: Typed, drawers: Field): Field {
  const { carriedBy, runnerStrip: _, ...others } = drawers;
  return carriedBy === undefined || depth.ticks >= DEEP ? drawers : others;
}

const DEEP = 420 * 3200;
