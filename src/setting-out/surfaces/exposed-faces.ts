import { outward } from '../joints/contact.ts';
import type { Part, Side, UncutPart } from '../part.ts';
import { type Direction, placeTicks, toPiece } from '../place.ts';
import type { SetOut } from '../set-out.ts';
import { commonRectangle, coveredArea, type Rectangle } from './covered-area.ts';

/** A side of a part as far as nothing lies on it. Lengths in millimetres. */
export interface ExposedFace<P extends UncutPart = Part> {
  readonly part: P;
  readonly side: Side;
  readonly looks: Direction;
  readonly areaMm2: number;
  /** How far off that which it looks at is, where most of it looks at something. */
  readonly gapMm?: number;
  /** How far it stands behind the piece’s foremost, backmost ... plane on its own side. */
  readonly behindMm: number;
  /** How high above the lowest point of the piece it lies; of an upright face, its lower end. */
  readonly highMm: number;
}

const SIDES: readonly Side[] = ['start', 'end', 'near', 'far', 'under', 'show'];
const PER_MM = 3200;

interface Box {
  readonly min: readonly number[];
  readonly max: readonly number[];
}

/** What a standing piece's faces are looked at by. */
type Standing = Pick<SetOut, 'drawers' | 'ledger'> & { readonly parts: readonly UncutPart[] };

/**
 * All sides of all parts as they stand, less what other parts lie on or are let into. Channels and holes are left out:
 * they take glue or little finish. Drawers are finished drawn out, so they and the case don't look at one another.
 */
export function exposedFaces(setOut: SetOut): readonly ExposedFace[] {
  const look = lookingRound<Part>(setOut);
  return setOut.parts.flatMap((part) => SIDES.flatMap((side) => look(part, side) ?? []));
}

/** The same of one side of one part at a time; undefined where all of it is covered. */
export function lookingRound<P extends UncutPart>({
  parts,
  drawers,
  ledger,
}: Standing): (part: P, side: Side) => ExposedFace<P> | undefined {
  const t = (x: Part['length']) => ledger.ticks(x);
  const boxes = parts.map((p): Box => {
    const own = { min: [0, 0, 0] as never, max: [t(p.length), t(p.width), t(p.thickness)] as never };
    return toPiece(placeTicks(ledger, p.place), own);
  });
  const at = new Map(parts.map((p, i) => [p.id, i]));
  const drawerOf = new Map(drawers.flatMap((d) => Object.values(d.parts).map((id) => [id, d] as const)));
  const whole: Box = {
    min: [0, 1, 2].map((a) => Math.min(...boxes.map((b) => b.min[a]!))),
    max: [0, 1, 2].map((a) => Math.max(...boxes.map((b) => b.max[a]!))),
  };
  return (part, side) => {
    const i = at.get(part.id)!;
    const d = outward(part.place, side);
    const axis = 'xyz'.indexOf(d[1]!);
    const up = d[0] === '+';
    const plane = up ? boxes[i]!.max[axis]! : boxes[i]!.min[axis]!;
    const face = rectangleAcross(boxes[i]!, axis);
    const covers: Rectangle[] = [];
    const beyond: { readonly rectangle: Rectangle; readonly gap: number }[] = [];
    boxes.forEach((b, n) => {
      if (n === i || drawerOf.get(part.id) !== drawerOf.get(parts[n]!.id)) return;
      const rectangle = commonRectangle(face, rectangleAcross(b, axis));
      if (!rectangle) return;
      const [near, far] = up ? [b.min[axis]!, b.max[axis]!] : [-b.max[axis]!, -b.min[axis]!];
      const on = up ? plane : -plane;
      if (near <= on && on < far) covers.push(rectangle);
      else if (near > on) beyond.push({ rectangle, gap: near - on });
    });
    const area = coveredArea([face]) - coveredArea(covers);
    if (area <= 0) return undefined;
    const faced = coveredArea(beyond.map((x) => x.rectangle));
    const gap = widest(beyond)?.gap ?? Infinity;
    return {
      part,
      side,
      looks: d,
      areaMm2: area / PER_MM ** 2,
      ...(faced > 0.5 * area ? { gapMm: gap / PER_MM } : {}),
      behindMm: (up ? whole.max[axis]! - plane : plane - whole.min[axis]!) / PER_MM,
      highMm: ((axis === 2 ? plane : boxes[i]!.min[2]!) - whole.min[2]!) / PER_MM,
    };
  };
}

/** Of what a face looks at, that which it sees most of. */
function widest<T extends { readonly rectangle: Rectangle; readonly gap: number }>(
  beyond: readonly T[],
): T | undefined {
  const size = (x: T) => coveredArea([x.rectangle]);
  return [...beyond].sort((a, b) => size(b) - size(a) || a.gap - b.gap)[0];
}

function rectangleAcross(box: Box, axis: number): Rectangle {
  const [a, b] = [0, 1, 2].filter((x) => x !== axis) as [number, number];
  return [box.min[a]!, box.min[b]!, box.max[a]!, box.max[b]!];
}
