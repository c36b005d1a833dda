import { N_PER_KG, parseMass, toMm } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { loadedSurface } from './loaded-surface.ts';
import { practice } from './rule.ts';
import { ShopWords } from './shop-words.ts';

/** Whether loose shelves go in past their own uprights, and whether their pins carry what stands on them. */
export function looseShelves({
  job,
  setOut,
  weigh,
}: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): readonly Snag[] {
  const words = new ShopWords(job);
  return setOut.pinned.flatMap((shelf): Snag[] => {
    const part = setOut.parts.find((p) => p.id === shelf.part)!;
    const mm = (t: typeof part.length) => toMm(setOut.ledger.ticks(t));
    const where = { path: `design/records/${shelf.record}`, record: shelf.record, part: part.id };
    const snags: Snag[] = [];
    const across = diagonalMm(mm(part.length), mm(part.thickness));
    if (across > mm(shelf.opening))
      snags.push({
        code: 'shelves.no-tilt',
        level: 'mind',
        where,
        sentence: `${part.mark}, the ${part.name}, measures ${words.length(across)} from corner to corner and can’t be tilted in an opening of ${words.length(mm(shelf.opening))}: it goes in level, before the pins.`,
        figures: words.atMost(across, mm(shelf.opening)),
        rule: {
          says: 'a board that is tilted takes its diagonal of room',
          source: 'geometry',
          confirmed: true,
        },
        cures: [{ says: 'Give it a little more clearance, or make it of thinner board.' }],
      });
    const pin = job.shop.rack.pins?.find((p) => p.id === shelf.pin);
    const carries = pin?.carries === undefined ? undefined : parseMass(pin.carries);
    const surface = setOut.surfaces.find((s) => s.part === shelf.part);
    if (!carries?.ok || !surface) return snags;
    const loaded = loadedSurface({ job, setOut, weigh }, surface);
    const each = ((loaded.loadKg + loaded.boardKg) * N_PER_KG) / shelf.pins;
    const most = carries.value * N_PER_KG;
    if (Math.round(each) > Math.round(most))
      snags.push({
        code: 'pins.overloaded',
        level: 'stop',
        where,
        sentence: `Each pin of ${part.mark}, the ${part.name}, has ${words.force(each)} to carry; “${shelf.pin}” is made for ${words.force(most)}.`,
        figures: words.forceAtMost(each, most),
        rule: practice('a pin carries what its maker says, a quarter of the shelf each'),
        cures: [
          {
            says: `Put no more than ${words.mass(Math.max(0, Math.floor(carries.value * shelf.pins - loaded.boardKg)))} on it, or use stronger pins.`,
          },
        ],
      });
    return snags;
  });
}

/** The diagonal of a section, mm. */
function diagonalMm(length: number, thickness: number): number {
  return Math.round(Math.hypot(length, thickness) * 1000) / 1000;
}
