import type { Pin, RecordOf } from '../../job/index.ts';
import { LOOSE_SHELVES, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import type { Space } from '../spaces/openings.ts';

/** A pin of the rack with its sizes. */
export interface ChosenPin {
  readonly pin: Pin;
  readonly diameter: Traced;
  readonly deep: Traced;
  readonly stands: Traced;
  /** From the middle of its hole up to the shelf. */
  readonly above: Traced;
}

/** The pin that a record names, or the first of the rack; undefined, and told, where none goes into the uprights. */
export function choosePin(draft: Draft, space: Space, record: RecordOf<'pins'>): ChosenPin | undefined {
  const l = draft.ledger;
  const rack = draft.job.shop.rack.pins ?? [];
  const pin = record.pin === undefined ? rack[0] : rack.find((p) => p.id === record.pin);
  if (!pin) {
    draft.stop('pins.none', record, 'pin', `The rack has no pins for the shelves of “${record.id}”.`, {
      says: 'Put shelf pins, with their measures, on the rack.',
    });
    return undefined;
  }
  const size = (field: 'diameter' | 'deep' | 'stands' | 'above') =>
    draft.typed(`shop/rack/pins/${pin.id}/${field}`, pin[field]!);
  const diameter = size('diameter');
  const deep = size('deep');
  const skin = l.ticks(l.row(LOOSE_SHELVES.skin));
  const thin = [space.left, space.right].find((p) => l.ticks(p.thickness) - l.ticks(deep) < skin);
  if (thin) {
    draft.stop(
      'pins.too-deep',
      record,
      'pin',
      `Holes ${toMm(l.ticks(deep))} mm deep for “${pin.id}” leave less than ${toMm(l.ticks(l.row(LOOSE_SHELVES.skin)))} mm of the ${thin.name}.`,
      { says: 'Use a shorter pin, or a thicker board.' },
    );
    return undefined;
  }
  return {
    pin,
    diameter,
    deep,
    stands: size('stands'),
    above: pin.above === undefined ? l.ratio('half the pin', diameter, SETTING_OUT.half) : size('above'),
  };
}
