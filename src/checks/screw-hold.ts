import { fasteningGravity, SCREW_RULES } from '../materials/index.ts';
import { N_PER_KG } from '../measure/index.ts';
import type { Fastener, SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { drive, inWood, type Wood, woodOf } from './driven-screw.ts';
import { loadedSurface } from './loaded-surface.ts';
import { ShopWords } from './shop-words.ts';
import { screwHoldsN } from './withdrawal.ts';

/**
 * Whether the screws of every shelf that hangs on screws hold what it carries. The load lies across them, and a
 * loaded shelf also levers at them; what a thread may be pulled with stands for both. The weakest screw is counted,
 * and every screw is given an equal share.
 */
export function screwHold({
  job,
  setOut,
  weigh,
}: Pick<CheckInput, 'job' | 'setOut' | 'weigh'>): readonly Snag[] {
  const words = new ShopWords(job);
  const woods = woodOf(setOut);
  const fasteners = new Map(setOut.fasteners.map((f) => [f.id, f]));
  const based = new Set(
    setOut.joints
      .flatMap((j) => (j.duty === 'base' ? [j.mate] : j.duty === 'foot' ? [j.part] : []))
      .concat(setOut.levellers.map((one) => one.part)),
  );
  return setOut.surfaces.flatMap((surface): Snag[] => {
    // What stands on a base does not hang on its screws.
    if (based.has(surface.part)) return [];
    const screws = setOut.joints
      .filter(
        (j) =>
          j.duty === 'carries' &&
          // Through a face, the shelf is what the screws end in.
          (j.hold === 'face-screws' || j.hold === 'glue-and-screws' ? j.mate : j.part) === surface.part,
      )
      .flatMap((j) => j.fasteners)
      .map((id) => fasteners.get(id)!);
    if (screws.length === 0) return [];
    const held = screws.map((f) => holdOf(job, setOut, woods, f));
    const weakest = held.reduce((a, b) => (b.newtons < a.newtons ? b : a));
    const s = loadedSurface({ job, setOut, weigh }, surface);
    const share = ((s.loadKg + s.boardKg + s.edgingKg) * N_PER_KG) / screws.length;
    if (Math.round(share) <= Math.round(weakest.newtons)) return [];
    const needed = Math.ceil((share * screws.length) / weakest.newtons);
    return [
      {
        code: 'screws.hold-too-little',
        level: 'mind',
        where: { path: `design/records/${surface.record}`, record: surface.record, part: surface.part },
        sentence: `Each of the ${screws.length} screws of ${s.part.mark}, the ${s.part.name}, has ${words.force(share)} to carry, and its thread holds ${words.force(weakest.newtons)} in ${weakest.group}.`,
        figures: words.forceAtMost(share, weakest.newtons),
        rule: {
          says: 'a screw holds 2850 G² D pounds an inch of thread, G the wood’s specific gravity, D its diameter in inches',
          source: `NDS 2018 eq. 12.2-2; G by ${weakest.source}`,
          confirmed: weakest.confirmed,
        },
        cures: [
          { says: `Use ${needed} screws, longer or thicker ones, or put a batten under each end.` },
          {
            says: `Put no more than ${words.mass(Math.max(0, Math.floor((weakest.newtons * screws.length) / N_PER_KG - s.boardKg - s.edgingKg)))} on it.`,
          },
        ],
      },
    ];
  });
}

/** What a screw may be pulled with: the part of its thread that stands in the last part's wood. */
function holdOf(
  job: CheckInput['job'],
  setOut: SetOut,
  woods: ReadonlyMap<string, Wood>,
  fastener: Fastener,
): {
  readonly newtons: number;
  readonly group: string;
  readonly source: string;
  readonly confirmed: boolean;
} {
  const screw = drive(setOut, fastener);
  const last = woods.get(fastener.through.at(-1)!)!;
  const lot = job.shop.rack.lots.find((l) => l.id === last.part.lot)!;
  const wood = fasteningGravity(lot.material);
  const [over, under] = SCREW_RULES.threaded.of;
  const bare = screw.lengthMm * (1 - over / under);
  const thread = inWood(screw, last, screw.lengthMm).reduce(
    (sum, [a, b]) => sum + Math.max(0, b - Math.max(a, bare)),
    0,
  );
  // A wood in no table is reckoned as the softest that is.
  const gravity = wood?.specificGravity ?? 0.36;
  return {
    newtons: screwHoldsN(gravity, 2 * screw.radiusMm, thread),
    group: wood?.group ?? lot.name,
    source: wood?.source ?? 'from memory',
    confirmed: wood?.confirmed ?? false,
  };
}
