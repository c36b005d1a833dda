import { N_PER_KG, parseMass } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { loadedSurface } from './loaded-surface.ts';
import { practice } from './rule.ts';
import { ShopWords } from './shop-words.ts';

/** Of all levellers under a piece, so many bear while it is turned level (common practice: two of four). */
const BEARING = 0.5;

/** Whether levellers carry the piece and what is in it, also while only some of them bear. */
export function levellers({
  job,
  setOut,
  weigh,
}: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): readonly Snag[] {
  const count = setOut.levellers.reduce((sum, one) => sum + one.at.length, 0);
  if (count === 0) return [];
  const words = new ShopWords(job);
  const own = setOut.parts.reduce((sum, p) => sum + weigh(p.id).kg, 0);
  const load = setOut.surfaces.reduce((sum, s) => sum + loadedSurface({ job, setOut, weigh }, s).loadKg, 0);
  const each = ((own + load) * N_PER_KG) / (count * BEARING);
  return [...new Set(setOut.levellers.map((one) => one.fixing))].flatMap((id): Snag[] => {
    const leveller = job.shop.rack.fixings?.find((f) => f.id === id);
    const typed = leveller?.kind === 'leveller' ? leveller.carries : undefined;
    const carries = typed === undefined ? undefined : parseMass(typed);
    if (!carries?.ok || Math.round(each) <= Math.round(carries.value * N_PER_KG)) return [];
    const record = setOut.levellers.find((one) => one.fixing === id)!.record;
    return [
      {
        code: 'levellers.overloaded',
        level: 'stop',
        where: { path: `design/records/${record}`, record },
        sentence: `The piece weighs about ${words.mass(own)} and is reckoned to carry ${words.mass(load)}. Of its ${count} levellers half may bear while it is turned level, ${words.force(each)} each; “${id}” is made for ${words.force(carries.value * N_PER_KG)}.`,
        figures: words.forceAtMost(each, carries.value * N_PER_KG),
        rule: practice('a leveller carries what its maker says, and only some of them bear at a time'),
        cures: [{ says: 'Use levellers that are made for more, or put less into the piece.' }],
      },
    ];
  });
}
