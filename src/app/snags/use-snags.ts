import { useMemo } from 'react';
import type { Level, Snag } from '../../snag/index.ts';
import { useApp } from '../state/use-desk.ts';

/** The levels, worst first, with the words for one and for more. */
export const LEVELS: readonly (readonly [Level, string, string])[] = [
  ['stop', 'stop', 'stops'],
  ['mind', 'to mind', 'to mind'],
  ['note', 'note', 'notes'],
];

/** All snags, worst first: those of the drawing as it is now, and those of the latest plan. */
export function useSnags(): readonly Snag[] {
  const drawn = useApp((s) => s.setOut.snags);
  const planned = useApp((s) => s.plan?.snags);
  return useMemo(() => {
    const here = new Set(drawn.map(keyOf));
    // The plan repeats the drawing's snags; while it is being worked out its own may be of the drawing before.
    const own = (planned ?? []).filter((s) => !here.has(keyOf(s)));
    const all = [...drawn, ...own];
    return LEVELS.flatMap(([level]) => all.filter((s) => s.level === level));
  }, [drawn, planned]);
}

export function keyOf(snag: Snag): string {
  return `${snag.code} ${JSON.stringify(snag.where)} ${snag.sentence}`;
}
