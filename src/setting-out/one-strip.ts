import type { Part } from './part.ts';

/** Parts that are cut from one strip, in their order there; each strip that some of these parts share. */
export function inOneStrip(parts: readonly Part[]): readonly (readonly [Part, ...Part[]])[] {
  const strips = new Map<string, [Part, ...Part[]]>();
  for (const p of parts) {
    if (!p.strip) continue;
    const before = strips.get(p.strip.id);
    if (before) before.push(p);
    else strips.set(p.strip.id, [p]);
  }
  const place = (p: Part) => p.strip?.place ?? 0;
  return [...strips.values()].map((of) => of.sort((a, b) => place(a) - place(b)));
}
