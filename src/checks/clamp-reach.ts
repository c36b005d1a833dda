import { toMm } from '../measure/index.ts';
import { axisOf, type Direction, type Part, type SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';
import { lengthMm, listed, ShopWords } from './shop-words.ts';
import { standingBox } from './standing-boxes.ts';

/** Something that is glued under clamps, and how far apart their jaws must go, mm. */
interface Glued {
  readonly part: Part;
  readonly reach: number;
}

/** Whether the clamps span everything that is glued: edging across its board, frames from corner to corner, boards to a panel. */
export function clampReach({ job, setOut }: Pick<CheckInput, 'job' | 'setOut'>): readonly Snag[] {
  const clamps = job.shop.tools.filter((t) => t.kind === 'clamp');
  if (clamps.length === 0) return [];
  const longest = Math.max(...clamps.map((c) => lengthMm(job, c.reach)));
  // Tape is rubbed down behind the iron.
  const taped = new Set(job.shop.rack.lots.filter((l) => l.tape !== undefined).map((l) => l.id));
  const glued = gluedParts(setOut, taped);
  // In the order of marks.
  const short = setOut.parts.flatMap((p) => glued.filter((g) => g.part === p && g.reach > longest));
  const [first] = short;
  if (!first) return [];
  const worst = short.reduce((a, b) => (b.reach > a.reach ? b : a), first);
  const words = new ShopWords(job);
  return [
    {
      code: 'tools.clamps-short',
      level: 'mind',
      where: { path: 'shop/tools', part: worst.part.id, record: worst.part.record },
      sentence: `To glue ${listed(short.map((g) => g.part.mark))} the clamps must span up to ${words.length(worst.reach)}; the longest reach ${words.length(longest)}.`,
      figures: words.atLeast(longest, worst.reach),
      rule: practice('a clamp spans what it presses together'),
      cures: [
        {
          says: 'Pull the joint together with strong tape or a band clamp, or hook two clamps into each other.',
        },
      ],
    },
  ];
}

function gluedParts(setOut: SetOut, taped: ReadonlySet<string>): readonly Glued[] {
  const parts = new Map(setOut.parts.map((p) => [p.id, p]));
  const boardOf = new Map(
    setOut.joints
      .filter((j) => j.duty === 'edging' && !taped.has(parts.get(j.part)!.lot))
      .map((j) => [j.part, j.mate]),
  );
  const onBoards = [...boardOf].map(([strip, board]): Glued => {
    const part = parts.get(strip)!;
    return { part, reach: spanOf(setOut, part.place.thickness, [part, parts.get(board)!]) };
  });
  // A strip of a frame is pressed from end to end; a mitred strip of a top is pressed onto its board instead.
  const framed = new Set(setOut.joints.filter((j) => j.kind === 'mitre').flatMap((j) => [j.part, j.mate]));
  const inFrames = [...framed]
    .filter((id) => !boardOf.has(id))
    .map((id): Glued => {
      const part = parts.get(id)!;
      return { part, reach: spanOf(setOut, part.place.length, [part]) };
    });
  // A panel let into others is pressed in across both of them.
  const matesOf = new Map<string, string[]>();
  for (const j of setOut.joints)
    if (j.letIn && j.duty === 'carries') matesOf.set(j.part, [...(matesOf.get(j.part) ?? []), j.mate]);
  const letIn = [...matesOf].map(([id, mates]): Glued => {
    const part = parts.get(id)!;
    return { part, reach: spanOf(setOut, part.place.length, [part, ...mates.map((m) => parts.get(m)!)]) };
  });
  const gluedUp = setOut.gluedPanels
    .filter((g) => g.boards.length > 1)
    .map((g): Glued => ({ part: parts.get(g.panel)!, reach: toMm(setOut.ledger.ticks(g.raw.width)) }));
  return [...onBoards, ...inFrames, ...letIn, ...gluedUp];
}

/** How far several parts reach together along a direction. */
function spanOf(setOut: SetOut, direction: Direction, parts: readonly Part[]): number {
  const { axis } = axisOf(direction);
  const boxes = parts.map((p) => standingBox(setOut, p));
  return Math.max(...boxes.map((b) => b.max[axis])) - Math.min(...boxes.map((b) => b.min[axis]));
}
