import { SLIDING_LIMITS } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { ShopWords } from './shop-words.ts';

/** Whether sliding doors run without racking, open wide enough, and are neither too heavy nor too thin for grooves in wood. */
export function sliding({
  job,
  setOut,
  weigh,
}: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): readonly Snag[] {
  const words = new ShopWords(job);
  const { widthShare, heaviest, leastOpen, thinnest } = SLIDING_LIMITS;
  return setOut.sliding.flatMap((set): Snag[] => {
    // All doors of a set are alike.
    const part = setOut.parts.find((p) => p.id === set.leaves[0]!.part)!;
    const mm = (t: typeof part.length) => toMm(setOut.ledger.ticks(t));
    const [high, wide, thick] = [mm(part.length), mm(part.width), mm(part.thickness)];
    const { kg } = weigh(part.id);
    const where = { path: `design/records/${set.record}`, record: set.record, part: part.id };
    const snags: Snag[] = [];
    if (wide < widthShare.value * high)
      snags.push({
        code: 'sliding.racks',
        level: 'mind',
        where,
        sentence: `${part.mark}, the ${part.name}, is only ${words.length(wide)} wide and ${words.length(high)} high: pushed at its edge it tilts and binds in its grooves.`,
        figures: words.atLeast(wide, widthShare.value * high),
        rule: { says: widthShare.says, source: widthShare.source, confirmed: widthShare.confirmed },
        cures: [{ says: 'Have fewer and wider doors, or hang them on hinges.' }],
      });
    const open = mm(set.opens);
    if (open < leastOpen.value * wide)
      snags.push({
        code: 'sliding.hardly-opens',
        level: 'mind',
        where,
        sentence: `The doors of “${set.record}” leave only ${words.length(Math.max(0, open))} open at once${set.leaves.some((d) => d.bars) ? ': handles stop those before them' : ''}.`,
        figures: words.atLeast(Math.max(0, open), leastOpen.value * wide),
        rule: { says: leastOpen.says, source: leastOpen.source, confirmed: leastOpen.confirmed },
        cures: [
          { says: 'Set one handle near the edge of each door that stays in sight, or bore finger holes.' },
        ],
      });
    if (kg > heaviest.value)
      snags.push({
        code: 'sliding.heavy',
        level: 'mind',
        where,
        sentence: `${part.mark}, the ${part.name}, weighs about ${words.mass(kg)}: it will be hard to slide and wear its groove.`,
        rule: { says: heaviest.says, source: heaviest.source, confirmed: heaviest.confirmed },
        cures: [
          { says: 'Make it of thinner board, or lay a strip of hardwood or plastic in the lower groove.' },
        ],
      });
    if (thick < thinnest.value)
      snags.push({
        code: 'sliding.thin',
        level: 'mind',
        where,
        sentence: `${part.mark}, the ${part.name}, is only ${words.length(thick)} thick and may bow out of its groove.`,
        figures: words.atLeast(thick, thinnest.value),
        rule: { says: thinnest.says, source: thinnest.source, confirmed: thinnest.confirmed },
        cures: [{ says: 'Make it of thicker board.' }],
      });
    return snags;
  });
}
