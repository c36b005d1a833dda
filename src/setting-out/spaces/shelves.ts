import type { RecordOf } from '../../job/index.ts';
import { ABOVE_ROW, rowHeld } from '../../materials/index.ts';
import { toMm } from '../../measure/index.ts';
import type { CaseFrame } from '../case/frame-of-case.ts';
import type { Draft, DraftPart, Triple } from '../draft.ts';
import { intoDado, lengthened } from '../joints/let-in.ts';
import { loadSurface, type Parting, type Space } from './openings.ts';

/** The fixed shelves of an opening, each between its left and right neighbour. */
export function fixedShelves(draft: Draft, frame: CaseFrame, space: Space, partings: Parting[]): void {
  const records = draft.tree.childrenOf(space.record.id, 'shelf');
  for (const record of records) {
    const shelves =
      record.at !== undefined
        ? [atHeight(draft, frame, space, record)]
        : record.rowOf !== undefined
          ? aboveRows(draft, frame, space, record)
          : spaced(draft, frame, space, record);
    for (const part of shelves) {
      if (!part) continue;
      partings.push({
        part,
        upright: false,
        behind: space.behind ?? false,
        from: space.left,
        to: space.right,
        space,
      });
      loadSurface(draft, part, space.size[0], part.width, record.load, record);
    }
  }
}

function spaced(
  draft: Draft,
  frame: CaseFrame,
  space: Space,
  record: RecordOf<'shelf'>,
): (DraftPart | undefined)[] {
  const l = draft.ledger;
  const count = record.count ?? 1;
  const thickness = draft.thickness(draft.lot(record.board ?? frame.box.board));
  const clear = l.less(
    'clear height to share among the spaces',
    space.size[2],
    l.times('all shelves together', thickness, count),
  );
  // Every space above and below a shelf is a tick at least.
  if (l.ticks(clear) <= count) {
    draft.stop('shelves.no-room', record, 'count', `${count} shelves don’t fit in “${space.record.id}”.`, {
      says: 'Have fewer shelves.',
      edits: [{ record: record.id, field: 'count', value: 1 }],
    });
    return [];
  }
  const weights = Array.from({ length: count + 1 }, () => 1);
  let under = space.at[2];
  return Array.from({ length: count }, (_, i) => {
    const z = l.sum('underside of the shelf', under, l.share('an equal space', clear, weights, i));
    under = l.sum('upper face of the shelf', z, thickness);
    return shelfPart(draft, frame, space, record, z, count > 1 ? i + 1 : undefined);
  });
}

/** Shelves from below, each so high above the one under it that a row of something goes in between. */
function aboveRows(
  draft: Draft,
  frame: CaseFrame,
  space: Space,
  record: RecordOf<'shelf'>,
): (DraftPart | undefined)[] {
  const l = draft.ledger;
  const count = record.count ?? 1;
  const thickness = draft.thickness(draft.lot(record.board ?? frame.box.board));
  const held = rowHeld(record.rowOf!);
  const clear = l.round(
    'as fine as lengths are marked',
    l.sum('row and the room above it', l.row(held.height), l.row(ABOVE_ROW)),
    draft.stepOf('marking'),
    'up',
  );
  const all = l.times('all spaces and shelves', l.sum('space and shelf', clear, thickness), count);
  if (l.ticks(all) >= l.ticks(space.size[2])) {
    const fit = Math.floor((l.ticks(space.size[2]) - 1) / (l.ticks(clear) + l.ticks(thickness)));
    draft.stop(
      'shelves.no-room',
      record,
      'rowOf',
      `${count > 1 ? `${count} shelves` : 'A shelf'} for ${held.says}, ${toMm(l.ticks(clear))} mm clear each, don’t fit in “${space.record.id}”.`,
      fit > 0
        ? { says: 'Have fewer shelves.', edits: [{ record: record.id, field: 'count', value: fit }] }
        : { says: 'Make the opening higher, or the shelf for something lower.' },
    );
    return [];
  }
  let under = space.at[2];
  return Array.from({ length: count }, (_, i) => {
    const z = l.sum('underside of the shelf, above the row', under, clear);
    under = l.sum('upper face of the shelf', z, thickness);
    return shelfPart(draft, frame, space, record, z, count > 1 ? i + 1 : undefined);
  });
}

function atHeight(
  draft: Draft,
  frame: CaseFrame,
  space: Space,
  record: RecordOf<'shelf'>,
): DraftPart | undefined {
  const l = draft.ledger;
  const thickness = draft.thickness(draft.lot(record.board ?? frame.box.board));
  const at = draft.field(record, 'at');
  const above = l.less('clear height above the shelf', space.size[2], at, thickness);
  if (l.ticks(above) <= 0) {
    draft.stop('shelves.no-room', record, 'at', `“${record.id}” would stand above its opening.`, {
      says: 'Set it lower, or leave “at” out to have it in the middle.',
    });
    return undefined;
  }
  return shelfPart(draft, frame, space, record, l.sum('underside of the shelf', space.at[2], at), undefined);
}

function shelfPart(
  draft: Draft,
  frame: CaseFrame,
  space: Space,
  record: RecordOf<'shelf'>,
  z: Triple[2],
  n: number | undefined,
): DraftPart | undefined {
  const l = draft.ledger;
  const lot = draft.lot(record.board ?? frame.box.board);
  const setback = draft.field(record, 'setback');
  const depth = l.less('depth of the shelf', space.size[1], setback);
  // A shelf less deep than it is thick is a strip on edge: no screw, peg or bit of these joints is made for it.
  if (l.ticks(depth) < l.ticks(draft.thickness(lot))) {
    draft.stop(
      'shelves.no-depth',
      record,
      'setback',
      l.ticks(depth) <= 0
        ? `“${record.id}” has no depth left.`
        : `“${record.id}” would be ${toMm(l.ticks(depth))} mm deep, less than its board is thick.`,
      l.ticks(setback) > 0
        ? { says: 'Set it back less.' }
        : { says: 'Make the case deeper, or the space behind it shallower.' },
    );
    return undefined;
  }
  const tongues = { start: intoDado(draft, frame, space.left), end: intoDado(draft, frame, space.right) };
  return draft.panel({
    record: record.id,
    role: n === undefined ? 'shelf' : `shelf:${n}`,
    name: `${n === undefined ? 'shelf' : `shelf ${n}`}${frame.alone && draft.tree.get(space.record.parent)?.kind === 'case' ? '' : ` in ${space.record.id}`}`,
    family: 'shelf',
    lot,
    ...lengthened(
      draft,
      [space.at[0], l.sum('front of the shelf', space.at[1], setback), z],
      [space.size[0], depth, draft.thickness(lot)],
      0,
      tongues,
    ),
    tongues,
    length: '+x',
    width: '+y',
    between: true,
  });
}
