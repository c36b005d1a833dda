import type { Ledger, Traced } from '../measure/index.ts';
import type { Feature } from './feature.ts';
import type { UncutPart } from './part.ts';
import { axisOf, type TickBox } from './place.ts';

type Span = readonly [low: number, high: number];
/** A box as its spans along three axes. */
export type Spans = readonly [Span, Span, Span];

/** True when the channels, steps and notches of the parts together take away all of a box of the piece. */
export function isCutAway(ledger: Ledger, parts: readonly UncutPart[], box: TickBox): boolean {
  return leftOf(ledger, parts, box).length === 0;
}

/** What the channels, steps and notches of the parts leave of a box of the piece, in boxes that don't overlap. */
export function leftOf(ledger: Ledger, parts: readonly UncutPart[], box: TickBox): readonly Spans[] {
  let left: readonly Spans[] = [spansOf(box)];
  for (const part of parts)
    for (const f of part.features) {
      const taken = takenBy(ledger, part, f);
      if (taken) left = left.flatMap((b) => without(b, taken));
      if (left.length === 0) return left;
    }
  return left;
}

function spansOf({ min, max }: TickBox): Spans {
  return [
    [min[0], max[0]],
    [min[1], max[1]],
    [min[2], max[2]],
  ];
}

/** What is left of a box, in boxes that don't overlap. */
function without(box: Spans, taken: Spans): readonly Spans[] {
  if (box.some(([low, high], k) => taken[k]![1] <= low || taken[k]![0] >= high)) return [box];
  const pieces: Spans[] = [];
  const rest: Span[] = [...box];
  box.forEach(([low, high], k) => {
    const [from, to] = taken[k]!;
    const piece = (span: Span) => pieces.push(rest.map((s, i) => (i === k ? span : s)) as unknown as Spans);
    if (from > low) piece([low, from]);
    if (to < high) piece([to, high]);
    rest[k] = [Math.max(low, from), Math.min(high, to)];
  });
  return pieces;
}

/** What a feature takes away, as it stands in the piece; undefined for holes and bevels. */
function takenBy(ledger: Ledger, part: UncutPart, f: Feature): Spans | undefined {
  const t = (x: Traced) => ledger.ticks(x);
  const own = inOwnFrame(part, f, t);
  if (!own) return undefined;
  const stands: Span[] = [];
  [part.place.length, part.place.width, part.place.thickness].forEach((d, local) => {
    const { axis, sign } = axisOf(d);
    const [a, b] = own[local]!.map((at) => t(part.place.origin[axis]) + sign * at) as [number, number];
    stands[axis] = [Math.min(a, b), Math.max(a, b)];
  });
  return stands as unknown as Spans;
}

/** The same along the part's length, width and thickness. */
function inOwnFrame(part: UncutPart, f: Feature, t: (x: Traced) => number): Spans | undefined {
  const [long, wide, thick] = [t(part.length), t(part.width), t(part.thickness)];
  if (f.kind === 'notch') {
    const along = beside(f.end === 'start', 0, t(f.length), long);
    return [along, beside(f.edge === 'near', 0, t(f.width), wide), [0, thick]];
  }
  if (f.kind !== 'rabbet' && f.kind !== 'groove') return undefined;
  const inset = f.kind === 'groove' ? t(f.inset) : 0;
  const ends = f.edge === 'start' || f.edge === 'end';
  const across = beside(f.edge === 'start' || f.edge === 'near', inset, t(f.width), ends ? long : wide);
  const run: Span = [t(f.from), t(f.to)];
  const deep = beside(f.face === 'under', 0, t(f.depth), thick);
  return ends ? [across, run, deep] : [run, across, deep];
}

function beside(low: boolean, inset: number, width: number, whole: number): Span {
  return low ? [inset, inset + width] : [whole - inset - width, whole - inset];
}
