import type { Drawer, Part, SetOut } from '../../src/setting-out/index.ts';
import { boxOf, outerBoxOf } from './judge-set-out.ts';

// A judge of drawers: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;
type Role = keyof Drawer['parts'];

/** Everything that is wrong with the drawers of a set-out piece. */
export function drawerFaults(setOut: SetOut): string[] {
  return [
    ...stripFaults(setOut),
    ...setOut.drawers.flatMap((d) =>
      [
        ...boxFaults(setOut, d),
        ...frontFaults(setOut, d),
        ...runnerFaults(setOut, d),
        ...wayOut(setOut, d),
      ].map((what) => `${d.name}: ${what}`),
    ),
  ];
}

/** Fronts of one strip are of one lot, alike across the way they follow one another, and stand in the order of their marks. */
function stripFaults(setOut: SetOut): string[] {
  const inStrip = setOut.parts.filter((p) => p.strip !== undefined);
  return inStrip.flatMap((p) => {
    const number = (of: Part) => Number(of.mark.slice(1));
    const mates = inStrip.filter((m) => m.strip!.id === p.strip!.id);
    const along = p.strip!.follow === 'width' ? 2 : 0;
    const own = boxOf(setOut, p);
    const faults = mates.length < 2 ? ['is alone in its strip'] : [];
    for (const m of mates) {
      const box = boxOf(setOut, m);
      const across = [own, box].map((b) => b.max[2 - along]! - b.min[2 - along]!);
      if (m.lot !== p.lot || across[0] !== across[1]) faults.push(`differs from ${m.mark} in its strip`);
      if (number(m) > number(p) && box.min[along]! < own.max[along]!) faults.push(`stands beyond ${m.mark}`);
    }
    return faults.map((what) => `${p.mark}: ${what}`);
  });
}

function partOf(setOut: SetOut, id: string): Part {
  return setOut.parts.find((p) => p.id === id)!;
}

function boxes(setOut: SetOut, d: Drawer) {
  const of = (role: Role) => boxOf(setOut, partOf(setOut, d.parts[role]));
  return {
    left: of('left'),
    right: of('right'),
    front: of('front'),
    back: of('back'),
    bottom: of('bottom'),
    face: outerBoxOf(setOut, partOf(setOut, d.parts.face)),
  };
}

/** Runners have the room they need on both hands, the ends reach both sides, the bottom reaches all round. */
function boxFaults(setOut: SetOut, d: Drawer): string[] {
  const t = (x: Drawer['travel']) => setOut.ledger.ticks(x);
  const { left, right, front, back, bottom } = boxes(setOut, d);
  const [a, b] = d.posts.map((id) => boxOf(setOut, partOf(setOut, id)));
  const faults: string[] = [];
  const want = (what: string, is: number, asked: number) => {
    if (is !== asked) faults.push(`${what} is ${is}, not ${asked}`);
  };
  want('room on the left', left.min[0] - a!.max[0], t(d.beside));
  want('room on the right', b!.min[0] - right.max[0], t(d.beside));
  want('length of the box', left.max[1] - left.min[1], t(d.length));
  for (const end of [front, back]) {
    if (end.min[0] > left.max[0] || end.max[0] < right.min[0]) faults.push('an end doesn’t reach its sides');
    if (end.min[0] < left.min[0] || end.max[0] > right.max[0]) faults.push('an end comes out of a side');
  }
  if (bottom.min[0] > left.max[0] || bottom.max[0] < right.min[0])
    faults.push('the bottom doesn’t reach its sides');
  if (bottom.min[1] > front.max[1] || bottom.max[1] < back.min[1])
    faults.push('the bottom doesn’t reach its ends');
  if (bottom.min[0] < left.min[0] || bottom.max[0] > right.max[0])
    faults.push('the bottom comes out of a side');
  return faults;
}

function frontFaults(setOut: SetOut, d: Drawer): string[] {
  const { face, front, left } = boxes(setOut, d);
  const gap = setOut.ledger.ticks(d.gap);
  const [a, b] = d.posts.map((id) => boxOf(setOut, partOf(setOut, id)));
  const faults: string[] = [];
  if (face.max[1] !== front.min[1]) faults.push('its front doesn’t lie on the box');
  // One on a centre runner fills its opening: of that a front leaves its gaps.
  const lap = d.centre ? setOut.ledger.ticks(d.gap) : -1;
  if (face.min[2] > left.min[2] + lap || face.max[2] < left.max[2] - lap)
    faults.push('its front doesn’t cover the box');
  if (d.hang === 'inset') {
    if (face.min[0] - a!.max[0] !== gap || b!.min[0] - face.max[0] !== gap)
      faults.push('gaps beside its front');
  } else if (face.min[0] >= a!.max[0] || face.max[0] <= b!.min[0]) faults.push('its front leaves a slit');
  return faults;
}

