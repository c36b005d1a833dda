import type { RecordOf } from '../../job/index.ts';
import { INDOORS, movementBetween, SETTING_OUT } from '../../materials/index.ts';
import { type RatioRow, type Traced, toMm } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { bitAtLeast } from '../joints/bit-choice.ts';
import type { ChosenScrew } from '../joints/screw-choice.ts';
import { clearanceHole } from '../joints/screw-holes.ts';

/** How much a top moves across its grain; undefined where it is no solid wood, or of one whose movement isn’t known. */
export function movementOfTop(draft: Draft, top: RecordOf<'top'> | undefined): RatioRow | undefined {
  // One that is hinged moves as it likes.
  if (!top || top.hinged) return undefined;
  const [room] = draft.tree.all('room');
  const { material } = draft.lot(top.board);
  return movementBetween(material, room?.dryest ?? INDOORS.dryest, room?.dampest ?? INDOORS.dampest);
}

/** Tells that a top of solid wood between two sides is held at both of its ends. */
export function heldAcrossGrain(draft: Draft, top: RecordOf<'top'>): void {
  if (!movementOfTop(draft, top)) return;
  draft.snags.push({
    code: 'top.held-across-grain',
    level: 'mind',
    where: { path: `design/records/${top.id}/fit`, record: top.id },
    sentence: `“${top.id}” is of solid wood and held at both ends between sides that don’t move with it: it may crack, or open its joints.`,
    rule: {
      says: 'nothing holds a wide board of solid wood all across its grain',
      source: 'common practice',
      confirmed: true,
    },
    cures: [
      {
        says: 'Lay it on the case, where it is free to move.',
        edits: [{ record: top.id, field: 'fit', value: 'applied' }],
      },
      { says: 'Make it of a panel, which hardly moves.' },
    ],
  });
}

/** The room in which a screw goes with the wood it holds, and the washer under its head. */
export interface RoomToMove {
  /** Of a round hole; of a slot, how wide it is. */
  readonly diameter: Traced;
  /** Of a slot, from end to end across the grain. */
  readonly long?: Traced;
  readonly washer: string;
  readonly washerWidth: Traced;
}

/**
 * The hole or slot for a screw so far behind the ones that hold the top fast. A hole is wider by all that the top moves
 * there, as the screw stands in the middle of it at first; a slot has as much on either side of its screw, whatever season it is driven
 * in. Undefined where no washer covers it (a stop says so).
 */
export function roomToMove(
  draft: Draft,
  top: RecordOf<'top'>,
  movement: RatioRow,
  screw: ChosenScrew,
  behind: Traced,
): RoomToMove | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const moves = l.ratio('how much the top moves there', behind, movement);
  const slotted = top.moves === 'slots';
  const diameter = slotted ? slotWidth(draft, screw) : holeWidth(draft, screw, moves);
  const rim = t(l.row(SETTING_OUT.washerRim));
  // Pushed to one side of a hole it still lies on wood all round; a slot it bridges wherever it stands.
  const covers = t(diameter) + rim + (slotted ? 0 : t(moves));
  const size = (id: string, field: 'diameter' | 'width', text: string) =>
    draft.typed(`shop/rack/fixings/${id}/${field}`, text);
  const washer = (draft.job.shop.rack.fixings ?? [])
    .filter((f) => f.kind === 'washer')
    .map((f) => ({
      id: f.id,
      owned: (f.have ?? 0) > 0,
      hole: t(size(f.id, 'diameter', f.diameter)),
      wide: size(f.id, 'width', f.width),
    }))
    .filter((w) => w.hole >= t(screw.diameter) && w.hole < t(screw.head) && t(w.wide) >= covers)
    .sort((a, b) => Number(b.owned) - Number(a.owned) || t(a.wide) - t(b.wide) || (a.id < b.id ? -1 : 1))[0];
  if (washer)
    return {
      diameter,
      ...(slotted
        ? {
            long: l.round(
              'to the next whole step',
              l.sum('slot in which the screw moves with the top', diameter, moves, moves),
              l.row(SETTING_OUT.setStep),
              'up',
            ),
          }
        : {}),
      washer: washer.id,
      washerWidth: washer.wide,
    };
  const mm = (ticks: number) => Math.ceil(toMm(ticks) * 10) / 10;
  if (!draft.snags.some((s) => s.code === 'top.no-washer' && s.where.record === top.id))
    draft.stop(
      'top.no-washer',
      top,
      'board',
      `“${top.id}” is of solid wood and moves ${mm(t(moves))} mm at its back, so its screws stand in ${slotted ? 'slots' : 'wide holes'} there; no washer of the rack covers them.`,
      {
        says: `Put washers of at least ${mm(covers)} mm, for screws of ${mm(t(screw.diameter))} mm, among the rack’s fixings.`,
      },
      { says: 'Make the top of a panel, which hardly moves.' },
    );
  return undefined;
}

function holeWidth(draft: Draft, screw: ChosenScrew, moves: Traced): Traced {
  const l = draft.ledger;
  const wanted = l.round(
    'to the next bit',
    l.sum('hole in which the screw moves with the top', clearanceHole(draft, screw), moves),
    l.row(SETTING_OUT.bitStep),
    'up',
  );
  return bitAtLeast(draft, 'twist', wanted, l.row(SETTING_OUT.washerRim));
}

/** As wide as the narrowest straight bit that lets the screw pass; in whole millimetres where the shop has none. */
function slotWidth(draft: Draft, { diameter }: ChosenScrew): Traced {
  const l = draft.ledger;
  const wanted = l.round(
    'to the next whole step',
    l.sum('slot that the screw passes', diameter, l.row(SETTING_OUT.clearanceExtra)),
    l.row(SETTING_OUT.setStep),
    'up',
  );
  return bitAtLeast(draft, 'straight', wanted, l.row(SETTING_OUT.washerRim));
}
