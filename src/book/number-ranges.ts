/** `3–7, 9 and 12–14` for whole numbers in order. */
export function numberRanges(numbers: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const n of numbers) {
    const last = ranges.at(-1);
    if (last && n === last[1] + 1) last[1] = n;
    else ranges.push([n, n]);
  }
  const words = ranges.map(([a, b]) => (a === b ? `${a}` : `${a}–${b}`));
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
