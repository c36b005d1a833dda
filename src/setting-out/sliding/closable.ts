/** A stretch from left to right, in ticks. */
export type Stretch = readonly [from: number, to: number];

/**
 * Which openings doors can cover at once. All doors are of one width and keep their order; those of one track can't
 * pass one another, nor reach beyond the ends. Gives every choice of as many bays as there are doors that can be
 * covered, and the first that can't. Exact: places are pushed to the left as far as each bay lets them.
 */
export function closableAtOnce(
  bays: readonly Stretch[],
  inside: Stretch,
  width: number,
  trackOf: readonly number[],
): { readonly can: readonly (readonly number[])[]; readonly cannot: readonly number[] | undefined } {
  const can: (readonly number[])[] = [];
  let cannot: readonly number[] | undefined;
  for (const choice of choices(bays.length, trackOf.length))
    if (covered(choice, bays, inside, width, trackOf)) can.push(choice);
    else cannot ??= choice;
  return { can, cannot };
}

function covered(
  choice: readonly number[],
  bays: readonly Stretch[],
  [first, last]: Stretch,
  width: number,
  trackOf: readonly number[],
): boolean {
  const reached = new Map<number, number>();
  return choice.every((bay, door) => {
    const [from, to] = bays[bay]!;
    const track = trackOf[door]!;
    const left = Math.max(first, to - width, reached.get(track) ?? first);
    reached.set(track, left + width);
    return left <= from && left + width <= last;
  });
}

/** Every choice of `count` of the first `of` whole numbers, in order. */
function choices(of: number, count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  if (count > of) return [];
  return [...choices(of - 1, count - 1).map((c) => [...c, of - 1]), ...choices(of - 1, count)].sort((a, b) =>
    firstDifference(a, b),
  );
}

function firstDifference(a: readonly number[], b: readonly number[]): number {
  const i = a.findIndex((x, k) => x !== b[k]);
  return i < 0 ? 0 : a[i]! - b[i]!;
}
