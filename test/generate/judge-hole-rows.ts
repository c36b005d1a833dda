import type { JobDocument } from '../../src/job/index.ts';
import { treeOf } from '../../src/job/index.ts';
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
      const [one, other] = rows;
      if (record.mirror && one && other && mirrorsIts(one.middles) !== mirrorsIts(other.middles))
        faults.push(`${record.id}: not mirrored`);
      return rows.length > 0 ? faults : [`${record.id}: no holes`];
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
