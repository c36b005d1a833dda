import { treeOf } from '../job/index.ts';
import { WAY } from '../materials/index.ts';
import { fromMm, type Ticks, toMm } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { goesThrough } from './goes-through.ts';
import { practice } from './rule.ts';
import { lengthMm, ShopWords } from './shop-words.ts';
import { standingBoxes } from './standing-boxes.ts';

/** What is carried in one: the piece, or one of several cases, and its outer sizes in mm. */
interface Carried {
  readonly record: string;
  readonly words: string;
  readonly size: readonly [width: number, depth: number, height: number];
}

/** Left on every side for hands and pads, in ticks; the same that `doorway.through` leaves. */
const HANDS = WAY.hands.value;

/** Whether the piece stands up under the ceiling, and goes through every door on its way, whole or case by case. */
export function wayHome(input: Pick<CheckInput, 'job' | 'setOut'>): readonly Snag[] {
  const { job } = input;
  const way = job.shop.wayHome;
  if (!way || input.setOut.parts.length === 0) return [];
  const carried = carriedOf(input);
  const snags: Snag[] = [];
  const { ceiling } = way;
  if (ceiling !== undefined) {
    const room = lengthMm(job, ceiling);
    for (const c of carried) snags.push(...underCeiling(new ShopWords(job), c, room));
  }
  for (const door of way.doors ?? []) {
    const [width, height] = [lengthMm(job, door.width), lengthMm(job, door.height)];
    const stuck = carried.filter((c) => !passes(c, width, height));
    for (const c of stuck) snags.push(stuckIn(new ShopWords(job), c, door, [width, height], carried.length));
  }
  return snags;
}

function carriedOf({ job, setOut }: Pick<CheckInput, 'job' | 'setOut'>): readonly Carried[] {
  const tree = treeOf(job);
  const piece = tree.piece!;
  const cases = tree.casesOf(piece.id);
  const boxes = standingBoxes(setOut);
  const several = cases.length > 1;
  return (several ? cases : [piece]).flatMap((record): Carried[] => {
    const of = setOut.parts
      .filter((p) => !several || tree.caseOf(p.record)?.id === record.id)
      .map((p) => boxes.get(p.id)!);
    if (of.length === 0) return [];
    const side = (k: 0 | 1 | 2) =>
      Math.max(...of.map((b) => b.max[k])) - Math.min(...of.map((b) => b.min[k]));
    const words = several ? `Case “${record.id}”` : 'The piece';
    return [{ record: record.id, words, size: [side(0), side(1), side(2)] }];
  });
}

/** A case is put together lying down. It is tilted up about the edge on which it will stand. */
function underCeiling(
  words: ShopWords,
  { record, words: what, size }: Carried,
  room: number,
): readonly Snag[] {
  const [width, depth, height] = size;
  const where = { record, path: 'shop/wayHome/ceiling' };
  if (height > room)
    return [
      {
        code: 'way.too-tall',
        level: 'stop',
        where,
        sentence: `${what} is ${words.length(height)} high, and the ceiling is at ${words.length(room)}.`,
        figures: words.atMost(height, room),
        rule: practice('what stands in a room is lower than its ceiling'),
        cures: [{ says: 'Make it lower.' }],
      },
    ];
  const diagonal = Math.min(Math.hypot(height, depth), Math.hypot(height, width));
  if (diagonal <= room) return [];
  return [
    {
      code: 'way.not-stood-up',
      level: 'mind',
      where,
      sentence: `${what} is ${words.length(diagonal)} from corner to corner across its side: tilted up from lying, it would run into the ceiling at ${words.length(room)}.`,
      figures: words.atMost(diagonal, room),
      rule: practice('what is stood up passes under the ceiling with the diagonal of its side'),
      cures: [
        { says: 'Put it together standing, or divide it into two cases, one upon the other.' },
        {
          says: 'Stand it on its base only when it is up: a base that is screwed on later takes off its height.',
        },
      ],
    },
  ];
}

/** True when some side of it leads through the door: it is carried along one of its lengths. */
function passes({ size: [a, b, c] }: Carried, width: number, height: number): boolean {
  const opening = [less(width, 2), less(height, 1)] as const;
  return goesThrough([a, b], opening) || goesThrough([b, c], opening) || goesThrough([a, c], opening);
}

/** A length in mm, less room for hands at so many sides. */
function less(mm: number, sides: number): number {
  return toMm((fromMm(mm) - sides * HANDS) as Ticks);
}

function stuckIn(
  words: ShopWords,
  { record, words: what, size }: Carried,
  door: { readonly id: string; readonly name?: string | undefined },
  [width, height]: readonly [number, number],
  count: number,
): Snag {
  const [least, middle] = [...size].sort((a, b) => a - b) as [number, number, number];
  return {
    code: 'way.door-too-narrow',
    level: 'mind',
    where: { record, path: `shop/wayHome/doors/${door.id}` },
    sentence: `${what} is at the least ${words.length(least)} by ${words.length(middle)}, however it is turned, and does not go through ${door.name ?? `“${door.id}”`}, ${words.length(width)} wide and ${words.length(height)} high.`,
    figures: words.atMost(least, less(width, 2)),
    rule: practice('what is carried goes through every door on its way, with room for hands'),
    cures: [
      { says: 'Carry it in parts, and put it together where it will stand.' },
      ...(count === 1
        ? [{ says: 'Divide it into cases that are screwed together in their place.' }]
        : [{ says: 'Make that case smaller, or divide it once more.' }]),
      { says: 'Take the door off its hinges, and top and base off the piece, and measure again.' },
    ],
  };
}
