import { toMm } from '../measure/index.ts';
import type { Point, Shape, Solids } from '../solid/index.ts';
import { type Assembly, frameOf, type Member, planesOf } from './assembly.ts';
import { type Box, boundsOf, overlap } from './shape-bounds.ts';

/** Two parts that would share wood, and by how much across the thinnest way. */
export interface Clash {
  readonly newcomer: string;
  readonly there: string;
  readonly depthMm: number;
}

/** How much parts may overlap before it counts, mm: what rounding on the cards makes, and a clamp takes up. */
const GIVE = 0.75;

/** Everything that a newcomer runs into. */
export function inTheWay(solids: Solids, there: Assembly, came: Assembly): readonly Clash[] {
  const clashes: Clash[] = [];
  for (const a of came.members)
    for (const b of there.members) {
      const box = commonBox(a, b);
      const [least, ...sides] = [0, 1, 2].map((i) => box.max[i]! - box.min[i]!).sort((x, y) => x - y);
      if (least! <= GIVE) continue;
      // Boxes overlap, but mitres and rabbets may leave room: ask the wood itself.
      const volume = sharedVolume(solids, a, b);
      const depth = volume / (sides[0]! * sides[1]!);
      if (depth > GIVE)
        clashes.push({ newcomer: a.mark, there: b.mark, depthMm: Math.round(depth * 10) / 10 });
    }
  return clashes;
}

/** How much wood two members would share as they stand, mm³. */
export function sharedVolume(solids: Solids, a: Member, b: Member): number {
  const box = commonBox(a, b);
  if (box.min.some((low, k) => low >= box.max[k]!)) return 0;
  const cuts = [a, b].flatMap((m) => cutsWithin(m, box));
  // Mostly two plain boards would meet, and their boxes are their wood.
  if (cuts.length === 0) return box.max.reduce((volume, far, k) => volume * (far - box.min[k]!), 1);
  return solids.within(() => solids.make({ kind: 'without', body: { kind: 'box', ...box }, cuts }).volume());
}

/** The box that two members' boxes share, mm; inside out where they are apart. */
function commonBox(a: Member, b: Member): Box {
  const [p, q] = [planesOf(a), planesOf(b)];
  const side = (of: (k: 'x' | 'y' | 'z') => number): Point => [toMm(of('x')), toMm(of('y')), toMm(of('z'))];
  return {
    min: side((k) => Math.max(p[`-${k}`], q[`-${k}`])),
    max: side((k) => Math.min(p[`+${k}`], q[`+${k}`])),
  };
}

/** What has been cut out of a member there, as it stands. */
function cutsWithin({ piece, ...member }: Member, box: Box): readonly Shape[] {
  const frame = frameOf({ piece, ...member });
  return piece.cuts
    .map((body): Shape => ({ kind: 'moved', body, frame }))
    .filter((cut) => overlap(boundsOf(cut), box));
}
