/** A rectangle by its corners, in any unit. */
export type Rectangle = readonly [left: number, low: number, right: number, high: number];

/** The area that rectangles cover together; what two of them cover counts once. */
export function coveredArea(rectangles: readonly Rectangle[]): number {
  const xs = [...new Set(rectangles.flatMap((r) => [r[0], r[2]]))].sort((a, b) => a - b);
  let area = 0;
  for (let i = 0; i + 1 < xs.length; i++) {
    const [left, right] = [xs[i]!, xs[i + 1]!];
    const here = rectangles.filter((r) => r[0] <= left && r[2] >= right).sort((a, b) => a[1] - b[1]);
    let top = -Infinity;
    let height = 0;
    for (const [, low, , high] of here) {
      if (high <= top) continue;
      height += high - Math.max(low, top);
      top = high;
    }
    area += height * (right - left);
  }
  return area;
}

/** What two rectangles have in common; undefined where that is nothing. */
export function commonRectangle(a: Rectangle, b: Rectangle): Rectangle | undefined {
  const c = [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.min(a[2], b[2]), Math.min(a[3], b[3])] as const;
  return c[0] < c[2] && c[1] < c[3] ? c : undefined;
}
