import type { RecordOf } from '../../job/index.ts';
import { FIT_LIMITS, LOOSE_SHELVES } from '../../materials/index.ts';
import type { Traced } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart } from '../draft.ts';
import { betweenOf, type ClearLoops } from '../fits/clear-loops.ts';
import { addFit, cut } from '../fits/fit.ts';
import type { Bores } from '../joints/bores.ts';
import type { Space } from '../spaces/openings.ts';
import { type ChosenPin, choosePin } from './pin-choice.ts';
import { type PinRows, pinHoles } from './pin-holes.ts';
import { edgeOf, edgeShelf } from './shelf-edging.ts';

/** The loose shelves of an opening and the holes for their pins, clear of all that is bored already. */
export function pinnedShelves(
  draft: Draft,
  frame: CaseFrame,
  bores: Bores,
  space: Space,
  loops: ClearLoops,
): void {
  const record = draft.tree.childOf(space.record.id, 'pins');
  if (!record) return;
  if (space.above !== undefined && draft.tree.childOf(frame.box.id, 'front')) {
    draft.stop(
      'pins.shut-in',
      record,
      'count',
      `Nobody could put the shelves of “${record.id}” on their pins: the case is closed in front, and from above the ${space.above.name} is in the way.`,
      { says: 'Use fixed shelves there, or take the fixed front away and hang doors.' },
    );
    return;
  }
  const pin = choosePin(draft, space, record);
  if (!pin) return;
  const board = plate(draft, frame, space, record, pin);
  if (!board) return;
  const bored = pinHoles(draft, bores, space, record, pin);
  if (!bored) return;
  if (!liesOnBothRows(draft, board, bored, pin)) {
    draft.stop('pins.no-room', record, 'setback', `The shelves of “${record.id}” don’t reach their pins.`, {
      says: 'Set the shelves back less, or the front row of holes further back.',
    });
    return;
  }
  for (const part of layShelves(draft, frame, space, record, pin, board, bored))
    fitOfShelf(draft, space, pin, part, loops);
}

/** A loose shelf as it lies in plan: left, front, length and depth. */
interface Plate {
  readonly at: readonly [Traced, Traced];
  readonly size: readonly [Traced, Traced];
  readonly clearance: Traced;
}

function plate(
  draft: Draft,
  frame: CaseFrame,
  space: Space,
  record: RecordOf<'pins'>,
  pin: ChosenPin,
): Plate | undefined {
  const l = draft.ledger;
  const clearance =
    record.clearance === undefined ? l.row(LOOSE_SHELVES.clearance) : draft.field(record, 'clearance');
  // Pushed against one upright, it must still lie on the pins of the other.
  const bearing = l.ticks(pin.stands) - 2 * l.ticks(clearance);
  if (bearing < l.ticks(l.row(LOOSE_SHELVES.bearing))) {
    draft.stop(
      'pins.shelf-falls',
      record,
      'clearance',
      `The shelves of “${record.id}” are so short that they would slip off “${pin.pin.id}”.`,
      { says: 'Leave less clearance, or use pins that stand out further.' },
    );
    return undefined;
  }
  const asked = draft.field(record, 'setback');
  // Behind a fixed front they come from above, and must pass it.
  const setback = draft.tree.childOf(frame.box.id, 'front')
    ? l.greatest('clear of the fixed front, or as far back as asked', asked, l.row(LOOSE_SHELVES.behind))
    : asked;
  const edge = edgeOf(draft, record);
  const length = l.less('length of the loose shelf', space.size[0], clearance, clearance);
  const behind = [setback, ...(edge ? [edge.thickness] : []), l.row(LOOSE_SHELVES.behind)];
  const depth = l.less('depth of the loose shelf', space.size[1], ...behind);
  const thickness = draft.thickness(draft.lot(record.board ?? frame.box.board));
  if (l.ticks(length) <= 2 * l.ticks(thickness) || l.ticks(depth) <= 2 * l.ticks(thickness)) {
    draft.stop('pins.no-room', record, 'setback', `“${space.record.id}” leaves too little of its shelves.`, {
      says: 'Set the shelves back less, or make the opening larger.',
    });
    return undefined;
  }
  return {
    at: [
      l.sum('left end of the loose shelf', space.at[0], clearance),
      l.sum(
        edge ? 'front of the loose shelf, behind its edging' : 'front of the loose shelf',
        space.at[1],
        setback,
        ...(edge ? [edge.thickness] : []),
      ),
    ],
    size: [length, depth],
    clearance,
  };
}

