import type { Traced } from '../../src/measure/index.ts';
import type { Fastener, Part, Peg, SetOut } from '../../src/setting-out/index.ts';
import { axisOfScrew, boxOf } from './judge-set-out.ts';

// A judge of dowels and biscuits: its own arithmetic, in ticks of 1/3200 mm.

const MM = 3200;
type Vec = readonly [number, number, number];

/** Everything that is wrong with the dowels and biscuits of a set-out piece. */
export function pegFaults(setOut: SetOut): string[] {
  return [
    ...setOut.pegs.flatMap((p) => (p.kind === 'spline' ? splineFaults(setOut, p) : faultsOf(setOut, p))),
    ...together(setOut),
    ...amongScrews(setOut),
  ];
}

function holes(setOut: SetOut, part: Part, peg: Peg): readonly { readonly deep: number; readonly at: Vec }[] {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const box = boxOf(setOut, part);
  return part.features.flatMap((f) => {
    const fits = peg.kind === 'dowel' ? f.kind === 'hole' && f.use === 'dowel' : f.kind === 'biscuit-slot';
    if (!fits || (f.kind !== 'hole' && f.kind !== 'biscuit-slot') || f.depth === undefined) return [];
    const out = { start: 0, end: 0, near: 1, far: 1, under: 2, show: 2 }[f.side];
    const local: number[] = [t(part.length), t(part.width), t(part.thickness)];
    const rest = [0, 1, 2].filter((k) => k !== out);
    local[rest[0]!] = t(f.at[0]);
    local[rest[1]!] = t(f.at[1]);
    if (f.side === 'start' || f.side === 'near' || f.side === 'under') local[out] = 0;
    if (f.kind === 'biscuit-slot' && f.slopeFrom) {
      // On the slope of a mitre: as far in from the tip as down from the inner face it is short of the thickness.
      const down = t(f.at[1]) / Math.SQRT2;
      const rest = t(part.thickness) - down;
      local[0] = f.side === 'start' ? rest : t(part.length) - rest;
      local[2] = f.slopeFrom === 'show' ? rest : down;
    }
    const at = [0, 0, 0];
    [part.place.length, part.place.width, part.place.thickness].forEach((run, k) => {
      const axis = 'xyz'.indexOf(run[1]!);
      at[axis] = run.startsWith('+') ? box.min[axis]! + local[k]! : box.max[axis]! - local[k]!;
    });
    return [{ deep: t(f.depth), at: at as unknown as Vec }];
  });
}

/** A spline against the grooves of its two parts, mouth on mouth, and what it leaves of them. */
function splineFaults(setOut: SetOut, peg: Peg & { kind: 'spline' }): string[] {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const strip = setOut.splines.find((s) => s.id === peg.strip);
  if (!strip) return [`${peg.id}: no strip`];
  const faults: string[] = [];
  let deep = 0;
  for (const id of peg.parts) {
    const part = setOut.parts.find((p) => p.id === id)!;
    const box = boxOf(setOut, part);
    const at = peg.at.map(t);
    const here = part.features.flatMap((f) => {
      if (f.kind !== 'spline-groove') return [];
      // As far in from the tip as its middle down the slope is short of the thickness.
      const down = (t(f.inset) + t(f.width) / 2) / Math.SQRT2;
      const local = [t(part.thickness) - down, 0, f.slopeFrom === 'show' ? t(part.thickness) - down : down];
      if (f.edge === 'end') local[0] = t(part.length) - local[0]!;
      const place = [part.place.length, part.place.width, part.place.thickness];
      const low = [0, 0, 0];
      place.forEach((run, k) => {
        const axis = 'xyz'.indexOf(run[1]!);
        low[axis] = run.startsWith('+') ? box.min[axis]! + local[k]! : box.max[axis]! - local[k]!;
      });
      const ends = [t(f.from), t(f.to)].map((y) =>
        part.place.width === '+y' ? box.min[1]! + y : box.max[1]! - y,
      );
      return [0, 2].every((k) => Math.abs(low[k]! - at[k]!) <= 3)
        ? [{ f, ends: ends.sort((a, b) => a - b) }]
        : [];
    });
    const [one] = here;
    if (!one || here.length > 1) {
      faults.push(`${peg.id}: ${here.length} grooves in ${id}`);
      continue;
    }
    deep += t(one.f.depth);
    const play = t(one.f.width) - t(strip.thickness);
    if (play < 0 || play > 0.3 * MM) faults.push(`${peg.id}: play of ${play / MM} mm in ${id}`);
    const [from, to] = [at[1]! - t(peg.wide) / 2, at[1]! + t(peg.wide) / 2];
    if (from < one.ends[0]! - 2 || to > one.ends[1]! + 2)
      faults.push(`${peg.id}: runs out of its groove in ${id}`);
    // Whatever runs along the panel there must not be in its way: its groove comes so far back from the tip.
    const reach = t(part.thickness) + (t(one.f.depth) - t(one.f.inset)) / Math.SQRT2;
    for (const g of part.features) {
      if ((g.kind !== 'rabbet' && g.kind !== 'groove') || (g.edge !== 'near' && g.edge !== 'far')) continue;
      if (one.f.edge === 'start' ? t(g.from) >= reach : t(g.to) <= t(part.length) - reach) continue;
      const inset = g.kind === 'groove' ? t(g.inset) : 0;
      const near = g.edge === 'near' ? inset : t(part.width) - inset - t(g.width);
      const ys = [near, near + t(g.width)].map((y) =>
        part.place.width === '+y' ? box.min[1]! + y : box.max[1]! - y,
      );
      if (Math.min(...ys) < to && Math.max(...ys) > from) faults.push(`${peg.id}: in the way of ${g.id}`);
    }
  }
  const room = deep - t(peg.across);
  if (room <= 0 || room > 3 * MM)
    faults.push(`${peg.id}: ${room / MM} mm narrower than its grooves are deep`);
  if (t(strip.width) !== t(peg.across) || t(strip.length) !== t(peg.wide))
    faults.push(`${peg.id}: not its strip`);
  return faults;
}

