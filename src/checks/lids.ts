import { treeOf } from '../job/index.ts';
import { FINISH_WORK, HELD_LID, PINCHING, SHUT_IN } from '../materials/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import { axisOf, type Lid, type SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { ShopWords } from './shop-words.ts';
import { standingBoxes } from './standing-boxes.ts';

type Input = Pick<CheckInput, 'job' | 'setOut'>;

/** Whether a lid or a flap is held open, a lid pinches no fingers, lets a child breathe that has crept in, and lets a hand reach all that is under it. */
export function lids(input: Input): readonly Snag[] {
  const flaps = input.setOut.doors.flatMap((d) =>
    d.held ? [{ ...d.held, part: d.part, record: d.record }] : [],
  );
  return [
    ...input.setOut.lids.flatMap((lid) => [
      ...falls(lid, 'hinged', 'lid'),
      ...pinches(input, lid),
      ...shutsIn(input, lid),
      ...outOfReach(input, lid),
    ]),
    ...flaps.flatMap((flap) => falls(flap, 'hand', 'flap')),
  ];
}

function falls(
  lid: Pick<Lid, 'kg' | 'momentNm' | 'stays' | 'part' | 'record'>,
  field: string,
  what: string,
): readonly Snag[] {
  if (lid.stays || lid.kg <= HELD_LID.kg) return [];
  const each = Math.ceil(lid.momentNm * 5) / 10;
  return [
    {
      code: 'lids.falls',
      level: 'mind',
      where: { path: `design/records/${lid.record}/${field}`, record: lid.record, part: lid.part },
      sentence: `Nothing holds the ${what} open: it weighs ${lid.kg} kg and falls with ${lid.momentNm} N m about its hinges.`,
      figures: { value: 0, limit: lid.momentNm, margin: -lid.momentNm, unit: 'N m' },
      rule: {
        says: `a ${what} of more than ${HELD_LID.kg} kg is held by stays wherever it is let go; lying level it asks for its weight at the distance of its middle from the hinges`,
        source: HELD_LID.source,
        confirmed: HELD_LID.confirmed,
      },
      cures: [{ says: `Put a pair of stays on the rack that hold at least ${each} N m each.` }],
    },
  ];
}

/** A little more than fingers need. */
const OPEN_MM = 15;

function pinches({ job, setOut }: Input, lid: Lid): readonly Snag[] {
  const gap = mm(setOut, lid.gap);
  if (gap >= PINCHING.toMm) return [];
  const words = new ShopWords(job);
  const box = treeOf(job).caseOf(lid.record);
  const front = box && treeOf(job).childOf(box.id, 'front');
  return [
    {
      code: 'lids.pinch',
      level: 'mind',
      where: { path: `design/records/${front?.id ?? lid.record}`, record: front?.id ?? lid.record },
      sentence: `The lid comes down to ${words.fine(gap)} above the front, where fingers lie.`,
      figures: words.atLeast(gap, PINCHING.toMm),
      rule: {
        says: `a gap that fingers get into is at least ${words.fine(PINCHING.toMm)} wide, or under ${words.fine(PINCHING.fromMm)} where none get in`,
        source: PINCHING.source,
        confirmed: PINCHING.confirmed,
      },
      cures: [
        {
          says: `Leave at least ${words.fine(PINCHING.toMm)} open under the lid.`,
          ...(front ? { edits: [{ record: front.id, field: 'gap', value: words.fine(OPEN_MM) }] } : {}),
        },
      ],
    },
  ];
}

