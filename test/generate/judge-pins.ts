import type { Part, PinnedShelf, SetOut } from '../../src/setting-out/index.ts';
import { boxOf } from './judge-set-out.ts';

// A judge of loose shelves: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;

interface PinHole {
  readonly part: string;
  readonly y: number;
  readonly z: number;
  /** The stretch along x that is bored. */
  readonly x: readonly [number, number];
  readonly radius: number;
  readonly looks: number;
  readonly mouth: number;
}

/** Everything that is wrong with the loose shelves of a set-out piece and the holes of their pins. */
export function pinFaults(setOut: SetOut): string[] {
  const holes = setOut.parts.flatMap((p) => holesOf(setOut, p));
  return [...setOut.pinned.flatMap((s) => shelfFaults(setOut, s, holes)), ...holesThatMeet(holes)];
}

function holesOf(setOut: SetOut, part: Part): PinHole[] {
  const t = (x: Part['length']) => setOut.ledger.ticks(x);
  const box = boxOf(setOut, part);
  return part.features.flatMap((f) => {
    if (f.kind !== 'hole' || f.use !== 'pin') return [];
    const show = part.place.thickness === '+x' ? 1 : -1;
    const looks = f.side === 'show' ? show : -show;
    const mouth = looks > 0 ? box.max[0] : box.min[0];
    const end = mouth - looks * t(f.depth!);
    const z = part.place.length === '+z' ? box.min[2] + t(f.at[0]) : box.max[2] - t(f.at[0]);
    const y = part.place.width === '+y' ? box.min[1] + t(f.at[1]) : box.max[1] - t(f.at[1]);
    return [
      {
        part: part.id,
        y,
        z,
        x: [Math.min(mouth, end), Math.max(mouth, end)],
        radius: t(f.diameter) / 2,
        looks,
        mouth,
      },
    ];
  });
}

function shelfFaults(setOut: SetOut, shelf: PinnedShelf, holes: readonly PinHole[]): string[] {
  const t = (x: PinnedShelf['above']) => setOut.ledger.ticks(x);
  const faults: string[] = [];
  const part = setOut.parts.find((p) => p.id === shelf.part)!;
  const box = boxOf(setOut, part);
  const clearance = t(shelf.clearance);
  shelf.posts.forEach((id, i) => {
    const post = boxOf(setOut, setOut.parts.find((p) => p.id === id)!);
    const gap = i === 0 ? box.min[0] - post.max[0] : post.min[0] - box.max[0];
    if (gap !== clearance) faults.push(`${shelf.part}: ${gap} from ${id}`);
    const under = holes.filter(
      (h) =>
        h.part === id &&
        h.looks === (i === 0 ? 1 : -1) &&
        h.z + t(shelf.above) === box.min[2] &&
        h.y - h.radius >= box.min[1] &&
        h.y + h.radius <= box.max[1],
    );
    const middle = (box.min[1] + box.max[1]) / 2;
    if (under.length !== 2 || !under.some((h) => h.y < middle) || !under.some((h) => h.y > middle))
      faults.push(`${shelf.part}: lies on ${under.length} pins of ${id}`);
    if (under.some((h) => post.max[0] - post.min[0] - (h.x[1] - h.x[0]) < 2 * MM))
      faults.push(`${shelf.part}: a pin comes through ${id}`);
  });
  return faults;
}

/** Holes of pins keep 2 mm of wood between them, from one side of an upright as from the other. */
function holesThatMeet(holes: readonly PinHole[]): string[] {
  const faults: string[] = [];
  holes.forEach((a, i) => {
    for (const b of holes.slice(i + 1)) {
      if (a.part !== b.part) continue;
      const beside = Math.hypot(a.y - b.y, a.z - b.z) - a.radius - b.radius;
      const along = Math.max(a.x[0], b.x[0]) - Math.min(a.x[1], b.x[1]);
      if (Math.hypot(Math.max(0, beside), Math.max(0, along)) < 2 * MM)
        faults.push(`two holes for pins meet in ${a.part}`);
    }
  });
  return faults;
}