function faultsOf(setOut: SetOut, peg: Peg): string[] {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const at = peg.at.map(t);
  const faults: string[] = [];
  const parts = peg.parts.map((id) => setOut.parts.find((p) => p.id === id)!) as [Part, Part];
  const found = parts.map((part) =>
    holes(setOut, part, peg).find((h) => h.at.every((x, k) => Math.abs(x - at[k]!) <= 2)),
  );
  if (found.some((h) => !h)) return [`${peg.id}: no hole in ${found[0] ? peg.parts[1] : peg.parts[0]}`];
  const deep = found.map((h) => h!.deep);
  const room = deep[0]! + deep[1]! - t(peg.across);
  if (room <= 0) faults.push(`${peg.id}: ${-room / MM} mm longer than its holes are deep`);
  if (room > 5 * MM) faults.push(`${peg.id}: lost in holes ${room / MM} mm too deep`);
  peg.holds.forEach((h, i) => {
    if (t(h) > deep[i]! || t(h) <= 0) faults.push(`${peg.id}: stands ${t(h) / MM} mm in ${peg.parts[i]}`);
  });
  if (t(peg.holds[0]) + t(peg.holds[1]) !== t(peg.across))
    faults.push(`${peg.id}: longer or shorter than it is`);
  // From memory: 4 mm behind a dowel, 3 mm behind a biscuit.
  if (t(peg.spare) < (peg.kind === 'dowel' ? 4 : 3) * MM)
    faults.push(`${peg.id}: only ${t(peg.spare) / MM} mm left behind it`);
  const thinner = Math.min(...parts.map((p) => t(p.thickness)));
  // Common practice: a dowel is a third to half as thick as the board.
  if (peg.kind === 'dowel' && (3 * t(peg.wide) < thinner || 2 * t(peg.wide) > thinner))
    faults.push(`${peg.id}: ${t(peg.wide) / MM} mm thick in ${thinner / MM} mm`);
  const axis = peg.direction === undefined ? -1 : 'xyz'.indexOf(peg.direction[1]!);
  for (const part of parts) {
    const box = boxOf(setOut, part);
    [0, 1, 2].forEach((k) => {
      const beside = k === axis || (peg.kind === 'biscuit' && k === 1) ? 0 : 2 * MM;
      if (at[k]! - beside < box.min[k]! || at[k]! + beside > box.max[k]!)
        faults.push(`${peg.id}: out of ${part.id}`);
    });
  }
  return faults;
}

/** Taken apart one by one: what comes off has pegs that point one way only. Whatever is left then can't be closed. */
function together(setOut: SetOut): string[] {
  // Mitred corners are drawn together all at once.
  let pegs = setOut.pegs.filter((p) => p.direction !== undefined);
  for (;;) {
    const ids = [...new Set(pegs.flatMap((p) => p.parts))];
    const off = ids.find(
      (id) =>
        new Set(
          pegs.flatMap((p) =>
            p.parts[0] === id
              ? [p.direction]
              : p.parts[1] === id
                ? [`${p.direction![0] === '+' ? '-' : '+'}${p.direction![1]}`]
                : [],
          ),
        ).size === 1,
    );
    if (off === undefined) return pegs.length === 0 ? [] : [`${ids.join(', ')} can’t be pushed together`];
    pegs = pegs.filter((p) => !p.parts.includes(off));
  }
}

/** Dowels that meet one another, or a screw, in a part that both stand in. */
function amongScrews(setOut: SetOut): string[] {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const dowels = setOut.pegs
    .filter((p) => p.kind === 'dowel')
    .map((p) => {
      const k = 'xyz'.indexOf(p.direction![1]!);
      const sign = p.direction!.startsWith('+') ? 1 : -1;
      const [from, to]: [number[], number[]] = [p.at.map(t), p.at.map(t)];
      from[k]! -= sign * t(p.holds[0]);
      to[k]! += sign * t(p.holds[1]);
      return { id: p.id, parts: p.parts as readonly string[], from, to, radius: t(p.wide) / 2 };
    });
  const screws = setOut.fasteners.map((f: Fastener) => {
    const [from, to] = axisOfScrew(setOut, f);
    return { id: f.id, parts: f.through, from: [...from], to: [...to], radius: t(f.diameter) / 2 };
  });
  return dowels.flatMap((d, i) =>
    [...dowels.slice(i + 1), ...screws].flatMap((o) =>
      d.parts.some((p) => o.parts.includes(p)) && apart(d, o) < d.radius + o.radius
        ? [`${d.id} meets ${o.id}`]
        : [],
    ),
  );
}

interface Stick {
  readonly from: readonly number[];
  readonly to: readonly number[];
}

/** Least distance of two sticks, one of them looked at in many places. */
function apart(a: Stick, b: Stick): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 40; i++) {
    const p = a.from.map((x, k) => x + ((a.to[k]! - x) * i) / 40);
    const v = b.to.map((x, k) => x - b.from[k]!);
    const w = p.map((x, k) => x - b.from[k]!);
    const dot = v.reduce((sum, x, k) => sum + x * w[k]!, 0);
    const s = Math.min(1, Math.max(0, dot / v.reduce((sum, x) => sum + x * x, 0)));
    least = Math.min(least, Math.hypot(...w.map((x, k) => x - s * v[k]!)));
  }
  return least;
}
