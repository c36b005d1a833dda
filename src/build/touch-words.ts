import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import type { Touch } from './operation.ts';
import { directionWords } from './words.ts';

/** Is it the part itself that has the channel for what is there? */
function takesIn({ setOut }: Bench, part: Part | undefined, mark: string): boolean {
  const there = setOut.parts.find((p) => p.mark === mark);
  return setOut.joints.some((j) => j.part === there?.id && j.mate === part?.id && j.letIn !== undefined);
}

/** Touches in words, one after the other; their distances join the lengths that the card prints. */
export function touchesTold(
  bench: Bench,
  touches: readonly Touch[],
  lengths: Traced[],
  part?: Part,
): readonly string[] {
  return touches.map((t) => {
    const { words, lengths: more } = touchWords(bench, t, lengths.length, part);
    lengths.push(...more);
    return words;
  });
}

/** What is touched, of several whichever is met first. */
function against({ of, or = [], face }: Touch): string {
  return or.length === 0
    ? of
    : `${[of, ...or].join(' or ')}, whichever ${face === '+z' ? 'is higher' : 'stands out further'}`;
}

/** A touch in words; a distance is printed at placeholder `n`. The second value is the length for it, outward or not. */
export function touchWords(
  bench: Bench,
  touch: Touch,
  n: number,
  part?: Part,
): { readonly words: string; readonly lengths: readonly Traced[] } {
  const who = touch.part === undefined ? 'its' : `${touch.part}’s`;
  const side = `${who} ${directionWords(touch.side)} side`;
  if (touch.gap === undefined)
    return {
      words:
        touch.side === touch.face
          ? `${side} level with the ${directionWords(touch.face)} side of ${touch.of}`
          : `${side} against ${against(touch)}`,
      lengths: [],
    };
  const outward = bench.ledger.ticks(touch.gap) >= 0;
  const edge = directionWords(touch.face);
  const distance = outward ? touch.gap : bench.ledger.times('the same, as a distance', touch.gap, -1);
  const words =
    touch.side === touch.face
      ? `${side} {${n}} ${outward ? 'beyond' : 'in from'} the ${edge} side of ${touch.of}`
      : touch.shoulder
        ? `${side} home against the shoulders of the rabbets, {${n}} in from the ${edge} side of ${touch.of}`
        : outward
          ? `${side} {${n}} from ${touch.of}`
          : takesIn(bench, part, touch.of)
            ? `${touch.of} {${n}} deep in ${side}`
            : `${side} {${n}} deep in ${touch.of}`;
  return { words, lengths: [distance] };
}
