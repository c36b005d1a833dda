import { isSolid, SCREW_DISTANCES, SCREW_RULES, SETTING_OUT } from '../materials/index.ts';
import { type RatioRow, toMm } from '../measure/index.ts';
import { axisOf, type Joint, type Part } from '../setting-out/index.ts';
import type { Rule, Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { along, drive, inWood, woodOf } from './driven-screw.ts';
import { ruleOfLength } from './rule.ts';
import { ShopWords } from './shop-words.ts';

const OFF_CENTRE = toMm(SETTING_OUT.panelEdgeCentre.value);

/** How a screw enters an edge, mm. */
interface Entry {
  readonly offCentre: number;
  readonly fromEnd: number;
  /** Where it enters along the edge, from one end. */
  readonly place: number;
  readonly diameter: number;
  readonly thickness: number;
}

/**
 * Screws into an edge have their own rules: centred, thin, clear of the ends, and in solid wood of one another. Worst of
 * each joint.
 */
export function edgeScrews({ job, setOut }: Pick<CheckInput, 'job' | 'setOut'>): readonly Snag[] {
  const words = new ShopWords(job);
  const parts = new Map(setOut.parts.map((p) => [p.id, p]));
  const wood = woodOf(setOut);
  const fasteners = new Map(setOut.fasteners.map((f) => [f.id, f]));
  return setOut.joints.flatMap((joint) => {
    const mate = parts.get(joint.mate)!;
    const entries = joint.fasteners.flatMap((id) => {
      const fastener = fasteners.get(id);
      if (!fastener || fastener.through.at(-1) !== mate.id) return [];
      const screw = drive(setOut, fastener);
      const through = axisOf(mate.place.thickness).axis;
      const start = inWood(screw, wood.get(mate.id)!, screw.lengthMm)[0]?.[0];
      if (screw.axis === through || start === undefined) return [];
      const at = along(screw, start);
      const { box } = wood.get(mate.id)!;
      const run = ([0, 1, 2] as const).find((a) => a !== screw.axis && a !== through)!;
      return [
        {
          offCentre: hundredths(Math.abs(at[through] - (box.min[through] + box.max[through]) / 2)),
          fromEnd: hundredths(Math.min(at[run] - box.min[run], box.max[run] - at[run])),
          place: hundredths(at[run] - box.min[run]),
          diameter: 2 * screw.radiusMm,
          thickness: hundredths(box.max[through] - box.min[through]),
        },
      ];
    });
    if (entries.length === 0) return [];
    const { material } = job.shop.rack.lots.find((lot) => lot.id === mate.lot)!;
    const entered: WoodOf = isSolid(material) ? (runsWithGrain(joint) ? 'along' : 'across') : 'sheet';
    return faults(joint, parts.get(joint.part)!, mate, entries, words, entered);
  });
}

function faults(
  joint: Joint,
  part: Part,
  mate: Part,
  entries: readonly Entry[],
  words: ShopWords,
  wood: WoodOf,
): readonly Snag[] {
  const where = { part: joint.mate, record: mate.record, path: `design/records/${mate.record}` };
  const into = `from the ${part.name} into the edge of the ${mate.name}`;
  const off = Math.max(...entries.map((e) => e.offCentre));
  const end = Math.min(...entries.map((e) => e.fromEnd));
  const { diameter, thickness } = entries[0]!;
  const [over, under] = SCREW_RULES.edgeThickest.of;
  const thickest = hundredths((thickness * over) / under);
  const { least, apart, rule } = distancesIn(wood, joint, diameter);
  const snags: Snag[] = [];
  // Solid wood is no panel’s edge: a leg takes a screw wherever that is far enough from its sides.
  const [sides, by] = SCREW_DISTANCES.solidSide.of;
  const besides = wood !== 'sheet' && thickness / 2 - off >= (diameter * sides) / by;
  if (off > OFF_CENTRE && !besides)
    snags.push({
      code: 'screws.off-centre',
      level: 'mind',
      where,
      sentence: `A screw ${into} would stand ${words.fine(off)} off its middle.`,
      figures: words.atMost(off, OFF_CENTRE),
      rule: ruleOfLength(SETTING_OUT.panelEdgeCentre),
      cures: [{ says: 'Use a screw with a smaller head, or apply the back instead of letting it in.' }],
    });
  if (diameter > thickest)
    snags.push({
      code: 'screws.too-thick-for-edge',
      level: 'mind',
      where,
      sentence: `Screws ${into} are ${words.fine(diameter)} thick, and the edge ${words.length(thickness)}: it may split.`,
      figures: words.atMost(diameter, thickest),
      rule: {
        says: SCREW_RULES.edgeThickest.says,
        source: SCREW_RULES.edgeThickest.source,
        confirmed: false,
      },
      cures: [{ says: `Put a countersunk screw of at most ${words.fine(thickest)} on the shop’s list.` }],
    });
  if (end < least)
    snags.push({
      code: 'screws.near-end-of-edge',
      level: 'mind',
      where,
      sentence: `A screw ${into} would stand ${words.length(end)} from its end.`,
      figures: words.atLeast(end, least),
      rule,
      cures: [{ says: 'Leave that screw out, or drill its pilot with great care.' }],
    });
  const gaps = entries.map((e) => e.place).sort((a, b) => a - b);
  const gap = hundredths(Math.min(...gaps.slice(1).map((at, i) => at - gaps[i]!)));
  if (apart && gap < apart.mm)
    snags.push({
      code: 'screws.too-close',
      level: 'mind',
      where,
      sentence: `Screws ${into} would stand ${words.length(gap)} apart: solid wood may split between them.`,
      figures: words.atLeast(gap, apart.mm),
      rule: apart.rule,
      cures: [
        { says: 'Leave one of them out, or use thinner screws and drill their pilots with great care.' },
      ],
    });
  return snags;
}

/** A sheet; or solid wood, entered by a row that runs along its grain or across it. */
type WoodOf = 'sheet' | 'along' | 'across';

function runsWithGrain(joint: Joint): boolean {
  return joint.mateSide === 'near' || joint.mateSide === 'far';
}

/** How far a row must stay from the ends of an edge, and its screws from one another. */
function distancesIn(wood: WoodOf, joint: Joint, diameter: number) {
  const times = ({ of: [over, under] }: RatioRow) => hundredths((diameter * over) / under);
  const ruleOf = ({ says, source }: RatioRow): Rule => ({ says, source, confirmed: false });
  if (wood === 'sheet') {
    // A thin back has screws enough to stay further in.
    const clear = joint.duty === 'back' ? SETTING_OUT.panelEdgeEnd : SCREW_DISTANCES.panelCorner;
    return { least: toMm(clear.value), rule: ruleOfLength(clear) };
  }
  const [end, row] =
    wood === 'along'
      ? [SCREW_DISTANCES.solidEnd, SCREW_DISTANCES.solidAlong]
      : [SCREW_DISTANCES.solidSide, SCREW_DISTANCES.solidAcross];
  return { least: times(end), rule: ruleOf(end), apart: { mm: times(row), rule: ruleOf(row) } };
}

function hundredths(x: number): number {
  return Math.round(x * 100) / 100;
}
