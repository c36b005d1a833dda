import type { Draft } from './draft.ts';

/**
 * What depends on the job and on one more thing alone, found once for each draft: it is asked for again with every
 * screw of a piece.
 */
export function onceADraft<Key, Found>(
  find: (draft: Draft, key: Key) => Found,
): (draft: Draft, key: Key) => Found {
  const drafts = new WeakMap<Draft, Map<Key, Found>>();
  return (draft, key) => {
    let known = drafts.get(draft);
    if (!known) {
      known = new Map();
      drafts.set(draft, known);
    }
    let found = known.get(key);
    if (found === undefined) {
      found = find(draft, key);
      known.set(key, found);
    }
    return found;
  };
}
