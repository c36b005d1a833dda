import type { UncutPart } from '../part.ts';
import { type Direction, opposite } from '../place.ts';
import { outward } from './contact.ts';
import { isPegged, type Joint } from './joint.ts';

/** Which way a part comes off each of those that it is pegged to. */
type Ways = ReadonlyMap<string, Direction>;

/**
 * An order in which parts joined by dowels or biscuits can be put together one by one. What is pegged goes on and comes
 * off straight along its pegs, so a part can be the last only where all its pegs point one way: taken apart like
 * that from the end, as long as something comes off. Of several the one that stands last in the list comes off first, and
 * what holds the rest together stays. Undefined where at some point nothing comes off.
 */
export function closingOrder(
  joints: readonly Joint[],
  parts: readonly Pick<UncutPart, 'id' | 'place'>[],
): readonly string[] | undefined {
  if (!joints.some(isPegged)) return parts.map((p) => p.id);
  const ways = waysOff(joints, parts);
  const left = parts.map((p) => p.id);
  const order: string[] = [];
  while (left.length > 0) {
    const free = left.filter((id) => new Set(left.flatMap((o) => ways.get(id)!.get(o) ?? [])).size <= 1);
    const next = free.findLast((id) => hangsTogether(left, ways, id)) ?? free.at(-1);
    if (next === undefined) return undefined;
    left.splice(left.indexOf(next), 1);
    order.unshift(next);
  }
  return order;
}

function waysOff(
  joints: readonly Joint[],
  parts: readonly Pick<UncutPart, 'id' | 'place'>[],
): ReadonlyMap<string, Ways> {
  const ways = new Map(parts.map((p) => [p.id, new Map<string, Direction>()]));
  const places = new Map(parts.map((p) => [p.id, p.place]));
  for (const j of joints) {
    const [part, mate] = [ways.get(j.part), ways.get(j.mate)];
    if (!isPegged(j) || !part || !mate) continue;
    const into = outward(places.get(j.part)!, j.side);
    part.set(j.mate, opposite(into));
    mate.set(j.part, into);
  }
  return ways;
}

/** True when what is left without a part falls into no more pieces than with it. */
function hangsTogether(left: readonly string[], ways: ReadonlyMap<string, Ways>, without: string): boolean {
  const rest = left.filter((id) => id !== without);
  return pieces(rest, ways) <= pieces(left, ways);
}

function pieces(parts: readonly string[], ways: ReadonlyMap<string, Ways>): number {
  const waiting = new Set(parts);
  let count = 0;
  for (const id of parts) {
    if (!waiting.delete(id)) continue;
    count++;
    const reached = [id];
    for (let at = reached.pop(); at !== undefined; at = reached.pop())
      for (const other of ways.get(at)!.keys()) if (waiting.delete(other)) reached.push(other);
  }
  return count;
}
