import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import type { Touch } from './operation.ts';
import { edgingOf, offset } from './seating.ts';
import { looks } from './words.ts';

/** Where a base comes: so far inside the left side and the front of a case, against its bottom. */
export function baseTouches(
  bench: Bench,
  strips: readonly Part[],
  bottom: Part,
  left: Part,
): readonly [Touch, Touch, Touch] {
  const l = bench.ledger;
  const front = strips.find((s) => looks(s, 'show') === '-y')!;
  const beside = strips.find((s) => looks(s, 'show') === '-x')!;
  const foremost = edgingOf(bench, bottom, '-y') ?? bottom;
  return [
    { ...offset(bench, planesOf(l, beside), '-x', planesOf(l, left)), part: beside.mark },
    { ...offset(bench, planesOf(l, front), '-y', planesOf(l, foremost)), part: front.mark },
    { part: front.mark, side: '+z', of: bottom.mark, face: '-z' },
  ];
}

/** The joints by which the strips of a base are screwed to what stands on them. */
export function baseJoints({ setOut }: Bench, strips: readonly Part[]): Bench['setOut']['joints'] {
  const own = new Set(strips.map((s) => s.id));
  return setOut.joints.filter((j) => j.duty === 'base' && (own.has(j.part) || own.has(j.mate)));
}
