import type { HingeOf, RecordOf } from '../../job/index.ts';
import { GRAVITY, reckonedDensity, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { outerSize } from '../edging/outer-box.ts';
import { hundredths, staysFor } from '../lids/stays.ts';
import type { DoorLeaf } from './door-leaf.ts';
import { evenHinges } from './even-hinges.ts';
import { buttFigures } from './hinge-choice.ts';

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
  const { kg, momentNm } = weightOf(draft, door, part);
  const stays = staysFor(draft, { record: door, what: part.name, needs: momentNm });
  if (stays === 'weak') return;
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
    ...buttFigures(draft, hinge),
    hinges: evenHinges(draft, part.width, kg),
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

/** What a flap weighs, and its moment about its hinges when it lies level: its mass at half its height. Statics. */
function weightOf(draft: Draft, door: RecordOf<'door'>, part: DraftPart) {
  const mm = (t: Traced) => toMm(draft.ledger.ticks(t));
  const kgM3 = reckonedDensity(draft.lot(door.board).material);
  const [high, wide] = [outerSize(draft, part, 'length'), outerSize(draft, part, 'width')];
  const kg = (mm(high) * mm(wide) * mm(part.thickness) * kgM3) / 1e9;
  return { kg: hundredths(kg), momentNm: hundredths((kg * GRAVITY * mm(high)) / 2000) };
}
