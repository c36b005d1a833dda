import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';

/** Panels in the order in which they are let in: from the left, lower ones first. */
export function fromTheLeft(bench: Bench, parts: readonly Part[]): readonly Part[] {
  const l = bench.ledger;
  const at = parts.map((part) => {
    const { planes } = planesOf(l, part);
    return { part, x: l.ticks(planes['-x']), z: l.ticks(planes['-z']) };
  });
  return at.sort((a, b) => a.x - b.x || a.z - b.z).map(({ part }) => part);
}
