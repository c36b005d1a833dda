import type { DoorLeaf, Part, SetOut } from '../../src/setting-out/index.ts';
import { boxOf, outerBoxOf } from './judge-set-out.ts';

// A judge of doors: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;
type Vec = readonly [number, number, number];
interface Box {
  readonly min: Vec;
  readonly max: Vec;
}

/** Hinges by height, common practice: two up to 900 mm, three up to 1600, four up to 2000. */
function leastHinges(mm: number): number {
  return mm <= 900 ? 2 : mm <= 1600 ? 3 : mm <= 2000 ? 4 : 5;
}

/** Everything that is wrong with the doors of a set-out piece. */
export function doorFaults(setOut: SetOut): string[] {
  return setOut.doors.flatMap((leaf) => {
    const part = partOf(setOut, leaf.part);
    return [
      ...inItsPlace(setOut, leaf, part),
      ...nothingBehind(setOut, leaf, part),
      ...hinges(setOut, leaf, part),
    ].map((what) => `${leaf.part}: ${what}`);
  });
}

function partOf(setOut: SetOut, id: string): Part {
  return setOut.parts.find((p) => p.id === id)!;
}

/** Where the case's front is beside a door: that of its post, or of the strip on it. */
function frontBeside(setOut: SetOut, leaf: DoorLeaf): number {
  const upright = leaf.beside ?? leaf.post;
  const strip = setOut.joints.find((j) => j.duty === 'edging' && j.mate === upright);
  return boxOf(setOut, partOf(setOut, strip?.part ?? upright)).min[1];
}

function inItsPlace(setOut: SetOut, leaf: DoorLeaf, part: Part): string[] {
  const door = outerBoxOf(setOut, part);
  const post = boxOf(setOut, partOf(setOut, leaf.post));
  const below = boxOf(setOut, partOf(setOut, leaf.below));
  const gap = setOut.ledger.ticks(leaf.gap);
  const front = frontBeside(setOut, leaf);
  const faults: string[] = [];
  const want = (what: string, is: number, asked: number) => {
    if (Math.abs(is - asked) > 1) faults.push(`${what} is ${is}, not ${asked}`);
  };
  if (leaf.hang === 'inset') {
    want('front', door.min[1], front);
    want('gap below', door.min[2] - below.max[2], gap);
    const beside = leaf.beside === undefined ? undefined : boxOf(setOut, partOf(setOut, leaf.beside));
    if (beside) want('gap at the left', door.min[0] - beside.max[0], gap);
    want(
      'gap at the hinges',
      {
        left: door.min[0] - post.max[0],
        right: post.min[0] - door.max[0],
        above: post.min[2] - door.max[2],
        below: door.min[2] - post.max[2],
      }[leaf.hung],
      gap,
    );
    const pair = setOut.doors.filter((d) => d.record === leaf.record).length;
    const all = setOut.ledger.ticks(leaf.opening.width) - (pair + 1) * gap;
    if (Math.abs((door.max[0] - door.min[0]) * pair - all) > pair)
      faults.push('its width and the gaps are not the opening');
    want(
      'its height and the gaps',
      door.max[2] - door.min[2] + 2 * gap,
      setOut.ledger.ticks(leaf.opening.height),
    );
  } else {
    want('what it stands off', front - door.max[1], 1.5 * MM);
    const lap = leaf.hung === 'left' ? post.max[0] - door.min[0] : door.max[0] - post.min[0];
    if (lap <= 0 || lap > post.max[0] - post.min[0]) faults.push(`it laps its post by ${lap}`);
    if (door.min[2] >= below.max[2]) faults.push('it leaves a slit below');
  }
  return faults;
}

