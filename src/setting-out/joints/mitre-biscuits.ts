import type { RecordOf } from '../../job/index.ts';
import { BISCUITS, SETTING_OUT } from '../../materials/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { Cure } from '../../snag/index.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import { type Bores, type Hollow, WALL } from './bores.ts';
import { inPart } from './contact.ts';
import { innerArris, innerFace, type MitredCorner } from './mitred-corner.ts';
import { clearPlaces } from './move-aside.ts';
import { type ChosenPeg, chooseBiscuit, cutterOf, halfSlot } from './peg-choice.ts';
import { spaceBy } from './screw-spacing.ts';

/** Where the slots of a corner lie on its slope. */
interface OnSlope {
  readonly chosen: ChosenPeg;
  /** Down the slope from the inner arris, and as far square to the inner face. */
  readonly down: Traced;
  readonly under: Traced;
  readonly spare: Traced;
}

/**
 * Slots square to the slope and biscuits in them, as near to the inside as the wood allows: there a slot can be deepest
 * before it comes through. The ids of what was put in; a stop where nothing suits.
 */
export function biscuitsInMitre(draft: Draft, bores: Bores, corner: MitredCorner): readonly string[] {
  const l = draft.ledger;
  const { side, flat, joint } = corner;
  const [low, high] = [
    l.greatest('where the corner begins', side.box.min[1], flat.box.min[1]),
    l.least('where the corner ends', side.box.max[1], flat.box.max[1]),
  ];
  const length = l.less('length of the corner', high, low);
  const on = onSlope(draft, corner, length);
  if (!on) return [];
  const arris = innerArris(corner);
  const at = (place: Traced): Triple => {
    const out = (k: 0 | 2) =>
      arris.sign[k] > 0
        ? l.sum('middle of the slot, on the slope', arris.at[k], on.under)
        : l.less('middle of the slot, on the slope', arris.at[k], on.under);
    return [out(0), place, out(2)];
  };
  const step = draft.stepOf('marking');
  const taken = (place: number) => hollows(draft, corner, on, place);
  const row = clearPlaces(l, {
    spacing: spaceBy(
      l,
      {
        least: BISCUITS.spacingLeast,
        most: BISCUITS.spacingMost,
        end: BISCUITS.end,
        endLeast: BISCUITS.end,
      },
      length,
      step,
    ),
    low,
    high,
    first: 0,
    aside: l.round('as fine as lines are marked', l.row(BISCUITS.aside), step, 'up'),
    apart: 2 * halfSlot(draft, on.chosen.deep[0]) + WALL,
    isFree: (place) => taken(place).every(([part, hollow]) => !bores.meetsHollow(part, hollow)),
  });
  if (!row) {
    draft.stop(
      'pegs.meet',
      corner.box,
      'inMitres',
      `The biscuits between the ${side.name} and the ${flat.name} find no place clear of what is bored there.`,
      {
        says: 'Leave “inMitres” out: glue alone holds mitres that are folded up.',
        edits: [{ record: corner.box.id, field: 'inMitres' }],
      },
    );
    return [];
  }
  return row.map((place, i) => {
    for (const [part, hollow] of taken(l.ticks(place))) bores.hollow(part, hollow);
    slot(draft, side, corner.sideEnd, flat, place, on, i + 1);
    slot(draft, flat, corner.flatEnd, side, place, on, i + 1);
    const id = `${joint}:${i + 1}`;
    draft.pegs.push({
      id,
      joint,
      kind: 'biscuit',
      fixing: on.chosen.fixing,
      parts: [side.id, flat.id],
      at: at(place),
      across: on.chosen.across,
      wide: on.chosen.wide,
      holds: on.chosen.holds,
      spare: on.spare,
    });
    return id;
  });
}

