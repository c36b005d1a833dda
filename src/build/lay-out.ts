import type { Traced } from '../measure/index.ts';
import { groupParts, inOneStrip, type JoinedBlank } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { blanksToPart } from './joined-blanks.ts';
import { listWords, sideWords } from './words.ts';

/** A part is taken for square when its sides differ by less than this share of the longer one. */
const NEARLY_SQUARE = 0.05;

/**
 * Lays the parts out and marks them, before anything is worked that has a left and a right, a front and a back. The
 * cabinetmaker's triangle is common practice.
 */
export function layOut(bench: Bench): void {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const lengths: Traced[] = [];
  const squarish = groupParts(bench.setOut).flatMap(({ parts, marks }) => {
    const {
      form,
      cut: { length, width },
    } = parts[0]!;
    const longer = Math.max(t(length), t(width));
    if (form === 'strip' || Math.abs(t(length) - t(width)) >= longer * NEARLY_SQUARE) return [];
    const n = lengths.push(bench.set('circular-saw', length), bench.set('circular-saw', width)) - 2;
    return [`${marks} (the grain runs along the {${n}}, not along the {${n + 1}})`];
  });
  const blanks = blanksToPart(bench);
  const joined = new Map(blanks.flatMap((b) => b.parts.map((id) => [id, b.blank.mark] as const)));
  const sides = bench.setOut.parts.filter((p) => p.hand !== 'none' && !joined.has(p.id));
  const pair = sides.length > 1 ? listWords(sides.slice(0, 2).map((p) => p.mark)) : undefined;
  const marks = [...new Set(bench.setOut.parts.map((p) => joined.get(p.id) ?? p.mark))];
  bench.do(
    {
      id: 'parts/lay-out',
      kind: 'mark',
      stage: 'machine',
      title: 'Lay the parts out and mark the cabinetmaker’s triangle',
      does: { act: 'other', on: marks },
      times: 15,
      lines: [
        'Lay them out as they will stand, seen from the front, the better faces where they will be seen.',
        'Pencil a triangle across every set of parts that belong together: pointing up on what stands, to the back on what lies flat. It tells left from right and front from back until the piece is together.',
        'Write the mark on each and a stroke along the edge that comes to the front. All cards name faces, edges and ends as they look in the finished piece: front, back, left, right, upper, lower.',
        ...(pair
          ? [
              `Pairs are marked together: lay ${pair} edge to edge, front to front and ends level, and square every line across both at once.`,
            ]
          : []),
        ...blanks.map(blankLine),
        ...stripLines(bench),
        ...(squarish.length > 0
          ? [`Nearly square, so easily turned the wrong way: ${listWords(squarish)}.`]
          : []),
      ],
      lengths,
    },
    marks,
  );
}

/** Two parts that are one board still, and how to tell one from the other. */
function blankLine({ blank }: JoinedBlank): string {
  const [near, far] = blank.joins!;
  return `${near.mark} and ${far.mark} are one board still: lay ${blank.mark} down, its ${sideWords(blank, 'under')} up. Write ${near.mark} along the long edge that is at your left with the ${sideWords(blank, 'start')} towards you, and ${far.mark} along the other: there are the ${sideWords(blank, 'near')} and the ${sideWords(blank, 'far')}. Lines go square across both.`;
}

/** What was cut from one strip stays in its order. */
function stripLines(bench: Bench): readonly string[] {
  return inOneStrip(bench.setOut.parts).map((parts) => {
    const [{ strip }] = parts;
    const order =
      strip!.place !== undefined
        ? 'that is their order round the case'
        : `keep them in that order, from ${strip!.follow === 'width' ? 'below' : 'the left'}`;
    return `${listWords(parts.map((p) => p.mark))} are cut from one strip: ${order}, the same face and edge ahead, and the grain runs on from one to the next.`;
  });
}
