import { DOORS, HINGE_COUNTS, hingeCount, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';

/**
 * Middles of hinges along what lies, a lid or a flap, from its left end: as many as its width and mass ask for, the outer
 * ones by the trade, the others equally between; on the grid that places are marked on.
 */
export function evenHinges(draft: Draft, long: Traced, kg: number): readonly Traced[] {
  const l = draft.ledger;
  const count = hingeCount(toMm(l.ticks(long)), kg)?.hinges ?? HINGE_COUNTS.at(-1)!.hinges + 1;
  const marked = (t: Traced) => l.round('place of the hinge', t, l.row(SETTING_OUT.setStep), 'nearest');
  const end = marked(
    l.least(
      'from the end to the outer hinge',
      l.row(DOORS.hingeEnd),
      l.ratio('a quarter of its width', long, DOORS.hingeEndShare),
    ),
  );
  const between = l.less('from the first hinge to the last', long, end, end);
  const even = Array.from({ length: count - 1 }, () => 1);
  let at = end;
  return [
    end,
    ...even.map((_, i) => {
      at = l.sum('place of the next hinge', at, l.share('an equal distance', between, even, i));
      return marked(at);
    }),
  ];
}
