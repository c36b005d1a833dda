import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import { FROM_SIDES } from './records/on-panel.ts';
import type { RecordTree } from './tree.ts';
import { wrongAbout } from './wrong-about.ts';
import { wrongField } from './wrong-field.ts';

/** Whether what stands on a panel says which panel, and its place along each way once at most. */
export function badPlaces(record: RecordOf<'cable' | 'vent' | 'holes'>, tree: RecordTree): readonly Snag[] {
  const snags: Snag[] = [];
  const say = (code: string, field: string, sentence: string, cure: string) =>
    snags.push(wrongField(record, code, field, sentence, cure));
  const parent = tree.get(record.parent);
  if (parent?.kind === 'case' && record.panel === undefined)
    say(
      'design.which-panel',
      'panel',
      `“${record.id}” belongs to a case, but not to one of its panels.`,
      'Add “panel”: “left-side”, “right-side”, “bottom” or “lid”.',
    );
  if (parent && parent.kind !== 'case' && record.panel !== undefined)
    say(
      'design.which-panel',
      'panel',
      `“${record.id}” belongs to “${parent.id}”, which is a panel itself.`,
      'Take “panel” out, or let it belong to the case.',
    );
  if (record.in !== undefined && tree.get(record.in)?.kind !== 'opening')
    say(
      'document.no-such-record',
      'in',
      `“${record.id}” stands in “${record.in}”, which is no opening.`,
      `Add an opening “${record.in}”, or name one that is there.`,
    );
  const row = record.kind === 'holes' ? rowOf(record, tree) : undefined;
  for (const [low, high] of FROM_SIDES)
    if (record[low] !== undefined && record[high] !== undefined && row?.[0] !== low)
      say(
        'design.placed-twice',
        high,
        `“${record.id}” has its place both by “${low}” and by “${high}”.`,
        'Keep one of the two.',
      );
  if (record.kind === 'vent' && record.heat === undefined && record.count === undefined)
    say(
      'design.vent-size',
      'heat',
      `“${record.id}” says neither what heat it is for nor how many openings it has.`,
      'Add “heat”, such as “60 W”, or “count”.',
    );
  if (record.kind === 'holes') snags.push(...badRow(record, tree));
  return snags;
}

/** The two sides that a row runs between; undefined where one hole makes no row, or a pitch leaves one end open. */
function rowOf(record: RecordOf<'holes'>, tree: RecordTree): (typeof FROM_SIDES)[number] | undefined {
  return (record.count ?? 1) < 2 || record.apart !== undefined ? undefined : sidesAlongRow(record, tree);
}

const ALONG = { across: 0, back: 1, up: 2 } as const;

function sidesAlongRow(record: RecordOf<'holes'>, tree: RecordTree): (typeof FROM_SIDES)[number] {
  const lay = record.lay ?? (standsLikeASide(record, tree) ? 'back' : 'across');
  return FROM_SIDES[ALONG[lay]];
}

/** True of several holes so far apart that are placed from one side along their row. */
function rowsPlacedFromOne(record: RecordOf<'holes'>, tree: RecordTree): boolean {
  if ((record.count ?? 1) < 2 || record.apart === undefined) return false;
  return sidesAlongRow(record, tree).some((field) => record[field] !== undefined);
}

/** Whether what a row stands about is there, in its own case, and says something of its place. */
function badAbout(record: RecordOf<'holes'>, about: string, tree: RecordTree): readonly Snag[] {
  const say = (sentence: string, cure: string) => [
    wrongField(record, 'design.hole-row', 'about', sentence, cure),
  ];
  const wrong = wrongAbout(record, about, tree, 'design.hole-row');
  if (wrong.length > 0) return wrong;
  const placed = FROM_SIDES.filter((pair) => pair.some((field) => record[field] !== undefined));
  const spread = (record.count ?? 1) > 1 && record.apart === undefined;
  if (placed.length >= 2 || (spread && !placed.includes(sidesAlongRow(record, tree))))
    return say(
      placed.length >= 2
        ? `“${record.id}” has its place from sides both ways, so “about” says nothing of it.`
        : `“${record.id}” is spread from side to side, so it doesn’t stand about “${about}”.`,
      placed.length >= 2 ? 'Take “about” out, or one of its places.' : 'Add “apart”, or take “about” out.',
    );
  return [];
}

/** True of the sides of a case and of what parts openings side by side: they have no width from left to right. */
function standsLikeASide(record: RecordOf<'holes'>, tree: RecordTree): boolean {
  const parent = tree.get(record.parent);
  if (parent?.kind === 'case') return record.panel === 'left-side' || record.panel === 'right-side';
  const split = parent?.kind === 'divider' ? tree.get(parent.parent) : undefined;
  return split?.kind === 'opening' && split.split === 'across';
}

/** Whether a row of holes says enough of itself, and nothing twice. */
function badRow(record: RecordOf<'holes'>, tree: RecordTree): readonly Snag[] {
  const snags: Snag[] = [];
  const say = (field: string, sentence: string, cure: string) =>
    snags.push({
      code: 'design.hole-row',
      level: 'stop',
      where: { path: `design/records/${record.id}/${field}`, record: record.id },
      sentence,
      cures: [{ says: cure }],
    });
  const row = rowOf(record, tree);
  const oneEnd = row && (record[row[0]] === undefined) !== (record[row[1]] === undefined);
  if (oneEnd)
    say(
      'apart',
      `“${record.id}” has a row of ${record.count} holes from one side, but not how far they are apart.`,
      'Add “apart”, or the distance from the other side, for holes equally spaced between.',
    );
  if (record.apart !== undefined && (record.count ?? 1) < 2)
    say(
      'apart',
      `“${record.id}” is one hole, so it is apart from nothing.`,
      'Add “count”, or take “apart” out.',
    );
  if ((record.depth === undefined) !== (record.face === undefined))
    say(
      record.depth === undefined ? 'face' : 'depth',
      record.depth === undefined
        ? `“${record.id}” names a face to be bored from, but goes right through.`
        : `“${record.id}” is so deep, but from which face isn’t said.`,
      record.depth === undefined
        ? 'Take “face” out, or add “depth”.'
        : 'Add “face”: “left”, “right”, “front”, “back”, “below” or “above”.',
    );
  if (record.measured && !rowsPlacedFromOne(record, tree))
    say(
      'measured',
      `“${record.id}” is measured to the middle of its row, but has no holes so far apart, placed from one side.`,
      'Add “count”, “apart” and a place from one side along the row, or take “measured” out.',
    );
  if (record.about !== undefined) snags.push(...badAbout(record, record.about, tree));
  const side = record.panel === 'left-side' || record.panel === 'right-side';
  if (record.mirror && !(tree.get(record.parent)?.kind === 'case' && side))
    say(
      'mirror',
      `“${record.id}” is to be mirrored, but only the two sides of a case mirror one another.`,
      'Take “mirror” out, or let it belong to a case’s “left-side” or “right-side”.',
    );
  return snags;
}
