import type { Ledger, Traced } from '../../measure/index.ts';

/**
 * A clear distance as a card prints it, from a neighbour that itself was set so. Equal spaces share a stick as long as
 * that does; where roundings would add up to over a step, this one takes them back.
 * @param further how much further along the neighbour comes by the cards than it was drawn; absent when it isn't set so
 */
export function runningClear(
  l: Ledger,
  clear: Traced,
  further: Traced | undefined,
  step: Traced,
): { readonly printed: Traced; readonly further: Traced } {
  const round = (t: Traced) => l.round('as fine as it is marked', t, step, 'nearest');
  const beyond = (printed: Traced) => {
    const own = l.less('what rounding adds', printed, clear);
    return further === undefined ? own : l.sum('what rounding has added up to here', further, own);
  };
  const alike = round(clear);
  const added = beyond(alike);
  if (further === undefined || Math.abs(l.ticks(added)) <= l.ticks(step))
    return { printed: alike, further: added };
  const printed = round(l.less('clear distance, less what rounding added before', clear, further));
  return { printed, further: beyond(printed) };
}