/** Two pilots or more in each upright and each side, on one level, with wood behind their screws. */
function runnerFaults(setOut: SetOut, d: Drawer): string[] {
  const t = (x: Drawer['travel']) => setOut.ledger.ticks(x);
  const faults: string[] = [];
  const { runner } = d;
  if (!runner) return woodenFaults(setOut, d);
  const level = t(runner.height);
  const long = t(runner.screwLength);
  const rows = [
    [d.posts[0], runner.caseScrews],
    [d.posts[1], runner.caseScrews],
    [d.parts.left, runner.drawerScrews],
    [d.parts.right, runner.drawerScrews],
  ] as const;
  for (const [id, screws] of rows) {
    const part = partOf(setOut, id);
    const box = boxOf(setOut, part);
    const { left } = boxes(setOut, d);
    const at = part.features.flatMap((f) => {
      if (f.kind !== 'hole' || f.use !== 'pilot' || f.purpose !== `runner of the ${d.name}`) return [];
      const own = [t(f.at[0]), t(f.at[1])];
      const place = (['length', 'width'] as const).map((run, i) => {
        const axis = 'xyz'.indexOf(part.place[run][1]!);
        return [
          axis,
          part.place[run].startsWith('+') ? box.min[axis]! + own[i]! : box.max[axis]! - own[i]!,
        ] as const;
      });
      return [{ y: place.find(([k]) => k === 1)?.[1], z: place.find(([k]) => k === 2)?.[1] }];
    });
    for (const s of screws)
      if (!at.some((p) => p.z === level && p.y === left.min[1] + t(s)))
        faults.push(`no pilot in ${id} ${t(s)} back`);
    if (box.max[0] - box.min[0] - long < 3 * MM) faults.push(`a runner’s screw comes through ${id}`);
  }
  return faults;
}

/**
 * Each strip lies on its upright and in a groove of its side that is wider and deeper than it by little, and behind the
 * groove’s end; a third of it still stands in the side when the drawer is out; nothing else is let into the wood between.
 */
function woodenFaults(setOut: SetOut, d: Drawer): string[] {
  const t = (x: Drawer['travel']) => setOut.ledger.ticks(x);
  const faults: string[] = [];
  if (d.centre) return centreFaults(setOut, d, d.centre);
  if (!d.wooden) return ['nothing carries it'];
  for (const hand of ['left', 'right'] as const) {
    const side = partOf(setOut, d.parts[hand]);
    const [box, strip] = [boxOf(setOut, side), boxOf(setOut, partOf(setOut, d.wooden[hand]))];
    const post = boxOf(setOut, partOf(setOut, d.posts[hand === 'left' ? 0 : 1]));
    const stands = hand === 'left' ? strip.min[0]! - post.max[0]! : post.min[0]! - strip.max[0]!;
    if (stands !== 0) faults.push(`its ${hand} runner doesn’t lie on the upright`);
    const inside = hand === 'left' ? strip.max[0]! - box.min[0]! : box.max[0]! - strip.min[0]!;
    const groove = side.features.find((f) => f.kind === 'groove' && f.face === 'show');
    if (groove?.kind !== 'groove') {
      faults.push(`no groove in its ${hand} side`);
      continue;
    }
    const low = box.min[2]! + t(groove.inset);
    const room = [strip.min[2]! - low, low + t(groove.width) - strip.max[2]!, t(groove.depth) - inside];
    if (room.some((r) => r < 0.2 * MM || r > 1.2 * MM))
      faults.push(`its ${hand} runner has no fit in its groove`);
    const length = t(groove.to) - t(groove.from);
    const end = box.max[1]! - length;
    if (end - box.min[1]! !== 40 * MM) faults.push(`its ${hand} groove stops elsewhere`);
    if (strip.min[1]! <= end || strip.max[1]! > box.max[1]!)
      faults.push(`its ${hand} runner is longer than its groove`);
    if (3 * (box.max[1]! - t(d.travel) - strip.min[1]!) < strip.max[1]! - strip.min[1]! - 3)
      faults.push('drawn out, it hangs by less than a third');
    for (const f of side.features) {
      if ((f.kind !== 'groove' && f.kind !== 'rabbet') || f === groove) continue;
      const along = f.edge === 'near' || f.edge === 'far';
      const apart = along
        ? f.kind === 'groove' && t(f.inset) + t(f.width) <= t(groove.inset)
        : // At the front end, before the groove begins.
          f.kind === 'rabbet' && f.edge === (t(groove.from) > 0 ? 'start' : 'end') && t(f.width) <= 40 * MM;
      if (!apart && t(f.depth) + t(groove.depth) + 2 * MM > t(side.thickness))
        faults.push(`its ${hand} groove meets what is let into the other face`);
    }
  }
  return faults;
}

