import type { RecordOf } from '../../job/index.ts';
import { DOORS, SETTING_OUT } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { CasePanels } from '../case/case-panels.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import { liesUnderTop } from '../case/inside-group.ts';
import type { Top } from '../case/top.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { type Extent, edgeFront, edgesOf, edgingLeavesNothing, insideEdges } from '../edging/edged-front.ts';
import type { Bores } from '../joints/bores.ts';
import type { ClosedSpaces } from '../spaces/closed-spaces.ts';
import type { Parting, Space } from '../spaces/openings.ts';
import { hangFlap } from './flap.ts';
import { hangOnHinges } from './hinges.ts';
import { leftLarger } from './left-larger.ts';

/** What doors are hung between. */
export interface Hangable {
  readonly frame: CaseFrame;
  readonly panels: CasePanels;
  readonly closed: ClosedSpaces;
  readonly partings: readonly Parting[];
  /** An applied top, which closes it above. */
  readonly top: Top | undefined;
}

/** What a door covers, seen from the front: its edges in the piece, and what bounds the opening. */
interface Cover {
  readonly left: Traced;
  readonly right: Traced;
  readonly lower: Traced;
  readonly upper: Traced;
  readonly first: Space;
  readonly last: Space;
}

/** Makes the doors of a case and bores what their hinges need. */
export function hangDoors(draft: Draft, bores: Bores, parts: Hangable): void {
  for (const door of parts.frame.doors) hangDoor(draft, bores, parts, door);
}

function hangDoor(draft: Draft, bores: Bores, parts: Hangable, door: RecordOf<'door'>): void {
  const l = draft.ledger;
  const spaces = door.over.map((id) => parts.closed.get(id));
  // An opening that could not be set out has said so itself.
  if (!spaces.every((s) => s !== undefined)) return;
  const order = [...spaces].sort(
    (a, b) => l.ticks(a.at[0]) - l.ticks(b.at[0]) || l.ticks(a.at[2]) - l.ticks(b.at[2]),
  );
  const first = order[0]!;
  const last = order.at(-1)!;
  const gap =
    door.gap === undefined
      ? l.row(door.hang === 'inset' ? DOORS.insetGap : DOORS.overlayGap)
      : draft.field(door, 'gap');
  const cover =
    door.hang === 'inset'
      ? insideOpening(draft, first, last, gap)
      : overEdges(draft, parts, first, last, gap);
  const lot = draft.lot(door.board);
  const thickness = draft.thickness(lot);
  const count = door.count ?? 1;
  const height = l.less('height of the door', cover.upper, cover.lower);
  const all = l.less('width of all that is closed', cover.right, cover.left);
  const free = count === 1 ? all : l.less('width of both doors, less the gap between', all, gap);
  const widths =
    count === 1 ? [free] : [0, 1].map((i) => l.share('half for each of the pair', free, [1, 1], i));
  if (![height, ...widths].every((t) => draft.isSome(t))) {
    noRoom(draft, door);
    return;
  }
  const back = l.less('back of the door', parts.frame.front, l.row(DOORS.standOff));
  const front = door.hang === 'inset' ? parts.frame.front : l.less('front of the door', back, thickness);
  const opening = {
    width: l.less(
      'clear width of what the door closes',
      l.sum('right end of the opening', last.at[0], last.size[0]),
      first.at[0],
    ),
    height: l.less(
      'clear height of what the door closes',
      l.sum('upper end of the opening', last.at[2], last.size[2]),
      first.at[2],
    ),
  };
  const edges = edgesOf(draft, door.id);
  widths.forEach((width, i) => {
    const hand = door.hand ?? 'left';
    const flap = hand === 'above' || hand === 'below' ? hand : undefined;
    const hung = count === 2 ? (i === 0 ? 'left' : 'right') : hand === 'right' ? 'right' : 'left';
    const x = i === 0 ? cover.left : l.sum('left edge of the right door', cover.left, widths[0]!, gap);
    const whole: Extent = { at: [x, front, cover.lower], size: [width, thickness, height] };
    const inside = insideEdges(draft, edges, whole);
    const [boardWidth, , boardHeight] = inside.size;
    if (![boardWidth, boardHeight].every((t) => draft.isSome(t))) {
      if (edges) edgingLeavesNothing(draft, 'doors.no-room', edges, `“${door.id}”`);
      else noRoom(draft, door);
      return;
    }
    const part = draft.panel({
      record: door.id,
      role: count === 1 ? 'door' : `${hung}-door`,
      name: `${count === 1 ? 'door' : `${hung} door`} of ${door.over[0]}`,
      family: 'door',
      lot,
      ...inside,
      length: '+z',
      // The show face looks to the front.
      width: '-x',
      between: door.hang === 'inset',
      ...(door.hang === 'inset' ? leftLarger(draft, boardWidth, boardHeight, thickness) : {}),
    });
    edgeFront(draft, edges, part, whole);
    if (flap) {
      const above = last.above ?? parts.top?.board;
      const on = flap === 'below' ? first.below : above;
      if (on)
        hangFlap(draft, {
          door,
          part,
          hung: flap,
          post: on,
          below: first.below,
          beside: first.left,
          gap,
          opening,
        });
      return;
    }
    const post = hung === 'left' ? first.left : last.right;
    hangOnHinges(draft, bores, {
      door,
      part,
      hung,
      post,
      below: first.below,
      outer: isOuter(parts, post),
      gap,
      opening,
      frontOfCase: parts.frame.front,
      shelves: lyingParts(parts),
    });
  });
}

