import type { SetOut } from './set-out.ts';

/** How many of each screw the piece takes, those of hinges included, in the order of first use. */
export function screwsUsed(
  setOut: Pick<SetOut, 'fasteners' | 'doors' | 'drawers' | 'lids' | 'pulls'>,
): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  const add = (id: string, n: number) => used.set(id, (used.get(id) ?? 0) + n);
  for (const f of setOut.fasteners) add(f.screw, 1);
  for (const d of [...setOut.doors, ...setOut.lids]) add(d.screw, d.screwsPerHinge * d.hinges.length);
  for (const p of setOut.pulls) add(p.screw, p.count);
  for (const { runner: r } of setOut.drawers)
    if (r) add(r.screw, 2 * (r.caseScrews.length + r.drawerScrews.length));
  return used;
}

/** How many pairs of each runner the piece takes, in the order of its drawers. */
export function runnersUsed(setOut: Pick<SetOut, 'drawers'>): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { runner } of setOut.drawers) if (runner) used.set(runner.id, (used.get(runner.id) ?? 0) + 1);
  return used;
}

/** How many of each shelf pin the piece takes, in the order of its shelves. */
export function pinsUsed(setOut: Pick<SetOut, 'pinned'>): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const s of setOut.pinned) used.set(s.pin, (used.get(s.pin) ?? 0) + s.pins);
  return used;
}

/** The doors of a piece, hinged and sliding, by the id of their parts. */
export function doorsOf(setOut: Pick<SetOut, 'doors' | 'sliding'>): readonly string[] {
  return [...setOut.doors, ...setOut.sliding.flatMap((s) => s.leaves)].map((d) => d.part);
}

/** How many of each fixing, levellers among them, the piece takes, in the order of first use. */
export function fixingsUsed(
  setOut: Pick<SetOut, 'fasteners' | 'pegs' | 'levellers'>,
): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  const add = (id: string, n = 1) => used.set(id, (used.get(id) ?? 0) + n);
  for (const { plug, washer } of setOut.fasteners)
    for (const id of [plug, washer]) if (id !== undefined) add(id);
  for (const p of setOut.pegs) if (p.kind !== 'spline') add(p.fixing);
  for (const { fixing, at } of setOut.levellers) add(fixing, at.length);
  return used;
}

/** How many of each hinge the piece takes, in the order of its doors. */
export function hingesUsed(setOut: Pick<SetOut, 'doors' | 'lids'>): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const d of [...setOut.doors, ...setOut.lids])
    used.set(d.hinge, (used.get(d.hinge) ?? 0) + d.hinges.length);
  return used;
}

/** How many of each stay the piece takes, its lids’ first. */
export function staysUsed(setOut: Pick<SetOut, 'lids' | 'doors'>): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  const held = [...setOut.lids, ...setOut.doors.flatMap((d) => d.held ?? [])];
  for (const { stays } of held) if (stays) used.set(stays.id, (used.get(stays.id) ?? 0) + stays.count);
  return used;
}

/** How many of each pull the piece takes, in the order of the document. */
export function pullsUsed(setOut: Pick<SetOut, 'pulls'>): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { pull } of setOut.pulls) used.set(pull, (used.get(pull) ?? 0) + 1);
  return used;
}