/** Both sides stand on what is below; a runner lies there under the middle, a guide hangs beside it on either hand. */
function centreFaults(
  setOut: SetOut,
  d: Drawer,
  { runner, guides }: NonNullable<Drawer['centre']>,
): string[] {
  const faults: string[] = [];
  const of = (id: string) => boxOf(setOut, partOf(setOut, id));
  const { left, right, front, bottom } = boxes(setOut, d);
  const [floor, rail, a, b] = [of(d.below), of(runner), of(guides[0]), of(guides[1])];
  const level = floor.max[2]!;
  if (left.min[2] !== level || right.min[2] !== level) faults.push('it doesn’t stand on what is below');
  if (rail.min[2] !== level) faults.push('its runner doesn’t lie on what is below');
  if (rail.min[1]! <= front.max[1]!) faults.push('its runner stands in its front');
  for (const g of [a, b]) {
    if (g.max[2] !== bottom.min[2]) faults.push('a guide doesn’t hang under the bottom');
    if (g.min[2]! <= level || rail.max[2]! - g.min[2]! < 2 * MM)
      faults.push('a guide drags, or doesn’t reach');
  }
  const [left2, right2] = [rail.min[0]! - a.max[0]!, b.min[0]! - rail.max[0]!];
  if (left2 < 0 || right2 < 0 || left2 + right2 > 2 * MM)
    faults.push(`its runner has ${left2} and ${right2} of play`);
  const middle = (rail.min[0]! + rail.max[0]!) / 2 - (left.min[0]! + right.max[0]!) / 2;
  if (Math.abs(middle) > 1.5 * MM) faults.push('its runner is not under its middle');
  const above = setOut.parts
    .map((p) => boxOf(setOut, p))
    .filter(
      (o) =>
        o.min[2]! >= left.max[2]! &&
        o.min[0]! < left.max[0]! &&
        o.max[0]! > left.min[0]! &&
        o.min[1]! < left.max[1]! &&
        o.max[1]! > left.min[1]!,
    );
  if (above.length > 0 && Math.min(...above.map((o) => o.min[2]!)) - left.max[2]! > 3 * MM)
    faults.push('nothing above keeps it from tipping');
  return faults;
}

/** Straight forward the drawer meets nothing but what it carries. */
function wayOut(setOut: SetOut, d: Drawer): string[] {
  const handles = setOut.joints.filter((j) => j.duty === 'handle' && j.part === d.parts.face);
  const edging = setOut.joints.filter((j) => j.duty === 'edging' && j.mate === d.parts.face);
  const isDoor = (id: string) => partOf(setOut, id).mark.startsWith('K');
  const onDoors = new Set([
    ...setOut.joints.filter((j) => j.duty === 'handle' && isDoor(j.part)).map((j) => j.mate),
    ...setOut.joints.filter((j) => j.duty === 'edging' && isDoor(j.mate)).map((j) => j.part),
  ]);
  const own = [
    ...Object.values(d.parts),
    ...handles.map((j) => j.mate),
    ...edging.map((j) => j.part),
    ...(d.wooden ? [d.wooden.left, d.wooden.right] : []),
    ...(d.centre ? [d.centre.runner, ...d.centre.guides] : []),
  ];
  const travel = setOut.ledger.ticks(d.travel);
  return Object.values(d.parts).flatMap((id) => {
    const b = boxOf(setOut, partOf(setOut, id));
    const swept = [b.min[0]!, b.min[1]! - travel, b.min[2]!, b.max[0]!, b.min[1]!, b.max[2]!];
    return setOut.parts.flatMap((p) => {
      // Doors are opened first, with what is on them.
      if (own.includes(p.id) || p.mark.startsWith('K') || onDoors.has(p.id)) return [];
      const o = boxOf(setOut, p);
      const meets = [0, 1, 2].every((k) => o.min[k]! < swept[k + 3]! && swept[k]! < o.max[k]!);
      return meets ? [`${p.id} is in its way`] : [];
    });
  });
}
