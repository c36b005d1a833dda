import { SETTING_OUT } from '../materials/index.ts';
import { toMm } from '../measure/index.ts';
import type { Joint } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { along, type DrivenScrew, drive, inWood, type Wood, woodOf } from './driven-screw.ts';
import { practice, ruleOfLength } from './rule.ts';
import { ShopWords } from './shop-words.ts';

type Input = Pick<CheckInput, 'job' | 'setOut'>;

/** Less wood than this on a screw's way is a touch, mm. */
const TOUCH = 0.5;
/** Far enough to leave any part, mm. */
const FAR = 1e5;
const FAR_FACE = toMm(SETTING_OUT.farFace.value);

/** One thing that is wrong with a screw, and how badly: the worst screw of a joint speaks for it. */
interface Fault {
  readonly screw: DrivenScrew;
  readonly code: string;
  readonly by: number;
  readonly snag: Omit<Snag, 'code' | 'where'>;
}

/**
 * Drives every screw into the standing parts, from nothing but the place of its head, its lean and its length: does
 * it go through the parts that it claims and no others, stay in them, and stop short of the far face?
 */
export function screwPaths(input: Input): readonly Snag[] {
  const { setOut } = input;
  const words = new ShopWords(input.job);
  const parts = woodOf(setOut);
  const fasteners = new Map(setOut.fasteners.map((f) => [f.id, f]));
  const mitred = mitredWith(setOut.joints);
  return setOut.joints.flatMap((joint) => {
    const faults = joint.fasteners.flatMap((id) => {
      const fastener = fasteners.get(id);
      return fastener ? faultsOf(drive(setOut, fastener), parts, mitred, words) : [];
    });
    const worst = new Map<string, Fault>();
    for (const f of faults) if ((worst.get(f.code)?.by ?? -1) < f.by) worst.set(f.code, f);
    return [...worst.values()].map((f): Snag => {
      const part = parts.get(joint.part)?.part;
      return {
        code: f.code,
        ...f.snag,
        where: {
          part: joint.part,
          ...(part ? { record: part.record, path: `design/records/${part.record}` } : {}),
        },
      };
    });
  });
}

function faultsOf(
  screw: DrivenScrew,
  parts: ReadonlyMap<string, Wood>,
  mitred: ReadonlySet<string>,
  words: ShopWords,
): readonly Fault[] {
  const claimed = screw.fastener.through.map((id) => parts.get(id)!);
  return [
    ...wrongParts(screw, claimed, parts, mitred),
    ...throughFarFace(screw, claimed, words),
    ...outOfSides(screw, claimed, words),
  ];
}

function wrongParts(
  screw: DrivenScrew,
  claimed: readonly Wood[],
  parts: ReadonlyMap<string, Wood>,
  mitred: ReadonlySet<string>,
): readonly Fault[] {
  const inside = (part: Wood) => inWood(screw, part, screw.lengthMm).reduce((sum, [a, b]) => sum + b - a, 0);
  const rule = practice('a screw goes through the parts that it joins, and through no others');
  const faults: Fault[] = claimed
    .filter((part) => inside(part) < TOUCH)
    .map((part) => ({
      screw,
      code: 'screws.miss-part',
      by: 1,
      snag: {
        level: 'stop',
        sentence: `A screw meant to join the ${claimed.map((p) => p.part.name).join(' to the ')} would not stand in the ${part.part.name}.`,
        rule,
        cures: [{ says: 'Use a longer screw, or set out the joint again.' }],
      },
    }));
  for (const part of parts.values()) {
    if (claimed.includes(part) || claimed.some((c) => mitred.has(`${c.part.id}|${part.part.id}`))) continue;
    const depth = inside(part);
    if (depth < TOUCH) continue;
    faults.push({
      screw,
      code: 'screws.in-another-part',
      by: depth,
      snag: {
        level: 'stop',
        sentence: `A screw that joins the ${claimed.map((p) => p.part.name).join(' to the ')} would run into the ${part.part.name}.`,
        rule,
        cures: [{ says: 'Move the part, or use a shorter screw.' }],
      },
    });
  }
  return faults;
}

/** Wood between the tip and the far face of the last part, square to the joint. */
function spareMm(screw: DrivenScrew, last: Wood): number {
  const { box } = last;
  const { axis, sign, tip } = screw;
  const spare = sign > 0 ? box.max[axis] - tip[axis] : tip[axis] - box.min[axis];
  if (screw.cosine < 1) return hundredths(spare);
  // Straight on, a rabbet may have taken the far face away.
  const wood = inWood(screw, last, FAR).findLast(([from]) => from < screw.lengthMm);
  return hundredths(wood ? wood[1] - screw.lengthMm : spare);
}

function throughFarFace(screw: DrivenScrew, claimed: readonly Wood[], words: ShopWords): readonly Fault[] {
  const last = claimed.at(-1)!;
  const spare = spareMm(screw, last);
  if (spare >= FAR_FACE) return [];
  const out = spare <= 0;
  const into = `from the ${claimed[0]!.part.name} into the ${last.part.name}`;
  return [
    {
      screw,
      code: out ? 'screws.break-through' : 'screws.near-far-face',
      by: FAR_FACE - spare,
      snag: {
        level: out ? 'stop' : 'mind',
        sentence: out
          ? `A screw of ${words.length(screw.lengthMm)} ${into} would come out of its far face by ${words.fine(-spare)}.`
          : `A screw of ${words.length(screw.lengthMm)} ${into} would end ${words.fine(spare)} before its far face.`,
        figures: words.atLeast(spare, FAR_FACE),
        rule: ruleOfLength(SETTING_OUT.farFace),
        cures: [
          {
            says: `Use a screw that is ${words.fine((FAR_FACE - spare) / screw.cosine)} shorter, or put one on the shop’s list.`,
          },
        ],
      },
    },
  ];
}

function outOfSides(screw: DrivenScrew, claimed: readonly Wood[], words: ShopWords): readonly Fault[] {
  const beside = ([0, 1, 2] as const).filter((a) => a !== screw.axis);
  return claimed.flatMap((part): Fault[] => {
    const { box } = part;
    const stretches = inWood(screw, part, screw.lengthMm);
    const ends = stretches.flatMap(([a, b]) => [along(screw, a), along(screw, b)]);
    const wood = Math.min(
      ...ends.flatMap((p) => beside.flatMap((a) => [p[a] - box.min[a], box.max[a] - p[a]])),
    );
    const clear = hundredths(wood - screw.radiusMm);
    if (stretches.length === 0 || clear >= 0) return [];
    return [
      {
        screw,
        code: 'screws.out-of-side',
        by: -clear,
        snag: {
          level: 'stop',
          sentence: `A screw from the ${claimed[0]!.part.name} into the ${claimed.at(-1)!.part.name} would come out of a side of the ${part.part.name} by ${words.fine(-clear)}.`,
          figures: words.atLeast(hundredths(wood), screw.radiusMm),
          rule: practice('a screw has wood all round it'),
          cures: [{ says: 'Use a thinner or shorter screw, or move the parts so that it finds wood.' }],
        },
      },
    ];
  });
}

/** Pairs that meet in a mitre: their boxes share a corner that their wood does not. */
function mitredWith(joints: readonly Joint[]): ReadonlySet<string> {
  return new Set(
    joints.filter((j) => j.kind === 'mitre').flatMap((j) => [`${j.part}|${j.mate}`, `${j.mate}|${j.part}`]),
  );
}

function hundredths(x: number): number {
  return Math.round(x * 100) / 100;
}
