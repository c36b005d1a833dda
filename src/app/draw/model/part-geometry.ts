import { BoxGeometry, BufferAttribute, BufferGeometry, EdgesGeometry } from 'three';
import { toMm } from '../../../measure/index.ts';
import { axisOf, type Part, type SetOut } from '../../../setting-out/index.ts';
import type { PartMesh } from '../../worker/messages.ts';

/** The skin of a part, every triangle with corners of its own, so that flat faces stay flat. */
export function fromMesh(mesh: PartMesh): BufferGeometry {
  const shared = new BufferGeometry();
  shared.setAttribute('position', new BufferAttribute(mesh.positions, 3));
  shared.setIndex(new BufferAttribute(mesh.triangles, 1));
  const own = shared.toNonIndexed();
  own.computeVertexNormals();
  shared.dispose();
  return own;
}

/** The blank of a part where it stands, shown until its skin has been worked out. */
export function fromBlank(setOut: SetOut, part: Part): BufferGeometry {
  const mm = (t: Part['length']) => toMm(setOut.ledger.ticks(t));
  const min = part.place.origin.map(mm) as [number, number, number];
  const size: [number, number, number] = [0, 0, 0];
  const along = [
    [part.place.length, part.length],
    [part.place.width, part.width],
    [part.place.thickness, part.thickness],
  ] as const;
  for (const [direction, length] of along) {
    const { axis, sign } = axisOf(direction);
    size[axis] = mm(length);
    if (sign < 0) min[axis] -= mm(length);
  }
  const box = new BoxGeometry(...size);
  box.translate(min[0] + size[0] / 2, min[1] + size[1] / 2, min[2] + size[2] / 2);
  return box;
}

/** Faces that meet at less than this many degrees are one round surface: no line between them. */
const ROUND = 30;

/**
 * The edges of a part, in pairs of points. Edges that lie wholly inside its outline (the ends of blind holes) are left
 * out: at the size of a whole piece they would show through as specks.
 */
export function edgesOf(skin: BufferGeometry): BufferGeometry {
  const edges = new EdgesGeometry(skin, ROUND);
  skin.computeBoundingBox();
  const { min, max } = skin.boundingBox!;
  const points = edges.getAttribute('position').array;
  const isInside = (at: number) =>
    [min.x, min.y, min.z].every((low, i) => points[at + i]! - low > 0.01) &&
    [max.x, max.y, max.z].every((high, i) => high - points[at + i]! > 0.01);
  const kept: number[] = [];
  for (let at = 0; at < points.length; at += 6)
    if (!isInside(at) || !isInside(at + 3)) kept.push(...points.slice(at, at + 6));
  edges.dispose();
  return new BufferGeometry().setAttribute('position', new BufferAttribute(new Float32Array(kept), 3));
}
