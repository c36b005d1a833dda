import { type JoinedBlank, type Part, stillJoined } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import { machineParts } from './part-work.ts';
import { underRail } from './rail.ts';
import { sideWords } from './words.ts';

/** Blanks of two parts that are still to be parted. */
export function blanksToPart({ job, setOut }: Bench): readonly JoinedBlank[] {
  return stillJoined(setOut.joinedBlanks, new Set((job.work.made ?? []).map((m) => m.part)));
}

/** Works blanks of two parts as far as these are alike, each setting once for both, and then parts them. */
export function workJoinedBlanks(bench: Bench): void {
  const joined = blanksToPart(bench);
  machineParts(
    bench,
    joined.map((b) => b.blank),
    'machine',
  );
  for (const one of joined) ripApart(bench, one);
}

/** A part without the work that was done while it was joined to another. */
export function leftToWork(bench: Bench): (part: Part) => Part {
  const shared = new Set(blanksToPart(bench).flatMap((b) => [...b.shared]));
  return (part) =>
    part.features.some((f) => shared.has(f))
      ? { ...part, features: part.features.filter((f) => !shared.has(f)) }
      : part;
}

function ripApart(bench: Bench, { blank, parts }: JoinedBlank): void {
  const [near, far] = parts.map((id) => bench.setOut.parts.find((p) => p.id === id)!) as [Part, Part];
  const widths = [near.cut.width, far.cut.width] as const;
  const id = `${blank.mark}/part`;
  const [nearEdge, farEdge] = [sideWords(blank, 'near'), sideWords(blank, 'far')];
  const rail = bench.tool('guide-rail') !== undefined;
  const narrow = widths.some((w) => underRail(bench, w));
  const on = (mark: string) =>
    rail
      ? `Lay the rail on ${mark}, its edge on both marks, beyond the wood at both ends`
      : `Clamp a straight board to ${mark} as a fence, beyond the wood at both ends and as far from both marks as the saw’s shoe reaches beside its blade`;
  bench.do(
    {
      id,
      kind: 'rip',
      stage: 'machine',
      title: `Part ${blank.mark} into ${near.mark} and ${far.mark}`,
      does: { act: 'rip-apart', workpiece: blank.mark, widths, yields: [near.mark, far.mark] },
      tool: 'circular-saw',
      times: 2,
      faceUp: 'better face down',
      reference: `the ${nearEdge}, then the ${farEdge}`,
      lines: [
        `What both share is done. Each is now ripped to its width from its own edge: both were sawn to a line when ${blank.mark} came off its sheet.`,
        `Mark {0} from the ${nearEdge}, near both ends. ${on(near.mark)}; the kerf falls on the far side of the line, and ${near.mark} (${near.name}) comes off.`,
        `Mark {1} from the ${farEdge}, near both ends. ${on(far.mark)}; the blade takes what is left beyond the line, and ${far.mark} (${far.name}) is done.`,
        ...(narrow
          ? [
              `What is kept is narrower than the rail: lay a board of the same thickness close beside it to carry the rail, and fix both down, with clamps or screws in waste.`,
            ]
          : []),
        `Clamp both halves down on a sacrificial board, so that neither pinches the blade nor falls.`,
      ],
      lengths: [...widths],
      cautions: [CAUTION.saw],
    },
    [blank.mark],
  );
  for (const part of [near, far]) bench.comesFrom(part.mark, id);
}
