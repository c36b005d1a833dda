import type { PlannedNode } from '../breakdown/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';

/**
 * To what a workpiece is trimmed on a far side; undefined where no part reaches that. What is cut on in the same direction is not
 * trimmed before: the last of what comes off it is.
 */
export function trimTo(
  { ledger: l }: Bench,
  node: PlannedNode,
  across: 'length' | 'width',
): Traced | undefined {
  if (node.kind === 'cut' && node.across === across) return undefined;
  const needs = node.needs[across];
  return needs !== undefined && l.ticks(needs) >= l.ticks(node[across]) ? needs : undefined;
}

/** Where both halves go: a part is laid by, but where it is still to be trimmed; the rest waits for its own cuts. */
export function thenWhat(
  bench: Bench,
  { parts, across }: PlannedNode & { readonly kind: 'cut' },
  names: readonly (string | undefined)[],
): string {
  const pieces = parts.flatMap((half, i) => (half.kind === 'piece' ? [{ half, second: i === 1 }] : []));
  const isTrimmed = ({ half, second }: (typeof pieces)[number]) =>
    second && trimTo(bench, half, across) !== undefined;
  const marks = (which: typeof pieces) => which.map((p) => p.half.part.mark).join(' and ');
  const done = pieces.filter((p) => !isTrimmed(p));
  const next = pieces.filter(isTrimmed);
  const on = parts.flatMap((half, i) => (half.kind === 'cut' ? [names[i]!] : []));
  const says = [
    ...(done.length > 0 ? [`lay ${marks(done)} by`] : []),
    ...(next.length > 0 ? [`trim ${marks(next)}`] : []),
    ...(on.length > 0 ? [`keep ${on.join(' and ')} for ${on.length > 1 ? 'their' : 'its'} cuts`] : []),
  ];
  return says.length === 0 ? '' : ` Then ${says.join(', ')}.`;
}

/** What is written on the rest of a cut that no part comes from. */
export function leftWords(name: string | undefined): string {
  return name === undefined ? '; the rest is waste.' : `, ${name} on the rest, which goes back on the rack.`;
}
