import type { DrivenScrew } from './screws.ts';

/** All that comes along when some parts are opened, drawn or taken out: what is screwed to them, and to that. */
export function comesAlong(
  marks: readonly string[],
  screws: readonly Pick<DrivenScrew, 'parts'>[],
): ReadonlySet<string> {
  const along = new Set(marks);
  for (let before = -1; before !== along.size; ) {
    before = along.size;
    for (const { parts } of screws) if (parts.some((p) => along.has(p))) for (const p of parts) along.add(p);
  }
  return along;
}
