/** The names that share most with what was asked, by pairs of letters; equally near ones in alphabetical order. */
export function nearestNames(wanted: string, names: Iterable<string>, count = 3): readonly string[] {
  const asked = pairs(wanted);
  const likeness = (name: string) => {
    const own = pairs(name);
    let same = 0;
    for (const p of own) if (asked.has(p)) same++;
    return (2 * same) / (own.size + asked.size || 1);
  };
  return [...names]
    .map((name) => [name, likeness(name)] as const)
    .sort(([a, x], [b, y]) => y - x || (a < b ? -1 : 1))
    .slice(0, count)
    .map(([name]) => name);
}

function pairs(s: string): ReadonlySet<string> {
  const low = s.toLowerCase();
  return new Set(Array.from({ length: Math.max(0, low.length - 1) }, (_, i) => low.slice(i, i + 2)));
}
