import { axisOf, type Part } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';
import { lengthMm, listed, ShopWords } from './shop-words.ts';
import { standingBox } from './standing-boxes.ts';

/** Something that is glued under clamps. */
interface Glued {
  readonly operation: string;
  readonly mark: string;
  /** How far apart the clamp's jaws must go, mm. */
  readonly reach: number;
}

/** Whether the clamps span everything that is glued: edging across its board, and frames from corner to corner. */
export function clampReach({
  job,
  setOut,
  build,
}: Pick<CheckInput, 'job' | 'setOut' | 'build'>): readonly Snag[] {
  const clamps = job.shop.tools.filter((t) => t.kind === 'clamp');
  if (clamps.length === 0) return [];
  const longest = Math.max(...clamps.map((c) => lengthMm(job, c.reach)));
  const byMark = new Map(setOut.parts.map((p) => [p.mark, p]));
  const glued = build.operations.flatMap((o): Glued[] => {
    if (o.does.act !== 'set' || !o.does.glue) return [];
    const part = byMark.get(o.does.workpiece);
    if (!part) return [];
    const onto = byMark.get(o.does.into);
    return [{ operation: o.id, mark: part.mark, reach: onto ? across(part, onto) : along(part) }];
  });
  const short = glued.filter((g) => g.reach > longest).sort((a, b) => b.reach - a.reach);
  const worst = short[0];
  if (!worst) return [];
  const words = new ShopWords(job);
  return [
    {
      code: 'tools.clamps-short',
      level: 'mind',
      where: { path: 'shop/tools', operation: worst.operation },
      sentence: `To glue ${listed(short.map((g) => g.mark))} the clamps must span up to ${words.length(worst.reach)}; the longest reach ${words.length(longest)}.`,
      figures: words.atLeast(longest, worst.reach),
      rule: practice('a clamp spans what it presses together'),
      cures: [
        {
          says: 'Pull the joint together with strong tape or a band clamp, or hook two clamps into each other.',
        },
      ],
    },
  ];

  /** From the strip's outer face to the far side of its board. */
  function across(strip: Part, board: Part): number {
    const { axis } = axisOf(strip.place.thickness);
    const [a, b] = [standingBox(setOut, strip), standingBox(setOut, board)];
    return Math.max(a.max[axis], b.max[axis]) - Math.min(a.min[axis], b.min[axis]);
  }

  /** A strip of a frame is pressed from end to end. */
  function along(strip: Part): number {
    const { axis } = axisOf(strip.place.length);
    const box = standingBox(setOut, strip);
    return box.max[axis] - box.min[axis];
  }
}
