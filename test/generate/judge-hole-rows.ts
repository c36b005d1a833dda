import { FROM_SIDES, type JobDocument, type RecordOf, treeOf } from '../../src/job/index.ts';
import type { Traced } from '../../src/measure/index.ts';
import type { Hole, Part, SetOut } from '../../src/setting-out/index.ts';
import { boxOf } from './judge-set-out.ts';

// A judge of rows of holes: its own arithmetic, in ticks of 1/3200 mm.

type Vec = readonly [number, number, number];

/** Everything that is wrong with the rows of holes of a set-out piece. */
export function rowFaults(job: JobDocument, setOut: SetOut): string[] {
  return treeOf(job)
    .all('holes')
    .flatMap((record) => {
      const rows = setOut.parts.flatMap((part) => {
        const holes = part.features.filter(
          (f): f is Hole =>
            f.kind === 'hole' && f.use === 'row' && f.id.startsWith(`${part.id}#${record.id}:`),
        );
        return holes.length > 0 ? [{ part, middles: holes.map((h) => middleOf(setOut, part, h)) }] : [];
      });
      const faults = rows.flatMap(({ part, middles }) => {
        const wrong = unequal(middles) ? [`${record.id}: not equally apart in ${part.id}`] : [];
        return middles.length === (record.count ?? 1)
          ? wrong
          : [...wrong, `${record.id}: ${middles.length} holes`];
      });
      for (const { part, middles } of rows)
        if (record.about !== undefined && !standsAbout(setOut, record, part, middles))
          faults.push(`${record.id}: not about ${record.about} in ${part.id}`);
      const [one, other] = rows;
      if (record.mirror && one && other && mirrorsIts(one.middles) !== mirrorsIts(other.middles))
        faults.push(`${record.id}: not mirrored`);
      return rows.length > 0 ? faults : [`${record.id}: no holes`];
    });
}

/** Is the middle of a row, along each way that no side places it, that of what it stands about? */
function standsAbout(
  setOut: SetOut,
  record: RecordOf<'holes'>,
  part: Part,
  middles: readonly Vec[],
): boolean {
  const t = (x: Traced) => setOut.ledger.ticks(x);
  const opening = setOut.openings.find((o) => o.id === record.about);
  const boxes = opening
    ? [{ min: opening.box.min.map(t), max: opening.box.max.map(t) }]
    : setOut.parts.filter((p) => p.record === record.about).map((p) => boxOf(setOut, p));
  return [0, 1, 2].every((k) => {
    if ('xyz'[k] === part.place.thickness[1]) return true;
    if (FROM_SIDES[k]!.some((field) => record[field] !== undefined)) return true;
    const low = Math.min(...boxes.map((b) => b.min[k]!));
    const high = Math.max(...boxes.map((b) => b.max[k]!));
    const [first, last] = [middles[0]![k]!, middles.at(-1)![k]!];
    return Math.abs(low + high - first - last) <= 4;
  });
}

/** Height and depth of the holes of a side: the same in its mirror image. */
function mirrorsIts(middles: readonly Vec[]): string {
  return middles.map(([, y, z]) => `${y} ${z}`).join(', ');
}

function unequal(middles: readonly Vec[]): boolean {
  const steps = middles.slice(1).map((m, i) => Math.hypot(...m.map((x, k) => x - middles[i]![k]!)));
  return steps.some((s) => Math.abs(s - steps[0]!) > 2);
}

function middleOf(setOut: SetOut, part: Part, hole: Hole): Vec {
  const box = boxOf(setOut, part);
  const at = [0, 0, 0] as [number, number, number];
  hole.at.forEach((t, i) => {
    const run = i === 0 ? part.place.length : part.place.width;
    const k = 'xyz'.indexOf(run[1]!);
    const far = setOut.ledger.ticks(t);
    at[k] = run.startsWith('+') ? box.min[k]! + far : box.max[k]! - far;
  });
  return at;
}
