import { type SetOut, shapeOf } from '../../src/setting-out/index.ts';
import type { Solids } from '../../src/solid/index.ts';
import { boxOf } from './judge-set-out.ts';

/** Pairs of parts that share more than a thousandth of a cubic millimetre of wood, judged on solids. */
export function sharedWood(solids: Solids, piece: SetOut): readonly string[] {
  return solids.within(() => {
    const boxes = piece.parts.map((part) => ({ part, box: boxOf(piece, part) }));
    const made = new Map<string, ReturnType<Solids['make']>>();
    const body = (part: SetOut['parts'][number]) => {
      const known = made.get(part.id) ?? solids.make(shapeOf(piece, part, { fastenerHoles: false }));
      made.set(part.id, known);
      return known;
    };
    return boxes.flatMap((a, i) =>
      boxes.slice(i + 1).flatMap((b) => {
        // A part lies within its box.
        const apart = [0, 1, 2].some((k) => a.box.min[k]! >= b.box.max[k]! || b.box.min[k]! >= a.box.max[k]!);
        if (apart) return [];
        const volume = body(a.part).common(body(b.part)).volume();
        return volume > 0.001 ? [`${a.part.id} and ${b.part.id} share ${volume} mm³`] : [];
      }),
    );
  });
}
