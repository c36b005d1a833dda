import type { Shape, Solids } from '../solid/index.ts';
import { type Box, boundsOf, isBox } from './shape-bounds.ts';

/** Sides that lie this near are one, mm. */
const ONE = 0.02;
/** What reaches into the wood by less than this cuts nothing, mm. */
const NOTHING = 0.05;

/**
 * The boxes of rabbets, channels and notches within a box of wood, and those that its slopes fill: what is cut in several
 * passes is one, and what lies in another is none of its own. Where they run into one another they are one hollow; here
 * each is told by itself. Round holes are left out, and grooves in a slope: those begin in what the slope takes.
 */
export function singleCuts(solids: Solids, of: readonly Shape[], within: Box): readonly Box[] {
  const cuts: Box[] = [];
  for (const shape of of) {
    let cut: Box | undefined;
    if (isBox(shape)) cut = common(boundsOf(shape), within);
    else if (of.length > 1 && isSlope(shape)) cut = filled(solids, shape, within);
    while (cut) {
      const grown: Box = cut;
      const i = cuts.findIndex((other) => oneBox(other, grown) !== undefined);
      if (i < 0) {
        cuts.push(grown);
        break;
      }
      cut = oneBox(cuts.splice(i, 1)[0]!, grown);
    }
  }
  return cuts;
}

/** True for a wedge; a groove that stands aslant is a box, whose corners lie equally far from its middle. */
function isSlope(shape: Shape): boolean {
  if (shape.kind === 'moved') return isSlope(shape.body);
  if (shape.kind !== 'hull') return false;
  const middle = [0, 1, 2].map((k) => shape.points.reduce((sum, p) => sum + p[k]!, 0) / shape.points.length);
  const far = shape.points.map((p) => Math.hypot(...p.map((x, k) => x - middle[k]!)));
  return Math.max(...far) - Math.min(...far) > ONE;
}

/** The box that what a cut takes out of the wood fills. */
function filled(solids: Solids, shape: Shape, within: Box): Box | undefined {
  return solids
    .make(shape)
    .common(solids.make({ kind: 'box', ...within }))
    .bounds();
}

function common(a: Box, b: Box): Box | undefined {
  const min = [0, 1, 2].map((k) => Math.max(a.min[k]!, b.min[k]!));
  const max = [0, 1, 2].map((k) => Math.min(a.max[k]!, b.max[k]!));
  return max.some((x, k) => x - min[k]! < NOTHING) ? undefined : ({ min, max } as unknown as Box);
}

/** The box that two fill together; undefined where that is no box. */
function oneBox(a: Box, b: Box): Box | undefined {
  if (holds(a, b)) return a;
  if (holds(b, a)) return b;
  const apart = [0, 1, 2].filter(
    (k) => Math.abs(a.min[k]! - b.min[k]!) > ONE || Math.abs(a.max[k]! - b.max[k]!) > ONE,
  );
  const [k] = apart;
  if (apart.length !== 1 || a.min[k!]! > b.max[k!]! + ONE || b.min[k!]! > a.max[k!]! + ONE) return undefined;
  return {
    min: a.min.map((x, i) => Math.min(x, b.min[i]!)) as unknown as Box['min'],
    max: a.max.map((x, i) => Math.max(x, b.max[i]!)) as unknown as Box['max'],
  };
}

function holds(a: Box, b: Box): boolean {
  return [0, 1, 2].every((k) => a.min[k]! <= b.min[k]! + ONE && a.max[k]! >= b.max[k]! - ONE);
}