/** True when a shelf lies on the whole of its pins, at the front and at the back. */
function liesOnBothRows(draft: Draft, board: Plate, { rows }: PinRows, pin: ChosenPin): boolean {
  const l = draft.ledger;
  const half = l.ticks(pin.diameter) / 2;
  const front = l.ticks(board.at[1]);
  return l.ticks(rows[0]) - half >= front && l.ticks(rows[1]) + half <= front + l.ticks(board.size[1]);
}

/** Lays the shelves at the levels that part the opening most evenly. */
function layShelves(
  draft: Draft,
  frame: CaseFrame,
  space: Space,
  record: RecordOf<'pins'>,
  pin: ChosenPin,
  board: Plate,
  bored: PinRows,
): readonly DraftPart[] {
  const l = draft.ledger;
  const lot = draft.lot(record.board ?? frame.box.board);
  const thickness = draft.thickness(lot);
  const levels = spread(draft, space, record.count ?? 1, l.ticks(thickness) + l.ticks(pin.above), bored);
  if (!levels) {
    draft.stop(
      'pins.no-level',
      record,
      'count',
      `The free levels of “${record.id}” are too few for its shelves.`,
      { says: 'Have fewer shelves, or let the holes begin lower and end higher.' },
    );
    return [];
  }
  const loadKg = draft.mass(record.load);
  return levels.map((level, i) => {
    const under = l.sum('underside of the loose shelf, on its pins', bored.levels[level]!, pin.above);
    const n = levels.length > 1 ? i + 1 : undefined;
    const part = draft.panel({
      record: record.id,
      role: n === undefined ? 'shelf' : `shelf:${n}`,
      name: `loose shelf${n === undefined ? '' : ` ${n}`}${draft.tree.get(space.record.parent)?.kind === 'case' ? '' : ` in ${space.record.id}`}`,
      family: 'loose shelf',
      lot,
      at: [board.at[0], board.at[1], under],
      size: [board.size[0], board.size[1], thickness],
      length: '+x',
      width: '+y',
      between: true,
    });
    edgeShelf(draft, record, part);
    draft.surfaces.push({
      part: part.id,
      span: space.size[0],
      depth: part.width,
      ends: 'resting',
      ...(loadKg === undefined ? {} : { loadKg }),
      record: record.id,
    });
    draft.pinned.push({
      part: part.id,
      record: record.id,
      pin: pin.pin.id,
      pins: 4,
      posts: [space.left.id, space.right.id],
      below: space.below.id,
      hole: { diameter: pin.diameter, depth: pin.deep },
      above: pin.above,
      level: level + 1,
      height: l.less('clear height below the loose shelf', under, space.at[2]),
      clearance: board.clearance,
      opening: space.size[0],
    });
    return part;
  });
}

/** A loose shelf between its uprights: it goes in by hand, and can't slip off the pins of one side. */
function fitOfShelf(draft: Draft, space: Space, pin: ChosenPin, part: DraftPart, loops: ClearLoops): void {
  const l = draft.ledger;
  addFit(draft, {
    id: `${part.id}/length`,
    kind: 'shelf',
    name: `the ${part.name} between its uprights`,
    gap: l.less('room endways', space.size[0], part.length),
    least: l.row(FIT_LIMITS.looseShelf),
    most: l.less(
      'as far as it may slide and still lie on its pins',
      pin.stands,
      l.row(LOOSE_SHELVES.bearing),
    ),
    loop: [...loops.of(betweenOf('width', space)), cut(draft, part, 'length', -1)],
    toFit: part.id,
  });
}

/** Levels nearest to equal spaces, rising, a hand's room between; undefined when there are too few. */
function spread(
  draft: Draft,
  space: Space,
  count: number,
  high: number,
  { levels }: PinRows,
): readonly number[] | undefined {
  const l = draft.ledger;
  const foot = l.ticks(space.at[2]);
  const whole = l.ticks(space.size[2]);
  const room = high + l.ticks(l.row(LOOSE_SHELVES.between));
  const chosen: number[] = [];
  let least: number = foot;
  for (let n = 1; n <= count; n++) {
    const ideal = foot + (whole * n) / (count + 1);
    // What is still to come above needs its room too.
    const most = foot + whole - (count - n + 1) * room;
    const fitting = levels.map((z, i) => ({ i, z: l.ticks(z) })).filter(({ z }) => z >= least && z <= most);
    if (fitting.length === 0) return undefined;
    const best = fitting.reduce((a, b) => (Math.abs(b.z - ideal) < Math.abs(a.z - ideal) ? b : a));
    chosen.push(best.i);
    least = best.z + room;
  }
  return chosen;
}