/** A chest that a child fits in needs air, though things stand before its back. */
function shutsIn({ job, setOut }: Input, lid: Lid): readonly Snag[] {
  const tree = treeOf(job);
  const box = tree.caseOf(lid.record);
  const root = box && tree.childOf(box.id, 'opening');
  const inside = setOut.openings.find((o) => o.id === root?.id);
  if (!box || !inside) return [];
  const sizes = [inside.width, inside.height, inside.depth].map((t) => mm(setOut, t));
  const litres = sizes.reduce((a, b) => a * b, 1) / 1e6;
  if (litres <= SHUT_IN.litres || sizes.some((s) => s < SHUT_IN.eachWayMm)) return [];
  const long = sizes[0]!;
  const gap = mm(setOut, lid.gap);
  // The gap along the whole front is both openings in one, where nothing closes it.
  if (gap * long >= SHUT_IN.openings * SHUT_IN.areaMm2 && gap >= PINCHING.toMm && long >= SHUT_IN.apartMm)
    return [];
  const holes = airHoles(setOut, lid, box.id, tree.childOf(box.id, 'back')?.id);
  if (enoughAir(holes)) return [];
  return [
    {
      code: 'lids.shut-in',
      level: 'mind',
      where: { path: `design/records/${box.id}`, record: box.id },
      sentence: `A child could creep into this chest (${Math.round(litres)} litres) and be shut in without air.`,
      figures: {
        value: holes.length,
        limit: SHUT_IN.openings,
        margin: holes.length - SHUT_IN.openings,
        unit: '',
      },
      rule: {
        says: `a space of over ${SHUT_IN.litres} litres, ${SHUT_IN.eachWayMm} mm and more every way, has ${SHUT_IN.openings} openings of ${SHUT_IN.areaMm2} mm², ${SHUT_IN.apartMm} mm apart, that nothing covers when it stands against a wall; no lock or latch`,
        source: SHUT_IN.source,
        confirmed: SHUT_IN.confirmed,
      },
      cures: [
        {
          says: 'Leave 12 mm or more open under the lid along the whole front, or bore 30 mm holes through both sides.',
        },
      ],
    },
  ];
}

/** What lies fixed in a chest closes what is under it, unless it leaves room for a hand behind the front: that is fixed, and the lid is above. */
function outOfReach({ job, setOut }: Input, lid: Lid): readonly Snag[] {
  const tree = treeOf(job);
  const box = tree.caseOf(lid.record);
  const fixed = box && tree.childOf(box.id, 'front');
  const front = setOut.parts.find((p) => p.record === fixed?.id && p.role === 'front');
  if (!box || !front) return [];
  const boxes = standingBoxes(setOut);
  const inside = boxes.get(front.id)!.max[1];
  const shelves = setOut.parts.filter(
    (p) =>
      /^(shelf|divider)/.test(p.role) &&
      axisOf(p.place.thickness).axis === 2 &&
      tree.caseOf(p.record)?.id === box.id &&
      tree.get(p.record)?.kind !== 'pins' &&
      boxes.get(p.id)!.min[1] - inside < FINISH_WORK.handMm,
  );
  return shelves.map((shelf) => ({
    code: 'lids.out-of-reach',
    level: 'mind',
    where: { path: `design/records/${shelf.record}`, record: shelf.record, part: shelf.id },
    sentence: `No hand comes under ${shelf.mark}, the ${shelf.name}: the chest opens from above, and its front is fixed.`,
    rule: { says: 'what is in a chest is reached from above', source: 'common practice', confirmed: false },
    cures: [
      {
        says: 'Leave it out, set it back by more than a hand, or lay a loose shelf on pins or a tray in its stead.',
      },
    ],
  }));
}

interface AirHole {
  readonly areaMm2: number;
  readonly at: readonly number[];
}

/** Round holes right through the case's panels, its back left out: a wall may cover that. */
function airHoles(setOut: SetOut, lid: Lid, box: string, back: string | undefined): readonly AirHole[] {
  return setOut.parts.flatMap((part): AirHole[] => {
    if (part.record === back || (part.record !== box && part.id !== lid.part && part.role !== 'front'))
      return [];
    return part.features.flatMap((f): AirHole[] => {
      if (f.kind !== 'hole' || f.depth !== undefined || !['vent', 'row', 'cable'].includes(f.use)) return [];
      const origin = part.place.origin.map((t) => mm(setOut, t));
      const at = [...origin];
      [part.place.length, part.place.width].forEach((d, i) => {
        const k = 'xyz'.indexOf(d[1]!);
        at[k] = origin[k]! + (d.startsWith('+') ? 1 : -1) * mm(setOut, f.at[i]!);
      });
      return [{ areaMm2: (Math.PI * mm(setOut, f.diameter) ** 2) / 4, at }];
    });
  });
}

function enoughAir(holes: readonly AirHole[]): boolean {
  const large = holes.filter((h) => h.areaMm2 >= SHUT_IN.areaMm2);
  return large.some((a) =>
    large.some((b) => Math.hypot(...a.at.map((x, k) => x - b.at[k]!)) >= SHUT_IN.apartMm),
  );
}

function mm(setOut: SetOut, t: Traced): number {
  return toMm(setOut.ledger.ticks(t));
}
