import type { Drawer, Part, SetOut } from '../../src/setting-out/index.ts';
import { boxOf } from './judge-set-out.ts';

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
    face: of('face'),
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
  want('length of the box', left.max[1] - left.min[1], t(d.runner.length));
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
  if (face.min[2] >= left.min[2] || face.max[2] <= left.max[2])
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
  const level = t(d.runner.height);
  const long = t(d.runner.screwLength);
  const rows = [
    [d.posts[0], d.runner.caseScrews],
    [d.posts[1], d.runner.caseScrews],
    [d.parts.left, d.runner.drawerScrews],
    [d.parts.right, d.runner.drawerScrews],
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

/** Straight forward the drawer meets nothing but what it carries. */
function wayOut(setOut: SetOut, d: Drawer): string[] {
  const handles = setOut.joints.filter((j) => j.duty === 'handle' && j.part === d.parts.face);
  const own = [...Object.values(d.parts), ...handles.map((j) => j.mate)];
  const travel = setOut.ledger.ticks(d.travel);
  return own.flatMap((id) => {
    const b = boxOf(setOut, partOf(setOut, id));
    const swept = [b.min[0]!, b.min[1]! - travel, b.min[2]!, b.max[0]!, b.min[1]!, b.max[2]!];
    return setOut.parts.flatMap((p) => {
      // Doors are opened first.
      if (own.includes(p.id) || p.mark.startsWith('K')) return [];
      const o = boxOf(setOut, p);
      const meets = [0, 1, 2].every((k) => o.min[k]! < swept[k + 3]! && swept[k]! < o.max[k]!);
      return meets ? [`${p.id} is in its way`] : [];
    });
  });
}