/** True for a side that only this case closes on: its doors cover the whole edge of it. */
function isOuter({ panels, frame }: Pick<Hangable, 'frame' | 'panels'>, post: DraftPart): boolean {
  return (['left', 'right'] as const).some((hand) => post === panels[hand] && !frame.sides[hand].shared);
}

function lyingParts(parts: Hangable): readonly DraftPart[] {
  return parts.partings.filter((p) => !p.upright && !p.behind).map((p) => p.part);
}

/** An inset door: the opening less the gap all round. */
function insideOpening(draft: Draft, first: Space, last: Space, gap: Traced): Cover {
  const l = draft.ledger;
  const right = l.sum('right end of the opening', last.at[0], last.size[0]);
  const upper = l.sum('upper end of the opening', last.at[2], last.size[2]);
  return {
    left: l.sum('left edge of the door', first.at[0], gap),
    right: l.less('right edge of the door', right, gap),
    lower: l.sum('lower edge of the door', first.at[2], gap),
    upper: l.less('upper edge of the door', upper, gap),
    first,
    last,
  };
}

/**
 * An overlay door: out to half the gap from the case's own outer edges, to half the gap from the middle of what
 * parts two openings, and the whole gap under a top.
 */
export function overEdges(
  draft: Draft,
  parts: Pick<Hangable, 'frame' | 'panels'>,
  first: Space,
  last: Space,
  gap: Traced,
): Cover {
  const l = draft.ledger;
  const { panels, frame } = parts;
  const half = l.ratio('half the gap', gap, SETTING_OUT.half);
  const middle = (part: DraftPart, axis: 0 | 2) =>
    l.sum(
      'middle of what parts the openings',
      part.box.min[axis],
      l.ratio('half its thickness', part.thickness, SETTING_OUT.half),
    );
  const onFloor = l.ticks(frame.under) === 0;
  const lower =
    first.below !== panels.bottom
      ? l.sum('lower edge of the door', middle(first.below, 2), half)
      : l.sum(
          'lower edge of the door',
          frame.under,
          onFloor ? l.greatest('clear of the floor', half, l.row(DOORS.floorClear)) : half,
        );
  const upper =
    last.above === undefined
      ? l.less('upper edge of the door, under the top', frame.head, gap)
      : last.above === panels.lid
        ? l.less(
            'upper edge of the door',
            frame.head,
            frame.top || liesUnderTop(draft, frame.box) ? gap : half,
          )
        : l.less('upper edge of the door', middle(last.above, 2), half);
  return {
    left: isOuter(parts, first.left)
      ? l.sum('left edge of the door', frame.left, half)
      : l.sum('left edge of the door', middle(first.left, 0), half),
    right: isOuter(parts, last.right)
      ? l.less('right edge of the door', frame.right, half)
      : l.less('right edge of the door', middle(last.right, 0), half),
    lower,
    upper,
    first,
    last,
  };
}

function noRoom(draft: Draft, door: RecordOf<'door'>): void {
  draft.stop('doors.no-room', door, 'gap', `The gaps round “${door.id}” leave nothing of it.`, {
    says: 'Make its opening larger, or the gap smaller.',
  });
}
