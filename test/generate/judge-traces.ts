import { type JobDocument, readPlace } from '../../src/job/index.ts';
import * as materials from '../../src/materials/index.ts';
import { type LeafKind, parseLength, recomputeAll, type Traced, tracesOf } from '../../src/measure/index.ts';
import { partsReport, type SetOut } from '../../src/setting-out/index.ts';

/** Every traced length of what was set out. */
export function everyLength(piece: SetOut): Traced[] {
  const { joints, fasteners, openings, surfaces, overall, dimensions } = piece;
  return [
    ...tracesOf(partsReport(piece)).map((t) => t.traced),
    ...piece.parts.flatMap((p) => p.place.origin),
    ...joints.flatMap((j) => [...j.contact.min, ...j.contact.max]),
    ...fasteners.flatMap((f) => [...f.head, f.length, f.diameter, f.holds, f.spare]),
    ...piece.pegs.flatMap((p) => [...p.at, p.across, p.wide, ...p.holds, p.spare]),
    ...openings.flatMap((o) => [...o.box.min, ...o.box.max, o.width, o.height, o.depth]),
    ...piece.fits.flatMap((f) => [
      f.gap,
      f.least,
      ...(f.most === undefined ? [] : [f.most]),
      ...f.loop.map((m) => m.length),
    ]),
    ...surfaces.flatMap((s) => [s.span, s.depth]),
    ...piece.drawers.flatMap((d) => [
      d.gap,
      d.beside,
      d.inside.width,
      d.inside.depth,
      d.travel,
      d.length,
      ...(d.runner ? [d.runner.line, d.runner.height, ...d.runner.caseScrews] : []),
      ...(d.centre ? [d.centre.play] : []),
      ...(d.wooden ? [d.wooden.up, d.wooden.width, d.wooden.depth] : []),
    ]),
    ...piece.pinned.flatMap((s) => [
      s.hole.diameter,
      s.hole.depth,
      s.above,
      s.height,
      s.clearance,
      s.opening,
    ]),
    ...piece.doors.flatMap((d) => [d.gap, ...d.hinges, d.opening.width, d.opening.height, d.screwLength]),
    ...piece.sliding.flatMap((s) => [s.lift, s.spare, s.engagement, s.gap, s.overlap, s.opens, s.play]),
    overall.width,
    overall.height,
    overall.depth,
    ...dimensions.values(),
  ];
}

/** Every length of every material table, by id. */
const ROWS = lengthsIn(materials);

function lengthsIn(x: unknown, found = new Map<string, number>()): typeof found {
  if (typeof x !== 'object' || x === null) return found;
  if ('id' in x && 'says' in x && 'value' in x) found.set(x.id as string, x.value as number);
  for (const inner of Object.values(x)) lengthsIn(inner, found);
  return found;
}

/** What a leaf says, read again from the document and the tables. */
function leafOf(job: JobDocument): (kind: LeafKind, id: string) => number {
  return (kind, id) => {
    if (kind === 'row') return ROWS.get(id) ?? Number.NaN;
    if (kind === 'measured') {
      const read = parseLength(job.work.measured?.[id] ?? '', job.shop.units);
      if (!read.ok) throw new Error(`${id} was not measured`);
      return read.value;
    }
    const [path, inside] = id.split('@') as [string, string?];
    const whole = readPlace(job, path);
    const typed = inside === undefined ? whole : String(whole).slice(Number(inside) - 1);
    // A length inside a formula ends where a sign or a bracket follows.
    const read = parseLength(
      inside === undefined ? String(typed) : /^[^-+*,()]*/.exec(String(typed))![0].replace(/\/ *$/, ''),
      job.shop.units,
    );
    if (typeof typed !== 'string' || !read.ok) throw new Error(`no length stands at ${id}`);
    return read.value;
  };
}

/** Lengths that come to another number when they are worked out again from what they rest on, or rest on nothing. */
export function traceFaults(job: JobDocument, piece: SetOut): string[] {
  const { ledger } = piece;
  const again = recomputeAll(ledger.data(), leafOf(job));
  return [...new Set(everyLength(piece))].flatMap((t) => {
    const { operation, operands, reason } = ledger.entry(t);
    const isLeaf = operation === 'document' || operation === 'measured' || operation === 'row';
    return (isLeaf || operands.length > 0) && again[t] === ledger.ticks(t)
      ? []
      : [`${t}, ${reason}: ${ledger.ticks(t)}, recomputed ${again[t]}`];
  });
}
