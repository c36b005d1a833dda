import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import { FROM_SIDES } from './records/on-panel.ts';
import type { RecordTree } from './tree.ts';
import { wrongAbout } from './wrong-about.ts';
import { wrongField } from './wrong-field.ts';

type OnFront = RecordOf<'handle' | 'pull'>;
type Way = 'across' | 'up';

/** Whether a handle’s or a pull’s place is said once, its row enough, and its doors have nothing else to push them by. */
export function badHandle(record: OnFront, tree: RecordTree): readonly Snag[] {
  const snags: Snag[] = [...placedTwice(record, tree), ...badRow(record, tree), ...badAbout(record, tree)];
  const say = (field: string, sentence: string, cure: string) =>
    snags.push(wrongField(record, 'design.handle-place', field, sentence, cure));
  const parent = tree.get(record.parent);
  if (parent?.kind === 'drawers' && record.fromEdge !== undefined)
    say(
      'fromEdge',
      `“${record.id}” stands on drawers, which open by no edge.`,
      'Take “fromEdge” out, or say “fromLeft” or “fromRight”.',
    );
  if (parent?.kind === 'sliding-doors' && parent.fingerHole !== undefined)
    say(
      'parent',
      `The doors of “${parent.id}” have finger holes, and “${record.id}” would stand there as well.`,
      'Keep the handles, or the finger holes.',
    );
  if (record.kind === 'pull' && parent && tree.childOf(parent.id, 'handle'))
    say(
      'parent',
      `“${parent.id}” has shop-made handles, and “${record.id}” would stand there as well.`,
      'Keep one of the two.',
    );
  return snags;
}

/** Whether what handles stand about is there, and says something of their place along their row. */
function badAbout(record: OnFront, tree: RecordTree): readonly Snag[] {
  if (record.about === undefined) return [];
  const wrong = wrongAbout(record, record.about, tree, 'design.handle-row');
  if (wrong.length > 0) return wrong;
  const say = (sentence: string, cure: string) => [
    wrongField(record, 'design.handle-row', 'about', sentence, cure),
  ];
  const way = rowWay(record, tree);
  if (fieldsAlong(record, way, tree).some((field) => record[field] !== undefined))
    return say(
      `“${record.id}” has its place from a side, so “about” says nothing of it.`,
      'Take “about” out, or the place.',
    );
  if (isRow(record) && record.apart === undefined)
    return say(
      `“${record.id}” is spread over its front, so it doesn’t stand about “${record.about}”.`,
      'Add “apart”, or take “about” out.',
    );
  if (way === 'across' && tree.get(record.parent)?.kind === 'sliding-doors')
    return say(
      `“${record.id}” stands on doors that slide across “${record.about}”, so it doesn’t stand about that.`,
      'Take “about” out.',
    );
  return [];
}

/** The fields that place something along a way: from both sides, and from the edge that opens where that lies so. */
function fieldsAlong(record: OnFront, way: Way, tree: RecordTree): readonly (keyof OnFront & string)[] {
  const opens = opensAlong(record, tree) === way ? (['fromEdge'] as const) : [];
  return [...FROM_SIDES[way === 'across' ? 0 : 2], ...opens];
}

/** The way along which the edge that opens is: across for doors hung at a side, up for those that lift up or drop down. */
function opensAlong(record: OnFront, tree: RecordTree): Way | undefined {
  const parent = tree.get(record.parent);
  if (parent?.kind === 'sliding-doors') return 'across';
  if (parent?.kind !== 'door') return undefined;
  return parent.hand === 'above' || parent.hand === 'below' ? 'up' : 'across';
}

/** The way that a row runs: as said, else along the edge that opens, and across on drawers. */
function rowWay(record: OnFront, tree: RecordTree): Way {
  return record.row ?? (opensAlong(record, tree) === 'across' ? 'up' : 'across');
}

function placedTwice(record: OnFront, tree: RecordTree): readonly Snag[] {
  return (['across', 'up'] as const).flatMap((way) => {
    const spread = isRow(record) && record.apart === undefined && rowWay(record, tree) === way;
    const said = fieldsAlong(record, way, tree).filter((field) => record[field] !== undefined);
    if (said.length < 2 || (spread && said.length === 2 && !said.includes('fromEdge'))) return [];
    const [one, other] = said.slice(-2);
    return [
      wrongField(
        record,
        'design.placed-twice',
        other,
        `“${record.id}” has its place both by “${one}” and by “${other}”.`,
        'Keep one of the two.',
      ),
    ];
  });
}

function isRow(record: OnFront): boolean {
  return (record.count ?? 1) > 1;
}

/** Whether a row of handles says enough of itself, and nothing twice. */
function badRow(record: OnFront, tree: RecordTree): readonly Snag[] {
  const snags: Snag[] = [];
  const say = (field: string, sentence: string, cure: string) =>
    snags.push(wrongField(record, 'design.handle-row', field, sentence, cure));
  const said = fieldsAlong(record, rowWay(record, tree), tree).filter((f) => record[f] !== undefined);
  if (isRow(record) && record.apart === undefined && said.length === 1)
    say(
      'apart',
      `“${record.id}” has ${record.count} in a row from one side, but not how far they are apart.`,
      'Add “apart”, or the distance from the other side, for a row equally spaced between.',
    );
  if (record.apart !== undefined && !isRow(record))
    say(
      'apart',
      `“${record.id}” is one on each front, so it is apart from nothing.`,
      'Add “count”, or take “apart” out.',
    );
  if (record.row !== undefined && !isRow(record))
    say('row', `“${record.id}” is one on each front, so it makes no row.`, 'Add “count”, or take “row” out.');
  if (record.measured && !(isRow(record) && record.apart !== undefined && said.length > 0))
    say(
      'measured',
      `“${record.id}” is measured to the middle of its row, but has none so far apart, placed from one side.`,
      'Add “count”, “apart” and a place from one side along the row, or take “measured” out.',
    );
  return snags;
}
