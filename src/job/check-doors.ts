import type { Snag } from '../snag/index.ts';
import type { RecordOf } from './records/design-record.ts';
import type { RecordTree } from './tree.ts';
import { wrongField } from './wrong-field.ts';

/** Whether what a door closes is one rectangle that no other door closes as well. */
export function badDoors(door: RecordOf<'door' | 'sliding-doors'>, tree: RecordTree): readonly Snag[] {
  // Where the form has faults, a door may have lost its list.
  const over = door.over ?? [];
  const openings = over.flatMap((id) => {
    const r = tree.get(id);
    return r?.kind === 'opening' ? [r] : [];
  });
  // What isn’t there is told elsewhere.
  if (openings.length < over.length || openings.length === 0) return [];
  const snags: Snag[] = [];
  const say = (code: string, field: string, sentence: string, cure: string) =>
    snags.push(wrongField(door, code, field, sentence, cure));
  if (openings.some((o) => tree.caseOf(o.id)?.id !== door.parent))
    say(
      'doors.another-case',
      'over',
      `“${door.id}” belongs to “${door.parent}”, but closes an opening of another case.`,
      'Let the door belong to the case whose opening it closes.',
    );
  const brothers = tree.childrenOf(openings[0]!.parent, 'opening').map((o) => o.id);
  const places = openings.map((o) => brothers.indexOf(o.id)).sort((a, b) => a - b);
  if (places.includes(-1) || places.some((p, i) => i > 0 && p !== places[i - 1]! + 1))
    say(
      'doors.openings-apart',
      'over',
      `The openings that “${door.id}” closes are not neighbours of one split.`,
      'Name neighbours of one split, the opening that holds them, or a door for each.',
    );
  const deep = openings.map((o) => partOfDepth(tree, o.id)).find((o) => o !== undefined);
  if (deep !== undefined)
    say(
      'doors.part-of-depth',
      'over',
      `“${door.id}” closes a part of the depth of “${deep}”, but a door closes all of it.`,
      `Let it close “${deep}”.`,
    );
  if (door.kind === 'door') {
    const flap = door.hand === 'above' || door.hand === 'below';
    if (flap && (door.count === 2 || door.hang !== 'inset'))
      say(
        'doors.flap',
        door.count === 2 ? 'count' : 'hang',
        door.count === 2
          ? `“${door.id}” opens upward or downward, and is to be a pair.`
          : `“${door.id}” opens upward or downward on butt hinges, and is to lie before the case’s front.`,
        door.count === 2 ? 'Let it be one door.' : 'Let it hang “inset”.',
      );
    if (!flap && door.stay !== undefined)
      say(
        'doors.flap',
        'stay',
        `“${door.id}” names a stay, but opens to the side.`,
        'Take “stay” out, or hang it “above” or “below”.',
      );
  }
  if (door.kind === 'sliding-doors' && door.closes === 'each') {
    const across = tree.get(openings[0]!.parent);
    const count = door.count ?? 2;
    if (openings.length < 2 || (across?.kind === 'opening' && across.split !== 'across'))
      say(
        'sliding.not-side-by-side',
        'over',
        `“${door.id}” is to have a door for each opening, but its openings don’t stand side by side.`,
        'Name openings of one split across, or let the doors close all together.',
      );
    else if (count > openings.length)
      say(
        'sliding.too-many-doors',
        'count',
        `“${door.id}” has ${count} doors for ${openings.length} openings, one each.`,
        'Have as many doors as openings, or fewer.',
      );
  }
  for (const other of [...tree.all('door'), ...tree.all('sliding-doors')]) {
    if (other.id >= door.id) continue;
    const shared = (other.over ?? []).find((id) =>
      openings.some((o) => holds(tree, id, o.id) || holds(tree, o.id, id)),
    );
    if (shared !== undefined)
      say(
        'doors.over-one-opening',
        'over',
        `“${door.id}” and “${other.id}” both close “${shared}” or a part of it.`,
        'Take it from one of the two.',
      );
  }
  return snags;
}

/** The opening, split from front to back, that an opening lies in. */
function partOfDepth(tree: RecordTree, inner: string): string | undefined {
  const seen = new Set<string>();
  let at = tree.get(inner);
  while (at && 'parent' in at && !seen.has(at.id)) {
    seen.add(at.id);
    const outer = tree.get(at.parent);
    if (outer?.kind === 'opening' && outer.split === 'back') return outer.id;
    at = outer;
  }
  return undefined;
}

/** True when an opening is another, or holds it. */
function holds(tree: RecordTree, outer: string, inner: string): boolean {
  const seen = new Set<string>();
  let at = tree.get(inner);
  while (at && 'parent' in at && !seen.has(at.id)) {
    if (at.id === outer) return true;
    seen.add(at.id);
    at = tree.get(at.parent);
  }
  return false;
}
