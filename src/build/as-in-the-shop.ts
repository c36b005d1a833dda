import { SETTING_OUT } from '../materials/index.ts';
import type { Ledger, Traced } from '../measure/index.ts';
import type { Feature, Part, ScribedTop, SetOut } from '../setting-out/index.ts';

/**
 * The piece as it leaves the shop: tops that are scribed to walls, and the strips on them, still have what the walls take
 * off, so that all that is measured from their ends is measured from those that they have then.
 */
export function asInTheShop(setOut: SetOut): SetOut {
  if (setOut.scribedTops.length === 0) return setOut;
  const of = new Map(
    setOut.scribedTops.flatMap((top) => [top.part, ...top.strips].map((id) => [id, top] as const)),
  );
  return {
    ...setOut,
    parts: setOut.parts.map((part) => {
      const top = of.get(part.id);
      return top ? beforeScribing(setOut.ledger, part, top) : part;
    }),
  };
}

function beforeScribing(l: Ledger, part: Part, { ends, scribe }: ScribedTop): Part {
  const more = l.times('at all its walls', scribe, ends.length);
  const before = ends.includes('start') ? scribe : l.row(SETTING_OUT.nothing);
  const [x, y, z] = part.place.origin;
  // A top and the strip on its front begin on the left.
  const left = l.less('left end, before it is scribed', x, before);
  return {
    ...part,
    length: l.sum('length, before it is scribed', part.length, more),
    place: { ...part.place, origin: [left, y, z] },
    features: part.features.map((f) => further(l, f, before, ends.length === 2)),
  };
}

/** Work on a face, as much further from the start as that will be scribed away there. */
function further(l: Ledger, f: Feature, by: Traced, alike: boolean): Feature {
  if (f.kind !== 'hole' && f.kind !== 'slot') return f;
  if (f.kind === 'hole' && f.side !== 'show' && f.side !== 'under') return f;
  const at = [l.sum('the same, before it is scribed', f.at[0], by), f.at[1]] as const;
  if (f.kind === 'slot') return { ...f, at };
  // The middle is another one where one end alone is sawn.
  const middle = alike ? f.middle : f.middle?.filter((run) => run !== 'length');
  const { middle: _, ...rest } = f;
  return { ...rest, at, ...(middle && middle.length > 0 ? { middle } : {}) };
}
