import type { Traced } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import type { Groove } from '../feature.ts';
import { axisOf, type Direction, type TracedBox } from '../place.ts';
import { inPart, sideLooking } from './contact.ts';

/**
 * How thick the wood is that screws meet which are `driven` into a panel at a contact: its thickness, less the deepest
 * groove that is cut into its far face behind the contact.
 */
export function woodBehind(
  draft: Draft,
  panel: DraftPart,
  thickness: Traced,
  driven: Direction,
  contact: TracedBox,
): Traced {
  const l = draft.ledger;
  const face = sideLooking(panel.place, driven);
  const behind = panel.features.filter(
    (f): f is Groove => f.kind === 'groove' && f.face === face && runsAlong(draft, panel, f, contact),
  );
  const [first, ...others] = behind.map((g) => g.depth);
  if (first === undefined) return thickness;
  const deepest = others.length > 0 ? l.greatest('deepest groove behind the joint', first, ...others) : first;
  return l.less('thickness that is left behind the joint', thickness, deepest);
}

/** How far beside a contact a leaning screw may come, in ticks: about 10 mm. */
const BESIDE = 32_000;

/** Whether a groove runs along behind a contact. What only crosses it is left to the screws to keep clear of. */
function runsAlong(draft: Draft, panel: DraftPart, g: Groove, contact: TracedBox): boolean {
  const t = (x: Traced) => draft.ledger.ticks(x);
  const ends = g.edge === 'start' || g.edge === 'end';
  const across = ends ? panel.place.length : panel.place.width;
  const along = ends ? panel.place.width : panel.place.length;
  const whole = t(ends ? panel.length : panel.width);
  const low = g.edge === 'start' || g.edge === 'near' ? t(g.inset) : whole - t(g.inset) - t(g.width);
  const long = (d: Direction) => {
    const { axis } = axisOf(d);
    return t(contact.max[axis]) - t(contact.min[axis]);
  };
  const meets = (d: Direction, from: number, to: number) => {
    const { axis } = axisOf(d);
    const on = (at: Traced) => t(inPart(draft, panel, axis, at, 'where the joint lies on the panel'));
    const [a, b] = [on(contact.min[axis]), on(contact.max[axis])];
    return Math.min(a, b) - BESIDE < to && Math.max(a, b) + BESIDE > from;
  };
  return (
    long(along) > long(across) && meets(across, low, low + t(g.width)) && meets(along, t(g.from), t(g.to))
  );
}
