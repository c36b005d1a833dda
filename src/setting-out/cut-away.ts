import type { Ledger, Traced } from '../measure/index.ts';
import type { Feature } from './feature.ts';
import type { Part } from './part.ts';
import { axisOf, type TickBox } from './place.ts';

/** True when one channel, step or notch of a part takes away all of a box of the piece. */
export function isCutAway(ledger: Ledger, part: Part, box: TickBox): boolean {
  const channels = part.features.filter(
    (f) => f.kind === 'rabbet' || f.kind === 'groove' || f.kind === 'notch',
  );
  if (channels.length === 0) return false;
  const t = (x: Traced) => ledger.ticks(x);
  const size = [t(part.length), t(part.width), t(part.thickness)] as const;
  const [min, max] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  [part.place.length, part.place.width, part.place.thickness].forEach((d, local) => {
    const { axis, sign } = axisOf(d);
    const ends = [box.min[axis], box.max[axis]].map((at) => sign * (at - t(part.place.origin[axis])));
    min[local] = Math.min(ends[0]!, ends[1]!);
    max[local] = Math.max(ends[0]!, ends[1]!);
  });
  return channels.some((f) =>
    takenBy(f, size, t).every(([low, high], k) => low <= min[k]! && high >= max[k]!),
  );
}

/** What a feature takes away, from and to along the part's length, width and thickness. */
function takenBy(
  f: Feature,
  size: readonly [number, number, number],
  t: (x: Traced) => number,
): readonly (readonly [number, number])[] {
  if (f.kind === 'notch') {
    const along = beside(f.end === 'start', 0, t(f.length), size[0]);
    return [along, beside(f.edge === 'near', 0, t(f.width), size[1]), [0, size[2]]];
  }
  if (f.kind !== 'rabbet' && f.kind !== 'groove') return [];
  const inset = f.kind === 'groove' ? t(f.inset) : 0;
  const ends = f.edge === 'start' || f.edge === 'end';
  const across = beside(f.edge === 'start' || f.edge === 'near', inset, t(f.width), size[ends ? 0 : 1]);
  const run = [t(f.from), t(f.to)] as const;
  const deep = beside(f.face === 'under', 0, t(f.depth), size[2]);
  return ends ? [across, run, deep] : [run, across, deep];
}

function beside(low: boolean, inset: number, width: number, whole: number): readonly [number, number] {
  return low ? [inset, inset + width] : [whole - inset - width, whole - inset];
}
