import type { RecordOf } from '../../job/index.ts';
import { DRAWERS } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/** What the fronts of an opening cover together: its edges in the piece, and where they stand from front to back. */
export interface FrontCover {
  readonly left: Traced;
  readonly right: Traced;
  readonly lower: Traced;
  readonly upper: Traced;
  readonly front: Traced;
}

/** A front from its lower to its upper edge. */
export interface FrontSpan {
  readonly lower: Traced;
  readonly height: Traced;
}

/** Divides what fronts cover by their number, equal or graded, the lowest first and the highest of them. */
export function frontSpans(
  draft: Draft,
  record: RecordOf<'drawers'>,
  cover: FrontCover,
  gap: Traced,
): readonly FrontSpan[] | undefined {
  const l = draft.ledger;
  const count = record.count ?? 1;
  const whole = l.less('height of all the fronts', cover.upper, cover.lower);
  const free =
    count === 1
      ? whole
      : l.less('the same without the gaps between', whole, l.times('gaps between', gap, count - 1));
  const grade = record.grade === undefined || count === 1 ? undefined : draft.field(record, 'grade');
  const steps = (count * (count - 1)) / 2;
  const even =
    grade === undefined
      ? free
      : l.less(
          'the same without the steps from one front to the next',
          free,
          l.times('all steps', grade, steps),
        );
  if (l.ticks(even) <= count * l.ticks(l.row(DRAWERS.lowestBox))) {
    draft.stop(
      'drawers.no-room',
      record,
      grade === undefined ? 'count' : 'grade',
      `${count} drawers don’t fit in “${record.parent}”: ${Math.max(0, Math.floor(toMm(l.ticks(even))))} mm are left for the fronts.`,
      grade === undefined
        ? {
            says: 'Have fewer drawers, or make the opening higher.',
            edits: [{ record: record.id, field: 'count', value: 1 }],
          }
        : { says: 'Grade them less.' },
    );
    return undefined;
  }
  const weights = Array.from({ length: count }, () => 1);
  let lower = cover.lower;
  return weights.map((_, i): FrontSpan => {
    const share = l.share('an equal share of the height', even, weights, i);
    const more = count - 1 - i;
    const height =
      grade === undefined || more === 0
        ? share
        : l.sum('graded: higher than the one above', share, l.times('steps of the grading', grade, more));
    const span = { lower, height };
    lower = l.sum('lower edge of the next front', lower, height, gap);
    return span;
  });
}
