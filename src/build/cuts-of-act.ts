import type { Act } from './operation.ts';

/** The straight cuts of an act, each by itself: of what is cut at one stop as well. */
export function cutsOfAct(act: Act): readonly Extract<Act, { act: 'saw' }>[] {
  if (act.act === 'saw') return [act];
  if (act.act !== 'saw-alike') return [];
  const { at, knife } = act;
  return act.cuts.map(({ workpiece, yields }) => ({
    act: 'saw',
    workpiece,
    across: 'length',
    at,
    keep: 'before',
    yields,
    ...(knife ? { knife } : {}),
  }));
}
