import type { Fastener, Feature, Hole, Part, SetOut } from '../../src/setting-out/index.ts';
import { boxOf, isCutAway } from './judge-set-out.ts';

// A judge of holes that stay open: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;
type Vec = readonly [number, number, number];

/** Everything that is wrong with the open holes of a set-out piece. */
export function holeFaults(setOut: SetOut): string[] {
  return setOut.parts.flatMap((part) =>
    part.features.flatMap((f) => [
      ...openings(setOut, f).flatMap((o) => faultsOf(setOut, part, o)),
      ...slotOfScrew(setOut, part, f),
    ]),
  );
}

/** A slot for a screw lies in the wood, and a washered screw stands in its very middle. */
function slotOfScrew(setOut: SetOut, part: Part, f: Feature): string[] {
  if (f.kind !== 'slot' || f.use !== 'screw') return [];
  const t = (x: Hole['diameter']) => setOut.ledger.ticks(x);
  const faults: string[] = [];
  const [along, across] = [t(f.at[0]), t(f.at[1])];
  const [halfLong, halfWide] = [t(f.length) / 2, t(f.width) / 2];
  const [reach, beside] = f.run === 'length' ? [halfLong, halfWide] : [halfWide, halfLong];
  const room = Math.min(
    along - reach,
    t(part.length) - along - reach,
    across - beside,
    t(part.width) - across - beside,
  );
  if (room < 3 * MM) faults.push(`${f.id}: ${room / MM} mm from an edge`);
  const middle: [number, number, number] = [0, 0, 0];
  const box = boxOf(setOut, part);
  for (const [run, at] of [
    [part.place.length, along],
    [part.place.width, across],
  ] as const) {
    const k = 'xyz'.indexOf(run[1]!);
    middle[k] = run.startsWith('+') ? box.min[k]! + at : box.max[k]! - at;
  }
  const stands = setOut.fasteners.some(
    (s) =>
      s.washer !== undefined &&
      s.through[0] === part.id &&
      t(s.head[0]) === middle[0] &&
      t(s.head[1]) === middle[1] &&
      t(f.length) > t(s.diameter),
  );
  if (!stands) faults.push(`${f.id}: no screw in its middle`);
  return faults;
}

/** A round opening, in ticks of its part: a hole (which may end in the wood), or one of the three that a slot is judged by. */
interface Opening {
  readonly id: string;
  readonly at: readonly [number, number];
  readonly radius: number;
  readonly blind?: { readonly side: 'show' | 'under'; readonly depth: number };
}

function openings(setOut: SetOut, f: Feature): readonly Opening[] {
  const t = (x: Hole['diameter']) => setOut.ledger.ticks(x);
  if (f.kind === 'hole')
    return f.use === 'cable' || f.use === 'vent' || f.use === 'row' || f.use === 'leveller'
      ? [
          {
            id: f.id,
            at: [t(f.at[0]), t(f.at[1])],
            radius: t(f.diameter) / 2,
            ...(f.depth === undefined
              ? {}
              : { blind: { side: f.side as 'show' | 'under', depth: t(f.depth) } }),
          },
        ]
      : [];
  if (f.kind !== 'slot' || f.use !== 'vent') return [];
  const radius = t(f.width) / 2;
  const half = t(f.length) / 2 - radius;
  const out = f.run === 'length' ? [1, 0] : [0, 1];
  return [-half, 0, half].map((off) => ({
    id: f.id,
    at: [t(f.at[0]) + out[0]! * off, t(f.at[1]) + out[1]! * off],
    radius,
  }));
}

