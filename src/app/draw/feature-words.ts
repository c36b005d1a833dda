import type { Feature } from '../../setting-out/index.ts';

const ONE_AND_MORE: Readonly<Record<Feature['kind'], readonly [string, string]>> = {
  rabbet: ['rabbet', 'rabbets'],
  groove: ['groove', 'grooves'],
  notch: ['notch', 'notches'],
  bevel: ['bevelled end', 'bevelled ends'],
  hole: ['hole', 'holes'],
  slot: ['slot', 'slots'],
  pocket: ['pocket hole', 'pocket holes'],
  'spline-groove': ['groove for a spline', 'grooves for splines'],
  'biscuit-slot': ['slot for a biscuit', 'slots for biscuits'],
};

/** What is worked on a part, counted: `1 rabbet, 6 pocket holes`. */
export function featureWords(features: readonly Feature[]): string {
  const counts = new Map<Feature['kind'], number>();
  for (const f of features) counts.set(f.kind, (counts.get(f.kind) ?? 0) + 1);
  return [...counts].map(([kind, n]) => `${n} ${ONE_AND_MORE[kind][n === 1 ? 0 : 1]}`).join(', ');
}
