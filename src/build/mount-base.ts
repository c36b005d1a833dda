import type { Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { type CaseBox, marked } from './case-units.ts';
import { driveScrews } from './drive-screws.ts';
import type { Touch } from './operation.ts';
import { offset, type Standing } from './seating.ts';
import { setGroup } from './set-group.ts';
import { looks } from './words.ts';

/** What cards call the base of a case. */
export function baseWords(box: CaseBox): string {
  return box.words === 'the case' ? 'base' : `base of ${box.words}`;
}

/** Brings a base that is together against the bottom of its case, and screws it there. */
export function mountBase(
  bench: Bench,
  standing: Standing,
  box: CaseBox,
  name: string,
  strips: readonly Part[],
): void {
  const l = bench.ledger;
  const bottom = planesOf(l, marked(box, 'B')[0]!);
  const side = planesOf(l, box.left);
  const front = strips.find((s) => looks(s, 'show') === '-y')!;
  const leftStrip = strips.find((s) => looks(s, 'show') === '-x')!;
  const edged = bench.setOut.joints.find((j) => j.duty === 'edging' && j.mate === bottom.part.id);
  const foremost = edged ? planesOf(l, bench.setOut.parts.find((p) => p.id === edged.part)!) : bottom;
  const touches: readonly [Touch, Touch, Touch] = [
    { ...offset(bench, planesOf(l, leftStrip), '-x', side), part: leftStrip.mark },
    { ...offset(bench, planesOf(l, front), '-y', foremost), part: front.mark },
    { part: front.mark, side: '+z', of: bottom.part.mark, face: '-z' },
  ];
  setGroup(
    bench,
    standing.into,
    name,
    `Set the ${baseWords(box)} against the bottom`,
    touches,
    [
      'The case stays on its face: packing under the base brings it to its setback, clamps hold it against the bottom.',
    ],
    { length: '+x', width: '+y' },
  );
  for (const strip of strips) standing.add(strip);
  const own = new Set(strips.map((s) => s.id));
  for (const j of bench.setOut.joints.filter(
    (x) => x.duty === 'base' && (own.has(x.part) || own.has(x.mate)),
  ))
    driveScrews(bench, standing.into, j);
}