function faultsOf(setOut: SetOut, part: Part, hole: Opening): string[] {
  const t = (x: Hole['diameter']) => setOut.ledger.ticks(x);
  const faults: string[] = [];
  const { radius } = hole;
  const [along, across] = hole.at;
  const room = Math.min(along, t(part.length) - along, across, t(part.width) - across) - radius;
  if (room < 10 * MM) faults.push(`${hole.id}: ${room / MM} mm from an edge`);
  const box = bored(boxOf(setOut, part), part, hole);
  if (hole.blind && t(part.thickness) - hole.blind.depth < 3 * MM) faults.push(`${hole.id}: no floor`);
  const middle = [0, 1, 2].map((k) => (box.min[k]! + box.max[k]!) / 2) as [number, number, number];
  for (const [run, at] of [
    [part.place.length, along],
    [part.place.width, across],
  ] as const) {
    const k = 'xyz'.indexOf(run[1]!);
    middle[k] = run.startsWith('+') ? box.min[k]! + at : box.max[k]! - at;
  }
  const through = 'xyz'.indexOf(part.place.thickness[1]!);
  for (const other of setOut.parts) {
    if (other === part) continue;
    const b = boxOf(setOut, other);
    if (b.max[through]! < box.min[through]! || b.min[through]! > box.max[through]!) continue;
    // A blind hole has no mouth at its floor: what begins there, as the box of a tongued door does, closes nothing.
    const whole = boxOf(setOut, part);
    const floorAt =
      hole.blind && (box.max[through]! < whole.max[through]! ? box.max[through]! : box.min[through]!);
    if (floorAt !== undefined && (b.min[through]! === floorAt || b.max[through]! === floorAt)) continue;
    const off = [0, 1, 2].filter((k) => k !== through).map((k) => outside(middle[k]!, b.min[k]!, b.max[k]!));
    // Beside a tongue the shoulder is cut away, and stands on the face.
    const shared = [0, 1, 2].map((k) =>
      k === through
        ? [Math.max(box.min[k]!, b.min[k]!), Math.min(box.max[k]!, b.max[k]!)]
        : [Math.max(middle[k]! - radius, b.min[k]!), Math.min(middle[k]! + radius, b.max[k]!)],
    );
    const corner = (i: 0 | 1) => shared.map((s) => s[i]!) as unknown as [number, number, number];
    if (
      shared.every(([low, high]) => low! < high!) &&
      isCutAway(setOut, [other], { min: corner(0), max: corner(1) })
    )
      continue;
    if (Math.hypot(off[0]!, off[1]!) < radius) faults.push(`${hole.id}: comes out against ${other.id}`);
  }
  for (const screw of setOut.fasteners)
    if (screw.through.includes(part.id) && cuts(setOut, screw, middle, through, radius, box))
      faults.push(`${hole.id}: cuts ${screw.id}`);
  return faults;
}

/** A part's box, cut down to the stretch of its thickness that a hole takes. */
function bored(box: { min: Vec; max: Vec }, part: Part, { blind }: Opening): { min: Vec; max: Vec } {
  if (!blind) return box;
  const through = 'xyz'.indexOf(part.place.thickness[1]!);
  const min = [...box.min] as [number, number, number];
  const max = [...box.max] as [number, number, number];
  const high = part.place.thickness.startsWith('+') === (blind.side === 'show');
  if (high) min[through] = max[through]! - blind.depth;
  else max[through] = min[through]! + blind.depth;
  return { min, max };
}

function outside(at: number, low: number, high: number): number {
  return Math.max(low - at, 0, at - high);
}

/** True when a screw's axis, stepped along, comes inside the hole. */
function cuts(
  setOut: SetOut,
  screw: Fastener,
  middle: Vec,
  through: number,
  radius: number,
  box: { min: Vec; max: Vec },
): boolean {
  const t = (x: Fastener['length']) => setOut.ledger.ticks(x);
  const head = screw.head.map(t);
  const way = [0, 0, 0];
  const lean = ((screw.lean?.degrees ?? 0) * Math.PI) / 180;
  const along = (d: string, by: number) => {
    way['xyz'.indexOf(d[1]!)]! += d.startsWith('+') ? by : -by;
  };
  along(screw.direction, Math.cos(lean));
  if (screw.lean) along(screw.lean.toward, Math.sin(lean));
  const thick = t(screw.diameter) / 2;
  for (let i = 0; i <= 60; i++) {
    const p = head.map((h, k) => h + (way[k]! * t(screw.length) * i) / 60);
    if (p[through]! < box.min[through]! || p[through]! > box.max[through]!) continue;
    const off = [0, 1, 2].filter((k) => k !== through).map((k) => p[k]! - middle[k]!);
    if (Math.hypot(off[0]!, off[1]!) < radius + thick) return true;
  }
  return false;
}
