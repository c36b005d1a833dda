import { DOORS, HINGE_COUNTS, hingeCount, reckonedDensity, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { outerSize } from '../edging/outer-box.ts';
import { type Bore, type Bores, meetsHollow } from '../joints/bores.ts';
import { boxTicks } from '../place.ts';
import { type Chosen, type Hanging, ofHinge } from './hinge-choice.ts';
import { type Cup, plateBores } from './hinge-cup.ts';

/** Middles of the hinges from the door's lower end, each moved clear of shelves and screws. */
export function placesOf(
  draft: Draft,
  bores: Bores,
  h: Hanging,
  chosen: Chosen,
  cup: Cup | undefined,
): readonly Traced[] | undefined {
  const l = draft.ledger;
  const count = howMany(draft, h);
  const step = l.row(SETTING_OUT.setStep);
  const end = l.least(
    'from the end of the door to its outer hinge',
    l.row(DOORS.hingeEnd),
    l.ratio('a quarter of its height', h.part.length, DOORS.hingeEndShare),
  );
  const between = l.less('from the lowest hinge to the highest', h.part.length, end, end);
  const weights = Array.from({ length: count - 1 }, () => 1);
  const places: Traced[] = [];
  let at = end;
  for (let i = 0; i < count; i++) {
    const asked = l.round('place of the hinge', at, step, 'nearest');
    const place = clearPlace(draft, bores, h, chosen, cup, asked, places);
    if (place === undefined) {
      draft.stop(
        'hinges.no-place',
        h.door,
        'hang',
        `Hinge ${i + 1} of the ${h.part.name} finds no place on the ${h.post.name} clear of shelves and screws.`,
        { says: 'Move a shelf, or hang the door on its other side.' },
      );
      return undefined;
    }
    places.push(place);
    if (i < count - 1)
      at = l.sum('place of the next hinge', at, l.share('an equal distance', between, weights, i));
  }
  return places;
}

const STEPS = [0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8, -8, 9, -9, 10, -10];

function clearPlace(
  draft: Draft,
  bores: Bores,
  h: Hanging,
  chosen: Chosen,
  cup: Cup | undefined,
  asked: Traced,
  before: readonly Traced[],
): Traced | undefined {
  const l = draft.ledger;
  const aside = l.row(DOORS.hingeAside);
  const clear = l.ticks(l.row(DOORS.hingeClear));
  const foot = l.ticks(h.part.box.min[2]);
  const fine = (at: number) => {
    if (at < clear || at > l.ticks(h.part.length) - clear) return false;
    if (before.some((b) => at - l.ticks(b) < 2 * clear)) return false;
    const z = foot + at;
    const inPost = z - clear / 2 >= l.ticks(h.post.box.min[2]) && z + clear / 2 <= l.ticks(h.post.box.max[2]);
    const shelf = h.shelves.some(
      (s) =>
        touchesFace(draft, s, h) && z > l.ticks(s.box.min[2]) - clear && z < l.ticks(s.box.max[2]) + clear,
    );
    const screws = cup ? plateBores(draft, h, chosen, cup, z) : leafBores(draft, h, chosen, z);
    const letIn = h.shelves.some((s) => screws.some((b) => meetsHollow(b, boxTicks(l, s.box))));
    return inPost && !shelf && !letIn && !(cup && screws.some((b) => bores.meets(b)));
  };
  const from = l.ticks(asked);
  const steps = STEPS.find((n) => fine(from + n * l.ticks(aside)));
  if (steps === undefined) return undefined;
  if (steps === 0) return asked;
  const by = l.times('steps aside', aside, Math.abs(steps));
  const reason = 'place of the hinge, moved clear of what is there';
  return steps > 0 ? l.sum(reason, asked, by) : l.less(reason, asked, by);
}

/** What the screws of a butt hinge's leaf may take up of the post: they stand somewhere on it. */
function leafBores(
  draft: Draft,
  h: Hanging,
  { hinge, length, diameter }: Chosen,
  z: number,
): readonly Bore[] {
  if (hinge.kind !== 'butt') return [];
  const l = draft.ledger;
  const x = l.ticks(h.hung === 'left' ? h.post.box.max[0] : h.post.box.min[0]);
  const far = x + (h.hung === 'left' ? -1 : 1) * l.ticks(length);
  const y = l.ticks(h.frontOfCase) + l.ticks(ofHinge(draft, hinge, 'width')) / 2;
  const half = l.ticks(ofHinge(draft, hinge, 'length')) / 2;
  return [-half, 0, half].map((off) => ({
    parts: [h.post.id],
    from: [x, y, z + off],
    to: [far, y, z + off],
    radius: l.ticks(diameter) / 2,
  }));
}

/** True when a shelf ends at, or goes into, the face of the post that the hinge is on. */
function touchesFace(draft: Draft, shelf: DraftPart, h: Hanging): boolean {
  const l = draft.ledger;
  return h.hung === 'left'
    ? l.ticks(shelf.box.min[0]) <= l.ticks(h.post.box.max[0]) &&
        l.ticks(shelf.box.max[0]) > l.ticks(h.post.box.max[0])
    : l.ticks(shelf.box.max[0]) >= l.ticks(h.post.box.min[0]) &&
        l.ticks(shelf.box.min[0]) < l.ticks(h.post.box.min[0]);
}

function howMany(draft: Draft, h: Hanging): number {
  const l = draft.ledger;
  const mm = (t: Traced) => toMm(l.ticks(t));
  const { thickness } = h.part;
  const [length, width] = (['length', 'width'] as const).map((size) => outerSize(draft, h.part, size)) as [
    Traced,
    Traced,
  ];
  const kgM3 = reckonedDensity(draft.lot(h.door.board).material);
  const kg = (mm(length) * mm(width) * mm(thickness) * kgM3) / 1e9;
  return hingeCount(mm(length), kg)?.hinges ?? HINGE_COUNTS.at(-1)!.hinges + 1;
}
