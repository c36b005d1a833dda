import { treeOf } from '../job/index.ts';
import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { unitsOf } from './case-units.ts';
import { driveScrews } from './drive-screws.ts';
import { setGroup } from './set-group.ts';
import { topTouches } from './top-touches.ts';

/** The tops over several cases that aren’t laid yet. */
export class TopsToLay {
  private readonly bench: Bench;
  private readonly into: string;
  private waiting: readonly Part[];

  constructor(bench: Bench, into: string) {
    this.bench = bench;
    this.into = into;
    const tree = treeOf(bench.job);
    this.waiting = bench.setOut.parts.filter((p) => {
      const record = tree.get(p.record);
      return p.role === 'top' && record?.kind === 'top' && tree.get(record.parent)?.kind === 'group';
    });
  }

  /** Are there any? */
  get any(): boolean {
    return this.waiting.length > 0;
  }

  /** Lays those whose cases stand all, and screws them from inside; they are added to what stands. */
  lay(standing: Map<string, Part>): void {
    const { bench } = this;
    for (const top of this.waiting) {
      const joints = bench.setOut.joints.filter((j) => j.mate === top.id && isLid(bench, j.part));
      if (joints.length === 0 || !joints.every((j) => standing.has(j.part))) continue;
      layTop(bench, this.into, top, joints);
      standing.set(top.id, top);
    }
    this.waiting = this.waiting.filter((top) => !standing.has(top.id));
  }
}

function layTop(bench: Bench, into: string, top: Part, joints: readonly Joint[]): void {
  const [first] = joints;
  const box = unitsOf(bench)
    .flatMap((unit) => unit.boxes)
    .find((b) => b.parts.some((p) => p.id === first?.part));
  const lid = box?.parts.find((p) => p.id === first?.part);
  if (!box || !lid) throw new Error(`${top.mark} lies on no case`);
  setGroup(
    bench,
    into,
    top.mark,
    `Lay ${top.mark} (${top.name}) over the cases`,
    topTouches(bench, top, planesOf(bench.ledger, box.left), lid),
    [
      'The cases stand level and are screwed together, so that their lids are one plane: lay a straightedge along and across, and pack what is low.',
      'Two people carry it on edge and lay it down from the front. Check the overhang at both ends and in front, and clamp it to a lid at each end, before the first screw.',
    ],
    { length: top.place.length, width: top.place.width },
  );
  for (const j of joints.toSorted((a, b) => alongOf(bench, a.part) - alongOf(bench, b.part)))
    driveScrews(bench, into, j);
}

/** Where a part begins from the left, so that screws follow one another along the top. */
function alongOf(bench: Bench, id: string): number {
  const part = bench.setOut.parts.find((p) => p.id === id)!;
  return bench.ledger.ticks(part.place.origin[0]);
}

function isLid(bench: Bench, id: string): boolean {
  return bench.setOut.parts.find((p) => p.id === id)!.role === 'lid';
}
