import { type RecordOf, readPower, treeOf } from '../job/index.ts';
import { freeArea, WARMER_BY } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { SetOut } from '../setting-out/index.ts';
import type { Rule, Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';

type Vent = RecordOf<'vent'>;

const STACK: Rule = {
  says: `warm air rises by itself through a low and a high vent; inside it is then ${WARMER_BY} K warmer than the room`,
  source: 'ASHRAE Fundamentals 1997, chapter 25, equation 37',
  confirmed: true,
};

/** Whether each vent lets out the heat behind it, and whether there is another for the air to come in by. */
export function vents({ job, setOut }: Pick<CheckInput, 'job' | 'setOut'>): readonly Snag[] {
  const tree = treeOf(job);
  const all = tree.all('vent');
  return all.flatMap((record): Snag[] => {
    if (record.heat === undefined) return [];
    const watts = readPower(record.heat)!;
    const needed = freeArea(watts, WARMER_BY, apartOf(setOut, record));
    const free = areaOf(setOut, record);
    const where = { path: `design/records/${record.id}`, record: record.id };
    const figures = {
      value: square(free),
      limit: square(needed),
      margin: square(free - needed),
      unit: 'cm²',
    };
    const snags: Snag[] = [
      free < needed * 0.999
        ? {
            code: 'vents.too-small',
            level: 'mind',
            where,
            sentence: `“${record.id}” has ${square(free)} cm² free; ${record.heat} asks for ${square(needed)} cm², low and high.`,
            figures,
            rule: STACK,
            cures: [{ says: 'Leave “count” out to have as many openings as it takes, or add a quiet fan.' }],
          }
        : {
            code: 'vents.air',
            level: 'note',
            where,
            sentence: `“${record.id}” has ${square(free)} cm² free, enough for ${record.heat} where the air comes in by as much low down and goes out high up. The makers of what stands inside may ask for more room round it.`,
            figures,
            rule: STACK,
            cures: [{ says: 'Keep it free of dust, and of things before it.' }],
          },
    ];
    const others = all.filter((v) => v.id !== record.id && v.in === record.in);
    if (others.length === 0)
      snags.push({
        code: 'vents.alone',
        level: 'mind',
        where,
        sentence: `“${record.id}” is the only vent there, and warm air goes out only where cool air comes in.`,
        rule: STACK,
        cures: [{ says: 'Add a second vent as large, low where this one is high.' }],
      });
    return snags;
  });
}

function square(mm2: number): number {
  return Math.round(mm2 / 10) / 10;
}

/** From low to high vent, mm: as said, or half the clear height. */
function apartOf(setOut: SetOut, record: Vent): number {
  const mm = (t: SetOut['overall']['height']) => toMm(setOut.ledger.ticks(t));
  const said = setOut.dimensions.get(`${record.id}.apart`);
  if (said !== undefined) return mm(said);
  const opening = setOut.openings.find((o) => o.id === record.in);
  return mm(opening?.height ?? setOut.overall.height) / 2;
}

/** What the openings of a vent in one panel leave free, mm2. */
function areaOf(setOut: SetOut, record: Vent): number {
  const mm = (t: SetOut['overall']['height']) => toMm(setOut.ledger.ticks(t));
  const areas = setOut.parts.map((part) =>
    part.features.reduce((sum, f) => {
      if (!f.id.startsWith(`${part.id}#${record.id}:`)) return sum;
      if (f.kind === 'hole') return sum + (Math.PI * mm(f.diameter) ** 2) / 4;
      if (f.kind !== 'slot') return sum;
      const w = mm(f.width);
      return sum + w * (mm(f.length) - w) + (Math.PI * w * w) / 4;
    }, 0),
  );
  return Math.max(0, ...areas);
}
