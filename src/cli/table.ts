/** Columns of text, as wide as they must be; numbers to the right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i]?.length ?? 0)));
  const isNumber = head.map((_, i) => rows.every((r) => /^[\d.,/'" -]*( mm)?$/.test(r[i] ?? '')));
  const line = (cells: readonly string[]) =>
    cells
      .map((c, i) => (isNumber[i] ? c.padStart(widths[i]!) : c.padEnd(widths[i]!)))
      .join('  ')
      .trimEnd();
  return `${[line(head), ...rows.map(line)].join('\n')}\n`;
}
