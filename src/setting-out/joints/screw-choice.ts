import type { Screw } from '../../job/index.ts';
import { FACE_SCREWS, POCKET_HOLE, SCREW_RULES, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { Draft } from '../draft.ts';
import { onceADraft } from '../once-a-draft.ts';

/** A screw that fits both thicknesses, with its traced sizes. */
export interface ChosenScrew {
  readonly screw: Screw;
  readonly length: Traced;
  readonly diameter: Traced;
  readonly head: Traced;
}

/** The screws of a kind that the shop owns or can buy: those on the rack first, and of them the longest. */
const sizedScrews = onceADraft((draft, kind: Screw['kind']): readonly ChosenScrew[] =>
  draft.job.shop.rack.screws
    .filter((s) => s.kind === kind)
    .map((screw) => {
      const size = (field: 'length' | 'diameter' | 'head') =>
        draft.typed(`shop/rack/screws/${screw.id}/${field}`, screw[field]);
      return { screw, length: size('length'), diameter: size('diameter'), head: size('head') };
    })
    .sort(
      (a, b) =>
        Number(isOwned(b)) - Number(isOwned(a)) ||
        draft.ledger.ticks(b.length) - draft.ledger.ticks(a.length) ||
        (a.screw.id < b.screw.id ? -1 : 1),
    ),
);

function isOwned({ screw }: ChosenScrew): boolean {
  return (screw.have ?? 0) > 0;
}

/** The longest screw of a kind on the shop's list that passes `fits`; those on the rack come before those to buy. */
function longestScrew(
  draft: Draft,
  kind: Screw['kind'],
  fits: (length: number, diameter: number) => boolean,
): ChosenScrew | undefined {
  const l = draft.ledger;
  return sizedScrews(draft, kind).find((s) => fits(l.ticks(s.length), l.ticks(s.diameter)));
}

/**
 * The pocket screw for a board of one thickness driven into another: as long as may be without coming closer to
 * the far face than the trade allows, and at most about twice the board's thickness. Boards under 12 mm take none.
 * @param beside how far the other reaches beside the middle of the board, on the side that the screw leans to, in ticks
 */
export function pocketScrew(
  draft: Draft,
  board: Traced,
  mate: Traced,
  beside = Number.POSITIVE_INFINITY,
): ChosenScrew | undefined {
  const l = draft.ledger;
  const seat = l.ticks(board);
  if (seat < POCKET_HOLE.thinnest.value) return undefined;
  const [over, under] = SETTING_OUT.pocketLean.of;
  const deepest = l.ticks(mate) - l.ticks(l.row(SETTING_OUT.farFace));
  const leastHold = l.ticks(l.row(SETTING_OUT.leastHold));
  const [aside, per] = SETTING_OUT.pocketDrift.of;
  return longestScrew(draft, 'pocket', (length, diameter) => {
    const holds = ((length - seat) * over) / under;
    const drifts = ((length - seat) * aside) / per + diameter / 2;
    return holds <= deepest && holds >= leastHold && length <= 2 * seat && drifts <= beside;
  });
}

/** The longest countersunk screw through one board flat onto another, clear of the second's far face. */
export function faceScrew(draft: Draft, board: Traced, mate: Traced): ChosenScrew | undefined {
  const l = draft.ledger;
  const [under, into] = [l.ticks(board), l.ticks(mate)];
  const least = under + l.ticks(l.row(SETTING_OUT.leastHold));
  const most = under + into - l.ticks(l.row(SETTING_OUT.farFace));
  return longestScrew(draft, 'countersunk', (length) => length >= least && length <= most);
}

/** What a screw through a face is chosen by: the wood under its head, and the edge it goes into. */
interface IntoEdge {
  readonly under: Traced;
  /** Thickness of the edge, and how far it goes in. */
  readonly edge: Traced;
  readonly depth: Traced;
  /** The widest head that goes under a plug; a countersunk one sinks into the face instead. */
  readonly mostHead?: Traced;
}

/**
 * The countersunk screw through a panel's face into another's edge: of those that are thin enough for the edge, whose
 * head doesn't sink through the face, and that stay clear of the far side, the shortest with two thirds of its length
 * in the edge, or else the longest. Those on the rack come first.
 */
export function edgeScrew(draft: Draft, { under, edge, depth, mostHead }: IntoEdge): ChosenScrew | undefined {
  const l = draft.ledger;
  const t = (x: Traced) => l.ticks(x);
  const least = t(under) + t(l.row(SETTING_OUT.leastHold));
  const most = Math.min(t(under) + t(depth) - t(l.row(SETTING_OUT.farFace)), t(under) + 4 * t(edge));
  const skin = t(l.row(FACE_SCREWS.underHead));
  const fitting = sizedScrews(draft, 'countersunk').filter(
    (s) =>
      t(s.length) >= least &&
      t(s.length) <= most &&
      isThinEnough(draft, t(s.diameter), edge) &&
      (mostHead === undefined
        ? (t(s.head) - t(s.diameter)) / 2 + skin <= t(under)
        : t(s.head) <= t(mostHead)),
  );
  const [share, of] = FACE_SCREWS.penetration.of;
  const holdsWell = (s: ChosenScrew) => of * (t(s.length) - t(under)) >= share * t(s.length);
  fitting.sort((a, b) => {
    const [wellA, wellB] = [holdsWell(a), holdsWell(b)];
    return (
      Number(isOwned(b)) - Number(isOwned(a)) ||
      Number(wellB) - Number(wellA) ||
      (wellA ? t(a.length) - t(b.length) : t(b.length) - t(a.length)) ||
      t(b.diameter) - t(a.diameter) ||
      (a.screw.id < b.screw.id ? -1 : 1)
    );
  });
  return fitting[0];
}

function isThinEnough(draft: Draft, diameter: number, edge: Traced): boolean {
  const [over, under] = SCREW_RULES.edgeThickest.of;
  return under * diameter <= over * draft.ledger.ticks(edge);
}

/**
 * The longest screw through one panel into another that lies on it, no thicker than `thickest` (ticks): it holds there, and
 * doesn't come through.
 */
export function connectingScrew(
  draft: Draft,
  first: Traced,
  second: Traced,
  thickest = Number.POSITIVE_INFINITY,
): ChosenScrew | undefined {
  const l = draft.ledger;
  const least = l.ticks(first) + l.ticks(l.row(SETTING_OUT.leastHold));
  const most = l.ticks(first) + l.ticks(second) - l.ticks(l.row(SETTING_OUT.farFace));
  return longestScrew(
    draft,
    'countersunk',
    (length, diameter) => length >= least && length <= most && diameter <= thickest,
  );
}
