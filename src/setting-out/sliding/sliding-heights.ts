import type { RecordOf } from '../../job/index.ts';
import { SETTING_OUT, SLIDING } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { depthIn } from '../joints/let-in.ts';
import type { Bounds } from './sliding-bounds.ts';

/** How high sliding doors are, and how deep they stand in what is above and below. */
export interface SlidingHeights {
  readonly door: Traced;
  readonly upper: Traced;
  readonly lower: Traced;
  readonly engagement: Traced;
  /** How far a door is lifted to pass over the lower edge, and what is then left above it. */
  readonly lift: Traced;
  readonly spare: Traced;
}

/**
 * The heights: a door reaches from the floor of its lower groove up into the upper one by its engagement, and the
 * upper groove is so much deeper that the door can be lifted clear of the lower one: engagement <= upper - lower -
 * what it passes by. Undefined where that can't be; a stop says why.
 */
export function heightsOf(
  draft: Draft,
  record: RecordOf<'sliding-doors'>,
  bounds: Bounds,
): SlidingHeights | undefined {
  const l = draft.ledger;
  const { below, above } = bounds;
  const upper =
    record.upperGroove === undefined
      ? l.least(
          'depth of the upper groove',
          l.row(SLIDING.upper),
          depthIn(draft, 'half of what is above', above.thickness, SLIDING.upperShare),
        )
      : draft.field(record, 'upperGroove');
  const lower =
    record.lowerGroove === undefined
      ? l.least(
          'depth of the lower groove',
          l.row(SLIDING.lower),
          depthIn(draft, 'a third of what is below', below.thickness, SETTING_OUT.dadoDepth),
        )
      : draft.field(record, 'lowerGroove');
  if (
    tooDeep(draft, record, 'upperGroove', upper, above) ||
    tooDeep(draft, record, 'lowerGroove', lower, below)
  )
    return undefined;
  const room = l.less('what may stay in the upper groove', upper, lower, l.row(SLIDING.lift));
  const asked =
    record.engagement === undefined
      ? l.least('what stays in the upper groove', l.row(SLIDING.engagement), room)
      : draft.field(record, 'engagement');
  if (l.ticks(asked) > l.ticks(room)) {
    draft.stop(
      'sliding.cannot-go-in',
      record,
      'engagement',
      `With ${mm(draft, asked)} mm left in the upper groove the doors of “${record.id}” can’t be lifted over the edge of the lower one.`,
      { says: `Let at most ${mm(draft, room)} mm stay in it, or make the upper groove deeper.` },
    );
    return undefined;
  }
  const door = draft.asSawn(l.sum('from groove to groove', bounds.height, lower, asked), 'down');
  const engagement = l.less('what stays in the upper groove', door, bounds.height, lower);
  if (l.ticks(engagement) < l.ticks(l.row(SLIDING.leastEngagement))) {
    draft.stop(
      'sliding.falls-out',
      record,
      'upperGroove',
      `The doors of “${record.id}” would stand only ${mm(draft, engagement)} mm in their upper groove, and fall out.`,
      { says: `Let the ${above.name} be of a thicker board, so that its groove can be deeper.` },
    );
    return undefined;
  }
  const play = l.less('how far a door can be lifted beyond the lower edge', upper, lower, engagement);
  const half = l.ratio('half of that', play, SETTING_OUT.half);
  return {
    door,
    upper,
    lower,
    engagement,
    lift: l.sum('how far a door is lifted to go in', lower, half),
    spare: l.less('what is left above it', play, half),
  };
}

/** More than half of a panel may not be taken out of it. */
function tooDeep(
  draft: Draft,
  record: RecordOf<'sliding-doors'>,
  field: 'upperGroove' | 'lowerGroove',
  depth: Traced,
  panel: DraftPart,
): boolean {
  const l = draft.ledger;
  if (2 * l.ticks(depth) <= l.ticks(panel.thickness)) return false;
  draft.stop(
    'sliding.groove-too-deep',
    record,
    field,
    `A groove ${mm(draft, depth)} mm deep takes more than half of the ${panel.name}, ${mm(draft, panel.thickness)} mm thick.`,
    { says: 'Make it shallower, or the panel of a thicker board.' },
  );
  return true;
}

function mm(draft: Draft, t: Traced): string {
  return String(Math.round(toMm(draft.ledger.ticks(t)) * 10) / 10);
}
