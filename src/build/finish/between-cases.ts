import { type ExposedFace, exposedFaces } from '../../setting-out/index.ts';
import type { Bench } from '../bench.ts';
import { unitsOf } from '../case-units.ts';

/**
 * What cases that go home one by one hide from one another while they stand together: they come apart before the finish,
 * and these faces are finished as well. None of a single case.
 */
export function betweenCases(bench: Bench, together: readonly ExposedFace[]): readonly ExposedFace[] {
  const units = unitsOf(bench);
  if (units.length < 2) return [];
  const { setOut } = bench;
  const open = new Map(together.map((f) => [keyOf(f), f.areaMm2]));
  const shared = setOut.parts.filter((p) => !units.some((u) => u.parts.includes(p)));
  return units.flatMap(({ parts }) =>
    exposedFaces({ ...setOut, parts: [...parts, ...shared] }).flatMap((face) => {
      const areaMm2 = face.areaMm2 - (open.get(keyOf(face)) ?? 0);
      return parts.includes(face.part) && areaMm2 > 1 ? [{ ...face, areaMm2 }] : [];
    }),
  );
}

function keyOf({ part, side }: ExposedFace): string {
  return `${part.id} ${side}`;
}
