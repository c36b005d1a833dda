import { type JobDocument, treeOf } from '../../src/job/index.ts';
import { parseLength } from '../../src/measure/index.ts';
import type { SetOut } from '../../src/setting-out/index.ts';
import { boxOf } from './judge-set-out.ts';

// A judge of tops that are scribed to walls: its own arithmetic, in ticks of 1/3200 mm.

/** Everything that is wrong with them: ends that don't lie over their fillers, or wood that is missing there. */
export function scribedTopFaults(job: JobDocument, setOut: SetOut): string[] {
  const tree = treeOf(job);
  return tree.all('top').flatMap((record) => {
    if (record.scribe === undefined) return [];
    const top = setOut.parts.find((p) => p.record === record.id && p.role === 'top');
    const read = parseLength(record.scribe, job.shop.units);
    if (!top || !read.ok) return [`${record.id} is not there`];
    const faults: string[] = [];
    const box = boxOf(setOut, top);
    const walls = setOut.parts
      .filter((p) => p.role === 'filler' && tree.get(p.record)?.kind === 'filler')
      .filter((p) => (tree.get(p.record) as { parent: string }).parent === record.parent)
      .map((p) => boxOf(setOut, p));
    const over = walls.filter((w) => w.min[0] === box.min[0] || w.max[0] === box.max[0]);
    if (walls.length === 0 || over.length !== walls.length) faults.push('does not end over its fillers');
    for (const w of walls) if (w.max[2] > box.min[2]) faults.push('runs into its fillers');
    const t = (x: (typeof top)['length']) => setOut.ledger.ticks(x);
    const more = t(top.rough?.length ?? top.length) - t(top.length);
    if (more !== walls.length * read.value) faults.push(`is cut ${more} ticks longer`);
    return faults.map((what) => `${record.id} ${what}`);
  });
}
