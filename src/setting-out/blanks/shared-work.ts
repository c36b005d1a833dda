import type { Ledger, Traced } from '../../measure/index.ts';
import type { Feature, Groove, Hole, Rabbet } from '../feature.ts';
import type { UncutPart } from '../part.ts';

/** What two parts side by side are worked to alike: as features of the blank, and those of either part that these stand for. */
export interface SharedWork {
  readonly onBlank: readonly Feature[];
  readonly shared: ReadonlySet<Feature>;
}

type Channel = Groove | Rabbet;

/**
 * The work that two parts share while they hang together, the near one’s far edge at the far one’s near edge: dados and
 * rabbets across both that are open at the line where they are parted, and rows of holes for pins at the same heights.
 */
export function sharedWork(
  ledger: Ledger,
  [near, far]: readonly [UncutPart, UncutPart],
  width: Traced,
): SharedWork {
  const t = (x: Traced) => ledger.ticks(x);
  const shared = new Set<Feature>();
  const onBlank: Feature[] = [];
  /** A place of the far part, on the blank. */
  const onFar = (place: Traced) =>
    ledger.less('the same on the blank', width, ledger.less('from the far edge', far.width, place));
  for (const g of near.features) {
    if (!isAcross(g) || t(g.to) !== t(near.width)) continue;
    const same = far.features.find(
      (f): f is Channel => isAcross(f) && !shared.has(f) && t(f.from) === 0 && alike(t, g, f),
    );
    if (!same) continue;
    shared.add(g).add(same);
    onBlank.push({ ...g, to: t(same.to) === t(far.width) ? width : onFar(same.to) });
  }
  const [nearPins, farPins] = [near, far].map((p) => p.features.filter(isPin)) as [Hole[], Hole[]];
  const heights = (pins: readonly Hole[]) =>
    [...new Set(pins.map((h) => [h.side, t(h.at[0]), t(h.diameter), t(h.depth!)].join(' ')))].sort().join();
  if (nearPins.length > 0 && heights(nearPins) === heights(farPins)) {
    for (const h of [...nearPins, ...farPins]) shared.add(h);
    onBlank.push(...nearPins, ...farPins.map((h): Hole => ({ ...h, at: [h.at[0], onFar(h.at[1])] })));
  }
  return { onBlank, shared };
}

function isAcross(f: Feature): f is Channel {
  return (f.kind === 'groove' || f.kind === 'rabbet') && (f.edge === 'start' || f.edge === 'end');
}

function isPin(f: Feature): f is Hole {
  return f.kind === 'hole' && f.use === 'pin';
}

function alike(t: (x: Traced) => number, a: Channel, b: Channel): boolean {
  return (
    a.kind === b.kind &&
    a.face === b.face &&
    a.edge === b.edge &&
    t(a.width) === t(b.width) &&
    t(a.depth) === t(b.depth) &&
    (a.kind === 'rabbet' || (b.kind === 'groove' && t(a.inset) === t(b.inset)))
  );
}
