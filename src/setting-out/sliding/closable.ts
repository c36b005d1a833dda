/** A stretch from left to right, in ticks. */
export type Stretch = readonly [from: number, to: number];

/**
 * Which openings doors can cover at once. All doors are of one width and keep their order, and none reaches beyond the
 * ends; `after` says how much further right than an earlier one a door must stand at least, where it can't pass. Gives every
 * choice of as many bays as there are doors that can be covered, and the first that can't. Exact: places are pushed
 * to the left as far as each bay lets them.
 */
export function closableAtOnce(
  bays: readonly Stretch[],
  inside: Stretch,
  width: number,
  doors: number,
  after: (earlier: number, later: number) => number | undefined,
): { readonly can: readonly (readonly number[])[]; readonly cannot: readonly number[] | undefined } {
  const can: (readonly number[])[] = [];
  let cannot: readonly number[] | undefined;
  for (const choice of choices(bays.length, doors))
    if (covered(choice, bays, inside, width, after)) can.push(choice);
    else cannot ??= choice;
  return { can, cannot };
}

function covered(
  choice: readonly number[],
  bays: readonly Stretch[],
  [first, last]: Stretch,
  width: number,
  after: (earlier: number, later: number) => number | undefined,
): boolean {
  const places: number[] = [];
  return choice.every((bay, door) => {
    const [from, to] = bays[bay]!;
    const stops = places.map((at, earlier) => at + (after(earlier, door) ?? -Infinity));
    const left = Math.max(first, to - width, ...stops);
    places.push(left);
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
