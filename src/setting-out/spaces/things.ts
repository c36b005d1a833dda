import { type RecordOf, readPower } from '../../job/index.ts';
import { type Traced, toMm } from '../../measure/index.ts';
import type { MadeCase } from '../case/case-in-full.ts';
import type { Draft } from '../draft.ts';

/** Things that stand together in one opening. */
type Things = readonly RecordOf<'thing'>[];

/**
 * Stands the things that a case is to hold in their openings: what each opening has room for is checked, what they
 * weigh is put on the board under them, and heat that can't get away is told.
 */
export function standThings(draft: Draft, made: MadeCase): void {
  const inOpening = new Map<string, RecordOf<'thing'>[]>();
  for (const thing of draft.tree.all('thing')) {
    if (draft.tree.caseOf(thing.id) !== made.frame.box) continue;
    inOpening.set(thing.parent, [...(inOpening.get(thing.parent) ?? []), thing]);
  }
  for (const [id, things] of inOpening) {
    const room = roomIn(draft, made, id);
    // An opening that could not be set out has said so itself.
    if (!room) continue;
    for (const size of ['width', 'height', 'depth'] as const) fits(draft, id, things, size, room[size]);
    carry(draft, room.below, things);
    keepCool(draft, made, id, things);
  }
}

/** The clear sizes of an opening up to its lowest shelf, and what is under it. */
function roomIn(draft: Draft, made: MadeCase, id: string) {
  const l = draft.ledger;
  const opening = draft.openings.find((o) => o.id === id);
  const space = made.closed.get(id);
  if (!opening || !space) return undefined;
  const floor = l.ticks(opening.box.min[2]);
  const over = made.partings
    .filter((p) => !p.upright && p.space.record?.id === id && l.ticks(p.part.box.min[2]) > floor)
    .map((p) => l.ticks(p.part.box.min[2]) - floor);
  return {
    width: l.ticks(opening.width),
    height: Math.min(l.ticks(opening.height), ...over),
    depth: l.ticks(opening.depth),
    below: space.below.id,
  };
}

/** Says when things need more of a size than there is. */
function fits(
  draft: Draft,
  id: string,
  things: Things,
  size: 'width' | 'height' | 'depth',
  room: number,
): void {
  const needed = draft.ledger.ticks(needs(draft, things, size));
  if (needed <= room) return;
  const [first] = things;
  draft.stop(
    'things.do-not-fit',
    first!,
    size,
    `${things.map((t) => t.name).join(', ')}: ${toMm(needed)} mm of ${size} are needed in “${id}”, and there are ${toMm(room)} mm.`,
    { says: `Give the opening a larger ${size}: a formula may say \`${first!.id}.${size}\`.` },
  );
}

/** What things take up side by side, with the free room that they ask for. */
function needs(draft: Draft, things: Things, size: 'width' | 'height' | 'depth'): Traced {
  const l = draft.ledger;
  const each = (t: RecordOf<'thing'>): Traced => {
    const own = draft.field(t, size);
    if (size === 'width')
      return l.sum(
        'with the room beside each',
        l.times('all alike', own, t.count ?? 1),
        l.times('free room beside them', draft.field(t, 'clear'), (t.count ?? 1) + 1),
      );
    return l.sum('with the room that it needs', own, draft.field(t, size === 'height' ? 'clear' : 'behind'));
  };
  const all = things.map(each);
  return size === 'width' ? l.sum('all side by side', ...all) : l.greatest('the largest of them', ...all);
}

/** What things weigh stands on the board under them, with what was said to stand there besides. */
function carry(draft: Draft, part: string, things: Things): void {
  const kg = things.reduce((sum, t) => sum + (draft.mass(t.mass) ?? 0) * (t.count ?? 1), 0);
  const at = draft.surfaces.findIndex((s) => s.part === part);
  const surface = draft.surfaces[at];
  if (kg === 0 || !surface) return;
  draft.surfaces[at] = { ...surface, loadKg: (surface.loadKg ?? 0) + kg };
}

/** Heat behind doors needs a way out: two vents at least, each for all of it. */
function keepCool(draft: Draft, made: MadeCase, id: string, things: Things): void {
  const watts = things.reduce((sum, t) => sum + (t.heat ?? 0) * (t.count ?? 1), 0);
  if (watts === 0 || !isShut(draft, made, id)) return;
  const vents = ventsOf(draft, made, id);
  // Openings that the maker counted are the maker’s own to judge.
  const enough = vents.filter((v) => v.heat === undefined || readPower(v.heat)! >= watts);
  if (enough.length > 1) return;
  const few = vents.length > 1;
  draft.snags.push({
    code: 'things.warm',
    level: 'mind',
    where: { path: `design/records/${things[0]!.id}/heat`, record: things[0]!.id },
    sentence: `${things.map((t) => t.name).join(', ')}: ${watts} W of heat behind a door of “${id}”${few ? ', whose vents are for less' : ''}.`,
    rule: {
      says: 'what gets warm in a closed space needs air: an opening low down and one high up',
      source: 'common practice',
      confirmed: true,
    },
    cures: [
      {
        says: few
          ? `Let each of two vents, one low and one high, be for a “heat” of “${watts} W”.`
          : `Let air in below and out above, as its maker asks: two vents for a “heat” of “${watts} W”, “in” that opening; or leave the door off.`,
      },
    ],
  });
}

/** True when doors, hinged or sliding, close an opening or one that holds it. */
function isShut(draft: Draft, made: MadeCase, id: string): boolean {
  const sliding = draft.tree.all('sliding-doors').filter((d) => d.parent === made.frame.box.id);
  const around = openingsAround(draft, id);
  return [...made.frame.doors, ...sliding].some((d) => d.over.some((over) => around.includes(over)));
}

/** Vents of an opening, or of one that holds it; of the whole case where they name none. */
function ventsOf(draft: Draft, made: MadeCase, id: string): readonly RecordOf<'vent'>[] {
  const around = openingsAround(draft, id);
  return draft.tree
    .all('vent')
    .filter((v) => (v.in === undefined ? draft.tree.caseOf(v.id) === made.frame.box : around.includes(v.in)));
}

/** An opening, and those that it is a part of. */
function openingsAround(draft: Draft, id: string): readonly string[] {
  const around: string[] = [];
  for (let at = draft.tree.get(id); at?.kind === 'opening'; at = draft.tree.get(at.parent))
    around.push(at.id);
  return around;
}
