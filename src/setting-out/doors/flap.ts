import type { HingeOf, RecordOf } from '../../job/index.ts';
import { DOORS, density, GRAVITY, HINGE_COUNTS, hingeCount, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { bitNear } from '../joints/bit-choice.ts';
import { hundredths, staysFor } from '../lids/stays.ts';
import type { DoorLeaf } from './door-leaf.ts';
import { hingePilot, ofHinge } from './hinge-choice.ts';

/** A door that hangs on what is above or below it: cut already, and what it hangs on. */
export interface Flap {
  readonly door: RecordOf<'door'>;
  readonly part: DraftPart;
  readonly hung: 'above' | 'below';
  /** The panel that it hangs on, what is below it, and the upright at its left. */
  readonly post: DraftPart;
  readonly below: DraftPart;
  readonly beside: DraftPart;
  readonly gap: Traced;
  readonly opening: DoorLeaf['opening'];
}

/** Hangs a flap on butt hinges along its upper or lower edge, and finds the stays that hold it where it lies level. */
export function hangFlap(draft: Draft, flap: Flap): void {
  const { door, part } = flap;
  const hinge = hingeFor(draft, flap);
  if (!hinge) return;
  const l = draft.ledger;
  const { kg, momentNm } = weightOf(draft, door, part);
  const stays = staysFor(draft, { record: door, what: part.name, needs: momentNm });
  if (stays === 'weak') return;
  const screw = draft.job.shop.rack.screws.find((s) => s.id === hinge.screw)!;
  const diameter = draft.typed(`shop/rack/screws/${screw.id}/diameter`, screw.diameter);
  draft.doors.push({
    part: part.id,
    record: door.id,
    hang: door.hang,
    hung: flap.hung,
    post: flap.post.id,
    below: flap.below.id,
    beside: flap.beside.id,
    opening: flap.opening,
    gap: flap.gap,
    hinge: hinge.id,
    screw: screw.id,
    screwsPerHinge: 2 * hinge.screws,
    screwLength: draft.typed(`shop/rack/screws/${screw.id}/length`, screw.length),
    screwDiameter: diameter,
    pilot: bitNear(draft, 'twist', hingePilot(l, diameter)),
    hinges: placesAlong(draft, part, kg),
    leaf: {
      length: ofHinge(draft, hinge, 'length'),
      width: ofHinge(draft, hinge, 'width'),
      thickness: l.sum('as deep as a leaf is thick', ofHinge(draft, hinge, 'leaf')),
    },
    held: { kg, momentNm, ...(stays ? { stays } : {}) },
  });
}

/** A butt hinge, as named or the first of the rack, with screws that stay in what the flap hangs on. */
function hingeFor(draft: Draft, { door, part, post }: Flap): HingeOf<'butt'> | undefined {
  const l = draft.ledger;
  const butts = (draft.job.shop.rack.hinges ?? []).filter((h): h is HingeOf<'butt'> => h.kind === 'butt');
  const hinge = door.hinge === undefined ? butts[0] : butts.find((h) => h.id === door.hinge);
  if (!hinge) {
    draft.stop(
      door.hinge === undefined ? 'hinges.none-suits' : 'hinges.wrong-kind',
      door,
      'hinge',
      `The ${part.name} opens ${door.hand === 'above' ? 'upward' : 'downward'}, and needs a butt hinge.`,
      { says: 'Put such a hinge, with its measures, on the rack, or leave “hinge” out.' },
    );
    return undefined;
  }
  const screw = draft.job.shop.rack.screws.find((s) => s.id === hinge.screw)!;
  const length = draft.typed(`shop/rack/screws/${screw.id}/length`, screw.length);
  const [thick, far] = [l.ticks(post.thickness), l.ticks(l.row(SETTING_OUT.farFace))];
  if (thick - l.ticks(length) >= far) return hinge;
  draft.stop(
    'hinges.screw-too-long',
    door,
    'hinge',
    `The screws of hinge “${hinge.id}” come too near the far face of the ${post.name}.`,
    { says: 'Fix it with shorter screws, or use a thicker board.' },
  );
  return undefined;
}

/** Middles of the hinges from the flap's left edge: the outer ones by the trade, the others equally between. */
function placesAlong(draft: Draft, part: DraftPart, kg: number): readonly Traced[] {
  const l = draft.ledger;
  const count = hingeCount(toMm(l.ticks(part.width)), kg)?.hinges ?? HINGE_COUNTS.at(-1)!.hinges + 1;
  const marked = (t: Traced) => l.round('place of the hinge', t, l.row(SETTING_OUT.setStep), 'nearest');
  const end = l.least(
    'from the edge of the door to its outer hinge',
    l.row(DOORS.hingeEnd),
    l.ratio('a quarter of its width', part.width, DOORS.hingeEndShare),
  );
  const between = l.less('from the first hinge to the last', part.width, end, end);
  const even = Array.from({ length: count - 1 }, () => 1);
  let at = end;
  return [
    marked(end),
    ...even.map((_, i) => {
      at = l.sum('place of the next hinge', at, l.share('an equal distance', between, even, i));
      return marked(at);
    }),
  ];
}

/** What a flap weighs, and its moment about its hinges when it lies level: its mass at half its height. Statics. */
function weightOf(draft: Draft, door: RecordOf<'door'>, part: DraftPart) {
  const mm = (t: Traced) => toMm(draft.ledger.ticks(t));
  // Of a material in no table, about as much as birch plywood, from memory.
  const kgM3 = density(draft.lot(door.board).material)?.kgM3 ?? 680;
  const kg = (mm(part.length) * mm(part.width) * mm(part.thickness) * kgM3) / 1e9;
  return { kg: hundredths(kg), momentNm: hundredths((kg * GRAVITY * mm(part.length)) / 2000) };
}
