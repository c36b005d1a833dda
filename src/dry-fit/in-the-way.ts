import { toMm } from '../measure/index.ts';
import type { Solids } from '../solid/index.ts';
import { type Assembly, frameOf, type Member, planesOf } from './assembly.ts';
import { shapeOfPiece } from './virtual-piece.ts';

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
      const common = commonSize(a, b);
      if (!common || common[0]! <= GIVE) continue;
      // Boxes overlap, but mitres and rabbets may leave room: ask the wood itself.
      const volume = solids.within(() => {
        const bodies = [a, b].map((m) =>
          solids.make({ kind: 'moved', body: shapeOfPiece(m.piece), frame: frameOf(m) }),
        );
        return bodies[0]!.common(bodies[1]!).volume();
      });
      const depth = volume / (common[1]! * common[2]!);
      if (depth > GIVE)
        clashes.push({ newcomer: a.mark, there: b.mark, depthMm: Math.round(depth * 10) / 10 });
    }
  return clashes;
}

/** The sides of the box that two members' boxes share, mm, smallest first. */
function commonSize(a: Member, b: Member): readonly number[] | undefined {
  const [p, q] = [planesOf(a), planesOf(b)];
  const size = (['x', 'y', 'z'] as const).map((k) =>
    toMm(Math.min(p[`+${k}`], q[`+${k}`]) - Math.max(p[`-${k}`], q[`-${k}`])),
  );
  return size.every((s) => s > 0) ? size.sort((x, y) => x - y) : undefined;
}