/** The biscuit that suits the slope, and how far down it its slot lies. */
function onSlope(draft: Draft, { side, flat, box }: MitredCorner, length: Traced): OnSlope | undefined {
  const l = draft.ledger;
  const { kerf } = cutterOf(draft);
  const half = l.ratio('half the slot', kerf, SETTING_OUT.half);
  const down = l.round(
    'as fine as the joiner is set',
    l.sum('down the slope to the middle of the slot', half, l.row(BISCUITS.inMitre)),
    draft.stepOf('biscuit-joiner'),
    'up',
  );
  const thick = l.least('the thinner board', side.thickness, flat.thickness);
  // Square to the slope the outer face is as far away as the slope is long from there to the tip.
  const wood = l.less(
    'wood square to the slope, from the slot’s outer wall to the outer face',
    l.ratio('slope of the mitre', thick, BISCUITS.overSlope),
    down,
    half,
  );
  const chosen = chooseBiscuit(draft, { edge: thick, wood, joint: length });
  if (!chosen) {
    if (!draft.snags.some((s) => s.code === 'pegs.none-suits' && s.where.record === box.id))
      draft.stop('pegs.none-suits', box, 'inMitres', ...whyNone(draft, box, thick), {
        says: 'Leave “inMitres” out: glue alone holds mitres that are folded up.',
      });
    return undefined;
  }
  return {
    chosen,
    down,
    under: l.ratio('as far square to the face', down, BISCUITS.downSlope),
    spare: l.less('wood left behind', wood, chosen.deep[0]),
  };
}

/** What is wrong with the biscuits of the rack, and what to do about it. */
function whyNone(draft: Draft, box: RecordOf<'case'>, thick: Traced): readonly [string, Cure] {
  const l = draft.ledger;
  const board = `boards of ${toMm(l.ticks(thick))} mm`;
  const biscuits = (draft.job.shop.rack.fixings ?? []).filter((f) => f.kind === 'biscuit');
  if (biscuits.length === 0)
    return [
      `The mitres of “${box.id}” are to have biscuits, and the rack has none.`,
      { says: 'Put biscuits as thick as the joiner’s slot among the rack’s fixings.' },
    ];
  const slot = cutterOf(draft).kerf;
  const goIn = biscuits.filter((f) => {
    const play = l.ticks(slot) - l.ticks(draft.typed(`shop/rack/fixings/${f.id}/thickness`, f.thickness));
    return play >= 0 && play <= l.ticks(l.row(BISCUITS.play));
  });
  return goIn.length > 0
    ? [
        `Every biscuit of the rack is too large for mitres in ${board}: its slot would come through, or leave too little wood behind it.`,
        { says: 'Put smaller biscuits among the rack’s fixings, or make the case of a thicker board.' },
      ]
    : [
        `No biscuit of the rack goes into the joiner’s slot of ${toMm(l.ticks(slot))} mm.`,
        { says: 'Put biscuits as thick as that slot among the rack’s fixings.' },
      ];
}

/** What the slots take up in both panels, as boxes round them, in ticks. */
function hollows(
  draft: Draft,
  corner: MitredCorner,
  { chosen, under }: OnSlope,
  place: number,
): readonly (readonly [part: string, hollow: Hollow])[] {
  const l = draft.ledger;
  const { at, sign } = innerArris(corner);
  const [x, z] = [l.ticks(at[0]) + sign[0] * l.ticks(under), l.ticks(at[2]) + sign[2] * l.ticks(under)];
  const reach = Math.ceil((l.ticks(chosen.deep[0]) + l.ticks(cutterOf(draft).kerf) / 2) * Math.SQRT1_2);
  const long = halfSlot(draft, chosen.deep[0]);
  const box: Hollow = {
    min: [x - reach, place - long, z - reach],
    max: [x + reach, place + long, z + reach],
  };
  return [
    [corner.side.id, box],
    [corner.flat.id, box],
  ];
}

function slot(
  draft: Draft,
  part: DraftPart,
  end: 'start' | 'end',
  mate: DraftPart,
  place: Traced,
  { chosen, down }: OnSlope,
  n: number,
): void {
  part.features.push({
    kind: 'biscuit-slot',
    id: `${part.id}#${mate.id}:${n}`,
    purpose: `biscuits into the ${mate.name}`,
    side: end,
    at: [inPart(draft, part, 1, place, `place along the mitre of the ${part.name}`), down],
    run: 'width',
    slopeFrom: innerFace(part, end),
    depth: chosen.deep[0],
    ...cutterOf(draft),
  });
}
