import type { Traced } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import type { Touch } from './operation.ts';
import { outermost, type Standing } from './seating.ts';

/** While a case lies on its face, what stands back from its front would hang in the air: packings carry it. */
export function packingsUnder(
  bench: Bench,
  standing: Standing,
  part: Part,
  touches: readonly Touch[],
  lengths: Traced[],
): readonly string[] {
  const l = bench.ledger;
  // What lies on another part is carried by that.
  const rests = touches.some((t) => t.side === '-y' && t.face === '+y');
  if (rests || bench.lies.get(standing.into) !== 'on its face') return [];
  const front = (p: Part) => outermost(bench, p, '-y').planes['-y'];
  const [first, ...others] = standing.placed.map((p) => front(p.part));
  const back = l.less(
    'how far it stands back',
    front(part),
    l.least('the front that lies down', first!, ...others),
  );
  if (l.ticks(back) <= 0) return [];
  const n = lengths.push(bench.set('marking', back)) - 1;
  return [`Packings {${n}} thick under its front edge, near both ends, until it is fixed.`];
}
