import { HINGE_COUNTS, type HingeCount } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Rule, Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { ShopWords } from './shop-words.ts';

/** Wider than this times its height, a door pulls hard at its upper hinge (common practice). */
const WIDE_FOR_ITS_HEIGHT = 1;

/** Whether every door hangs on hinges enough for its height and its mass, weighed as it comes out. */
export function hinges({
  job,
  setOut,
  weigh,
}: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): readonly Snag[] {
  const words = new ShopWords(job);
  return setOut.doors.flatMap((leaf): Snag[] => {
    const part = setOut.parts.find((p) => p.id === leaf.part)!;
    const mm = (t: typeof part.length) => toMm(setOut.ledger.ticks(t));
    // A flap’s hinges share its mass along its width, and it opens as wide as it likes.
    const flap = leaf.held !== undefined;
    const [high, wide] = flap ? [mm(part.width), 0] : [mm(part.length), mm(part.width)];
    const { kg } = weigh(part.id);
    const where = { path: `design/records/${leaf.record}`, record: leaf.record, part: part.id };
    const snags: Snag[] = [];
    const needed = rowFor(high, kg);
    const have = leaf.hinges.length;
    if (!needed)
      snags.push({
        code: 'hinges.door-too-heavy',
        level: 'mind',
        where,
        sentence: `${part.mark}, the ${part.name}, is ${words.length(high)} ${flap ? 'wide' : 'high'} and weighs about ${words.mass(kg)}, more than hinges of this kind are usually given.`,
        rule: ruleOfCount(HINGE_COUNTS.at(-1)!),
        cures: [{ says: 'Make it a pair, or of thinner board; or ask the hinge’s maker.' }],
      });
    else if (have < needed.hinges)
      snags.push({
        code: 'hinges.too-few',
        level: 'mind',
        where,
        sentence: `${part.mark}, the ${part.name}, hangs on ${have} hinges; ${words.length(high)} ${flap ? 'wide' : 'high'} and about ${words.mass(kg)}, it should have ${needed.hinges}.`,
        figures: { value: have, limit: needed.hinges, margin: have - needed.hinges, unit: 'hinges' },
        rule: ruleOfCount(needed),
        cures: [{ says: 'Hang it on one hinge more, or make it of thinner board.' }],
      });
    if (wide > WIDE_FOR_ITS_HEIGHT * high)
      snags.push({
        code: 'hinges.door-wide',
        level: 'mind',
        where,
        sentence: `${part.mark}, the ${part.name}, is wider (${words.length(wide)}) than it is high (${words.length(high)}), and will sag at its free edge sooner than others.`,
        figures: words.atMost(wide, WIDE_FOR_ITS_HEIGHT * high),
        rule: {
          says: 'a hinged door is no wider than it is high',
          source: 'common practice',
          confirmed: false,
        },
        cures: [
          {
            says: 'Make it a pair.',
            edits: [{ record: leaf.record, field: 'count', value: 2 }],
          },
        ],
      });
    return snags;
  });
}

function rowFor(heightMm: number, kg: number): HingeCount | undefined {
  return HINGE_COUNTS.find((r) => heightMm <= r.heightMm && kg <= r.kg);
}

function ruleOfCount(row: HingeCount): Rule {
  return {
    says: `${row.hinges} hinges carry a door up to ${row.heightMm} mm high and ${row.kg} kg`,
    source: row.source,
    confirmed: row.confirmed,
  };
}
