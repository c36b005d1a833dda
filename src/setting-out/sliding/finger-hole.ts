import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT, SLIDING } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';

/**
 * A recess to push a sliding door by, half way up and near the edge that stays in sight: nothing stands out, so that
 * doors pass. It goes right through a door that is too thin to keep a floor.
 */
export function fingerHole(
  draft: Draft,
  record: RecordOf<'sliding-doors'>,
  part: DraftPart,
  edge: 'left' | 'right',
): void {
  if (record.fingerHole === undefined) return;
  const l = draft.ledger;
  const diameter = draft.field(record, 'fingerHole');
  const radius = l.ratio('half of it', diameter, SETTING_OUT.half);
  const beside = l.sum(
    'from the edge of the door to the middle of its finger hole',
    l.row(SLIDING.fingerEdge),
    radius,
  );
  const step = l.row(SETTING_OUT.setStep);
  const fromEdge = l.round('as it is marked', beside, step, 'up');
  const room = l.ticks(fromEdge) + l.ticks(beside);
  if (room > l.ticks(part.width) || room > l.ticks(part.length)) {
    draft.stop(
      'sliding.finger-hole-wide',
      record,
      'fingerHole',
      `A finger hole ${Math.round(toMm(l.ticks(diameter)) * 10) / 10} mm wide has no room in the ${part.name}.`,
      { says: 'Make it narrower.' },
    );
    return;
  }
  const floor = l.less('as deep as leaves a floor', part.thickness, l.row(SLIDING.fingerFloor));
  const depth = floorDepth(draft, floor);
  part.features.push({
    kind: 'hole',
    use: 'finger',
    id: `${part.id}#finger`,
    purpose: 'to push the door by',
    side: 'show',
    at: [
      l.round(
        'half way up, as it is marked',
        l.ratio('half its height', part.length, SETTING_OUT.half),
        step,
        'nearest',
      ),
      // The near edge of a door looks to the right.
      edge === 'right' ? fromEdge : l.less('the same from the other edge', part.width, fromEdge),
    ],
    diameter,
    ...(depth === undefined ? {} : { depth }),
  });
}

function floorDepth(draft: Draft, floor: Traced): Traced | undefined {
  const l = draft.ledger;
  if (l.ticks(floor) < l.ticks(l.row(SLIDING.fingerLeast))) return undefined;
  return l.round(
    'as deep as the stop of the drill is set',
    l.least('depth of the finger hole', floor, l.row(SLIDING.fingerDepth)),
    draft.stepOf('drill'),
    'down',
  );
}
