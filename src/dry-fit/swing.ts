import type { WoodIn } from './cross-section.ts';

/** A point in the cut from front to back: how far back, how high, mm. */
type Spot = readonly [back: number, up: number];

/** How far wood may press into wood before it counts, mm. */
const PRESS = 0.02;
/** Steps of the angle from leaning out to upright, and how finely a place is felt for, mm. */
const ANGLES = 24;
const FEEL = 0.05;
/** What counts as just over an edge, mm. */
const JUST = 0.2;

/** A door that is to be swung in upright, seen in section. */
export interface SwingingDoor {
  /** Its own wood, from its front and its lower edge. */
  readonly wood: readonly WoodIn[];
  readonly height: number;
  /** The groove above that it goes into, and its face; the edge below that its own passes, and how high it may be lifted. */
  readonly upper: { readonly front: number; readonly back: number };
  readonly face: number;
  readonly edge: number;
  readonly over: number;
  /** How far from the groove's back its lower edge is out in front. */
  readonly reach: number;
}

/**
 * Whether a door can be swung in: leaning with its upper edge in the groove and its lower edge in front, then less and
 * less until it is upright, lifted as far as it may be or only just over the edge below. At every angle a place is felt
 * for where it presses into nothing.
 * Gives the angle in degrees at which there is none.
 */
export function jamsAt(door: SwingingDoor, around: readonly WoodIn[]): number | undefined {
  const out = Math.asin(Math.min(1, door.reach / door.height));
  for (let i = ANGLES; i >= 0; i--) {
    const angle = (out * i) / ANGLES;
    const heights = [door.over, door.edge + JUST];
    if (!heights.some((over) => findsPlace(door, around, angle, over)))
      return Math.round((angle * 1800) / Math.PI) / 10;
  }
  return undefined;
}

function findsPlace(door: SwingingDoor, around: readonly WoodIn[], angle: number, over: number): boolean {
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const leaning = door.wood.map((w) => cornersOf(w).map(([b, u]): Spot => turned(b, u, sine, cosine)));
  const lowest = Math.min(...leaning.flat().map(([, up]) => up));
  const from = door.upper.front - door.height * sine - 1;
  const to = door.upper.back - door.height * sine + 1;
  const z = over - lowest;
  const near = around.filter((w) => w.head > over - 1 && w.foot < door.face + 60);
  for (let y = from; y <= to; y += FEEL) {
    const shapes = leaning.map((s) => s.map(([b, u]): Spot => [b + y, u + z]));
    if (shapes.every((s) => near.every((w) => !pressesInto(s, w)))) return true;
  }
  return false;
}

function turned(back: number, up: number, sine: number, cosine: number): Spot {
  return [back * cosine + up * sine, up * cosine - back * sine];
}

function cornersOf(w: WoodIn): readonly Spot[] {
  return [
    [w.front, w.foot],
    [w.back, w.foot],
    [w.back, w.head],
    [w.front, w.head],
  ];
}

/** Whether upright wood presses into other upright wood. */
export function press(a: WoodIn, b: WoodIn): boolean {
  return (
    Math.min(a.back, b.back) - Math.max(a.front, b.front) > PRESS &&
    Math.min(a.head, b.head) - Math.max(a.foot, b.foot) > PRESS
  );
}

/** A four-cornered shape and an upright rectangle: apart along one of the four directions of their sides, or not. */
function pressesInto(shape: readonly Spot[], w: WoodIn): boolean {
  const other = cornersOf(w);
  const sides: readonly Spot[] = [[1, 0], [0, 1], sideOf(shape[0]!, shape[1]!), sideOf(shape[1]!, shape[2]!)];
  return sides.every((s) => {
    const [p, q] = [shape, other].map((c) => c.map(([b, u]) => b * s[0] + u * s[1]));
    return Math.min(Math.max(...p!), Math.max(...q!)) - Math.max(Math.min(...p!), Math.min(...q!)) > PRESS;
  });
}

function sideOf(a: Spot, b: Spot): Spot {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[0] - a[0]) / long, (b[1] - a[1]) / long];
}
