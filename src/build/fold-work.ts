import type { Joint, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import type { Standing } from './seating.ts';
import { listWords } from './words.ts';

/** True for a corner of a case whose two panels are mitred. */
export function isCorner(joint: Joint): boolean {
  return joint.kind === 'mitre' && joint.duty === 'carries';
}

/** The panels of a mitred case in the order in which they are folded up; none of another case. */
export function foldedParts(bench: Bench, parts: readonly Part[]): readonly Part[] {
  const corners = bench.setOut.joints.filter(isCorner);
  return parts.filter((p) => corners.some((j) => j.part === p.id || j.mate === p.id));
}

/** How the corners of a case are taped, glued and folded, as the card of a panel tells it; nothing of other panels. */
export function foldLines(
  bench: Bench,
  standing: Standing,
  part: Part,
  row: readonly Part[],
): readonly string[] {
  if (!row.includes(part)) return [];
  if (bench.setOut.joints.some((j) => isCorner(j) && j.pegs && (j.part === part.id || j.mate === part.id)))
    return drawnTogether(bench, standing, part, row);
  if (standing.placed.length === 0) {
    const bottom = part.mark;
    const [left, right, ...lids] = row.filter((p) => p !== part).map((p) => p.mark);
    const order = [left, bottom, right, ...lids];
    return [
      `First dry: lay ${listWords(order as readonly string[])} in a row, outer faces up, tip to tip along a straightedge, front edges level.`,
      'Strong tape across every joint, a hand apart, stretched tight; then one strip along it. Turn the row over on a flat board: the mitres stand open, and folded up they close. Try that once, and unfold it.',
    ];
  }
  const mates = bench.setOut.joints.flatMap((j) => {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    return isCorner(j) && other !== undefined && standing.has(other) ? [standing.get(other)!.part.mark] : [];
  });
  return [
    `Glue both slopes between ${part.mark} and ${listWords(mates)}: sawn edges drink, so wait two minutes and glue again. Fold ${part.mark} up until the slopes close.`,
    mates.length > 1
      ? 'Draw the last corner together with tape, as tight as the others; then a band clamp round the case, or battens and clamps with blocks at the corners.'
      : 'The tape is the hinge and the clamp; wipe out what comes into the corner with a sharpened stick.',
  ];
}

/** Corners with biscuits don't fold: they are pushed on square to their slopes, and closed all together. */
function drawnTogether(
  bench: Bench,
  standing: Standing,
  part: Part,
  row: readonly Part[],
): readonly string[] {
  if (standing.placed.length === 0)
    return [
      `First dry, with all biscuits: ${listWords(row.map((p) => p.mark))} go together with every corner a little open, and are then drawn up together. A band clamp round the case, or clamps both ways with blocks cut to 45 degrees, lie ready and opened to size.`,
    ];
  const mates = bench.setOut.joints.flatMap((j) => {
    const other = j.part === part.id ? j.mate : j.mate === part.id ? j.part : undefined;
    return isCorner(j) && other !== undefined && standing.has(other) ? [standing.get(other)!.part.mark] : [];
  });
  const last = row.every((p) => p === part || standing.has(p.id));
  return [
    `Glue both slopes between ${part.mark} and ${listWords(mates)}: sawn edges drink, so wait two minutes and glue again, the slots last. Push ${part.mark} onto its biscuits square to the slope, and leave the corner a few millimetres open.`,
    ...(last
      ? [
          'Now close all corners together, a little at each in turn, with the band clamp or the clamps: a corner that is shut first keeps the others from coming on.',
        ]
      : []),
  ];
}
