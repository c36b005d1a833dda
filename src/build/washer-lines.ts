import type { Fastener, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';

/** Screws that hold solid wood which moves go in with washers, and not tight. */
export function washerLines(
  bench: Bench,
  fasteners: readonly Fastener[],
  part: Part,
  mate: Part,
): readonly string[] {
  const [first, ...more] = fasteners.filter((f) => f.washer !== undefined);
  if (!first) return [];
  const washer = bench.job.shop.rack.fixings?.find((f) => f.id === first.washer);
  const slotted = part.features.some((f) => f.kind === 'slot' && f.use === 'screw');
  const [holes, their] = slotted ? ['slots', 'slots'] : ['wide holes', 'holes'];
  return [
    `The ${more.length + 1} in the ${holes} behind get a washer each (${washer?.name ?? first.washer}) and stand in the middle of their ${their}: snug, not tight, so that ${mate.mark} can move with the air’s damp. Those in front hold it where it is. No glue.`,
  ];
}
