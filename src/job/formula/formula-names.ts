import type { JobDocument } from '../document.ts';
import type { DesignRecord, RecordKind, RecordOf } from '../records/design-record.ts';
import { RecordTree } from '../tree.ts';
import { FUNCTIONS } from './formula.ts';

/** What a name in a formula stands for. */
export type NamedSize =
  /** The size typed in a field of a record. */
  | { readonly is: 'field'; readonly record: string; readonly field: string }
  /** A clear size of an opening. */
  | { readonly is: 'clear'; readonly opening: string; readonly size: ClearSize }
  /** What a lot measures. */
  | { readonly is: 'thickness'; readonly lot: string; readonly of: RecordKind }
  /** What a room measures: the least of several measures, or the greatest of its widths. */
  | { readonly is: 'room'; readonly record: string; readonly size: RoomSize }
  /** What a doorway measures, or the least of all on the way home. */
  | { readonly is: 'doorway'; readonly doors: readonly string[]; readonly size: DoorwaySize };

/** `widest` is the greatest width; the others are the least. */
export type RoomSize = ClearSize | 'widest';

/** `through` is how wide a thing goes through upright: the width, less room for hands on both sides. */
export type DoorwaySize = 'width' | 'height' | 'through';

export type ClearSize = 'width' | 'height' | 'depth';

const SIZES: readonly ClearSize[] = ['width', 'height', 'depth'];

/** Words that already mean something in a formula: no size can have one of them for its name. */
export const TAKEN: ReadonlySet<string> = new Set([
  ...SIZES,
  ...Object.keys(FUNCTIONS),
  ...['mm', 'cm', 'm', 'in', 'inch', 'inches', 'ft', 'foot', 'feet'],
  'equal',
]);

/**
 * Every name that a formula of the design may use: the overall `width`, `height` and `depth`; the maker's own; `bay1.width`
 * of an opening; `case.thickness` of what is made of a board; `doorway.width` of the way home. Where a record and a door
 * have one name, it is the record's.
 */
export function formulaNames(job: JobDocument): ReadonlyMap<string, NamedSize> {
  const names = new Map<string, NamedSize>();
  const { records } = job.design;
  const tree = new RecordTree(records);
  const { piece } = tree;
  if (piece) for (const field of SIZES) names.set(field, { is: 'field', record: piece.id, field });
  for (const r of records) {
    if (r.kind === 'size' && !names.has(r.id)) names.set(r.id, { is: 'field', record: r.id, field: 'value' });
    if (r.kind === 'opening')
      for (const size of SIZES) names.set(`${r.id}.${size}`, { is: 'clear', opening: r.id, size });
    if (r.kind === 'thing')
      for (const field of [...SIZES, 'clear', 'behind'] as const)
        if (r[field] !== undefined) names.set(`${r.id}.${field}`, { is: 'field', record: r.id, field });
    if (r.kind === 'room') {
      for (const size of [...SIZES, 'widest'] as const)
        if (measuresOf(r, size) !== undefined)
          names.set(`${r.id}.${size}`, { is: 'room', record: r.id, size });
      if (r.floorFall !== undefined)
        names.set(`${r.id}.floorFall`, { is: 'field', record: r.id, field: 'floorFall' });
    }
    const lot = lotOf(r, tree);
    if (lot !== undefined) names.set(`${r.id}.thickness`, { is: 'thickness', lot, of: r.kind });
  }
  for (const [door, doors] of doorwaysOf(job))
    for (const size of ['width', 'height', 'through'] as const)
      if (!names.has(`${door}.${size}`)) names.set(`${door}.${size}`, { is: 'doorway', doors, size });
  return names;
}

/** The doorways on the way home by their names: each alone, and `doorway` for all of them together. */
function doorwaysOf(job: JobDocument): ReadonlyMap<string, readonly string[]> {
  const ids = (job.shop.wayHome?.doors ?? []).map((d) => d.id);
  const doors = new Map<string, readonly string[]>(ids.map((id) => [id, [id]]));
  return ids.length > 0 ? doors.set('doorway', ids) : doors;
}

/** The field of a room that a size of it is found from, where it was measured. */
export function measuresOf(
  room: RecordOf<'room'>,
  size: RoomSize,
): { readonly field: 'widths' | 'heights' | 'depths'; readonly of: readonly string[] } | undefined {
  const field = ({ width: 'widths', widest: 'widths', height: 'heights', depth: 'depths' } as const)[size];
  const of = room[field];
  return of && { field, of };
}

/** What a record's own panel or strip is made of; dividers, shelves and loose shelves without a board are of their case's. */
function lotOf(r: DesignRecord, tree: RecordTree): string | undefined {
  if ('board' in r && r.board !== undefined) return r.board;
  if (r.kind === 'edging') return r.strip;
  if (r.kind !== 'divider' && r.kind !== 'shelf' && r.kind !== 'pins') return undefined;
  return tree.caseOf(r.id)?.board;
}
