import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import type { WorkEdge } from './operation.ts';
import { listWords, referenceFor } from './words.ts';

/** Holes grouped by the lines they stand on, lines with the same places together; lines and holes in order. */
export function linesOfHoles(
  bench: Bench,
  at: readonly { readonly along: Traced; readonly across: Traced }[],
): readonly { readonly across: readonly Traced[]; readonly along: readonly Traced[] }[] {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const lines = new Map<number, { across: Traced; along: Traced[] }>();
  for (const a of at) {
    const line = lines.get(t(a.across));
    if (line) line.along.push(a.along);
    else lines.set(t(a.across), { across: a.across, along: [a.along] });
  }
  const alike = new Map<string, { across: Traced[]; along: readonly Traced[] }>();
  for (const line of [...lines.values()].sort((a, b) => t(a.across) - t(b.across))) {
    const along = [...line.along].sort((a, b) => t(a) - t(b));
    const key = along.map(t).join(' ');
    const same = alike.get(key);
    if (same) same.across.push(line.across);
    else alike.set(key, { across: [line.across], along });
  }
  return [...alike.values()];
}

/** A place along an edge as it is measured on the bench: from the front, left or lower side. */
export function fromEdge(bench: Bench, part: Part, edge: WorkEdge, along: Traced, turned: boolean): Traced {
  if (!turned) return along;
  const whole = edge === 'start' || edge === 'end' ? part.width : part.length;
  return bench.ledger.less('the same, measured from the other side', whole, along);
}

/** Where strokes for a row in an edge come, in order, as they are measured from the side that `from` names. */
export function strokesAlong(
  bench: Bench,
  part: Part,
  edge: WorkEdge,
  row: readonly { readonly at: readonly [along: Traced, across: Traced] }[],
): { readonly from: WorkEdge; readonly along: readonly Traced[] } {
  const { from, turned } = referenceFor(part, edge);
  const along = row
    .map((one) => bench.set('marking', fromEdge(bench, part, edge, one.at[0], turned)))
    .sort((a, b) => bench.ledger.ticks(a) - bench.ledger.ticks(b));
  return { from, along };
}

/** `{0}, {1} and {2}`. */
export function placeholders(n: number): string {
  return listWords(Array.from({ length: n }, (_, i) => `{${i}}`));
}

/** What is marked for so many holes, before the lines that say where. */
export function markLine(holes: number): string {
  return holes > 1 ? 'Mark the lines and the places on them:' : 'Mark the line and the place on it:';
}