/** Nothing but its neighbours at the front within 3 mm of an inset door's back. */
function nothingBehind(setOut: SetOut, leaf: DoorLeaf, part: Part): string[] {
  if (leaf.hang !== 'inset') return [];
  const door = outerBoxOf(setOut, part);
  const own = new Set([
    ...setOut.joints.filter((j) => j.duty === 'handle').map((j) => j.mate),
    ...setOut.joints.filter((j) => j.duty === 'edging' && j.mate === part.id).map((j) => j.part),
  ]);
  return setOut.parts.flatMap((p) => {
    if (own.has(p.id)) return [];
    const b: Box = boxOf(setOut, p);
    const before = ([0, 2] as const).every((k) => b.min[k] < door.max[k] && door.min[k] < b.max[k]);
    return p.id !== part.id && before && b.min[1] < door.max[1] + 3 * MM ? [`${p.id} stands in its way`] : [];
  });
}

function hinges(setOut: SetOut, leaf: DoorLeaf, part: Part): string[] {
  const t = (x: (typeof leaf.hinges)[0]) => setOut.ledger.ticks(x);
  const faults: string[] = [];
  // Hinges share a flap's mass along its width.
  const high = t(leaf.held ? part.width : part.length);
  if (leaf.hinges.length < leastHinges(high / MM))
    faults.push(`${leaf.hinges.length} hinges at ${high / MM} mm`);
  const at = leaf.hinges.map(t);
  if (at.some((h, i) => h < 20 * MM || h > high - 20 * MM || (i > 0 && h - at[i - 1]! < 60 * MM)))
    faults.push(`hinges at ${at}`);
  if (leaf.held) {
    const whole = outerBoxOf(setOut, part);
    const [wide, thick, tall] = [0, 1, 2].map((k) => whole.max[k]! - whole.min[k]!) as [
      number,
      number,
      number,
    ];
    const kg = (tall * wide * thick * 680) / MM ** 3 / 1e9;
    const needs = (kg * 9.81 * tall) / MM / 2000;
    if (Math.abs(needs - leaf.held.momentNm) > 0.02 * needs + 0.01)
      faults.push(`a moment of ${leaf.held.momentNm}`);
    if (leaf.held.stays && leaf.held.stays.holdNm < leaf.held.momentNm) faults.push('its stays are too weak');
  }
  if (!leaf.cup) return faults;
  const door = boxOf(setOut, part);
  const whole = outerBoxOf(setOut, part);
  const post = partOf(setOut, leaf.post);
  const face = boxOf(setOut, post);
  const cups = part.features.filter((f) => f.kind === 'hole' && f.use === 'cup');
  if (cups.length !== at.length) faults.push(`${cups.length} cups`);
  for (const h of at) {
    const cup = cups.find((f) => f.kind === 'hole' && t(f.at[0]) === h);
    if (cup?.kind !== 'hole' || cup.side !== 'under') {
      faults.push(`no cup at ${h}`);
      continue;
    }
    // The door's near edge looks to the right: the rim stays 4 mm from the edge that the post is at.
    const x = door.max[0] - t(cup.at[1]);
    const fromEdge = leaf.hung === 'left' ? x - whole.min[0] : whole.max[0] - x;
    if (fromEdge !== 4 * MM + t(cup.diameter) / 2) faults.push(`a cup ${fromEdge} from the edge`);
    if (t(part.thickness) - t(cup.depth!) < 2 * MM) faults.push('a cup comes through');
    for (const off of [-16, 16]) {
      const z = door.min[2] + h + off * MM;
      const plate = post.features.some((f) => {
        if (f.kind !== 'hole' || f.use !== 'pilot') return false;
        const along = post.place.length === '+z' ? face.min[2] + t(f.at[0]) : face.max[2] - t(f.at[0]);
        const back = post.place.width === '+y' ? face.min[1] + t(f.at[1]) : face.max[1] - t(f.at[1]);
        const behind = back - frontBeside(setOut, leaf) - (leaf.hang === 'inset' ? t(part.thickness) : 0);
        const looks = f.side === 'show' ? post.place.thickness : opposite(post.place.thickness);
        return along === z && behind === 37 * MM && looks === (leaf.hung === 'left' ? '+x' : '-x');
      });
      if (!plate) faults.push(`no hole for a plate at ${z}`);
    }
  }
  return faults;
}

function opposite(d: string): string {
  return `${d[0] === '+' ? '-' : '+'}${d[1]}`;
}
