import { treeOf } from '../job/index.ts';
import { INDOORS, moistureIn, species } from '../materials/index.ts';
import { type Traced, toMm } from '../measure/index.ts';
import type { Fastener, Part, SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CheckInput } from './check-input.ts';
import { practice } from './rule.ts';
import { ShopWords } from './shop-words.ts';
import { standingBox } from './standing-boxes.ts';

type Input = Pick<CheckInput, 'job' | 'setOut'>;

/** As much a wood may move against screws that hold it fast, mm: thread and fibres give so much (common practice). */
const GIVES = 1;

/**
 * Whether a top of solid wood can move on what carries it: the foremost screws hold it, and every other one has room for what the
 * top moves between the two. Reckoned from the wood, the room and the holes alone.
 */
export function topMoves({ job, setOut }: Input): readonly Snag[] {
  const tree = treeOf(job);
  const [room] = tree.all('room');
  const words = new ShopWords(job);
  return setOut.parts.flatMap((top): Snag[] => {
    const record = tree.get(top.record);
    if (record?.kind !== 'top' || record.hinged || top.role !== 'top') return [];
    const lot = job.shop.rack.lots.find((l) => l.id === top.lot);
    const movement = species(lot?.material ?? '')?.movement;
    if (!movement) return [];
    const points =
      moistureIn(room?.dampest ?? INDOORS.dampest, INDOORS.celsius) -
      moistureIn(room?.dryest ?? INDOORS.dryest, INDOORS.celsius);
    const held = setOut.fasteners.filter((f) => f.through.at(-1) === top.id);
    const at = (f: Fastener) => mm(setOut, f.head[1]);
    const front = Math.min(...held.map(at));
    const short = held
      .map((f) => ({ moves: (at(f) - front) * movement.tangential * points, room: roomOf(setOut, f) }))
      .map(({ moves, room }) => ({ moves: hundredths(moves), room: hundredths(room) }))
      .filter(({ moves, room }) => moves > room + GIVES)
      .sort((a, b) => b.moves - b.room - (a.moves - a.room))[0];
    if (!short) return [];
    return [
      {
        code: 'top.cannot-move',
        level: 'mind',
        where: { path: `design/records/${record.id}`, record: record.id, part: top.id },
        sentence: `${top.mark} (${top.name}) is of solid wood and moves ${words.fine(short.moves)} between its screws, but one of them leaves it only ${words.fine(short.room)}.`,
        figures: words.atLeast(short.room, short.moves),
        rule: practice('nothing holds a wide board of solid wood at two places across its grain'),
        cures: [{ says: 'Make the top of a panel, which hardly moves.' }],
      },
    ];
  });
}

/** How far a screw can go across the top from end to end of its hole or slot, or with its button in a mortise; nothing in a hole that it just passes. */
function roomOf(setOut: SetOut, f: Fastener): number {
  const button = setOut.joints.find((j) => j.id === f.joint && j.duty === 'button')?.part;
  if (button !== undefined) return roomOfButton(setOut, button);
  if (f.washer === undefined) return 0;
  const part = setOut.parts.find((p) => p.id === f.through[0])!;
  const [x, y] = [mm(setOut, f.head[0]), mm(setOut, f.head[1])];
  const across = part.features.flatMap((feature): number[] => {
    if (feature.kind !== 'hole' && feature.kind !== 'slot') return [];
    const [fx, fy] = middleOf(setOut, part, feature.at);
    if (Math.hypot(fx - x, fy - y) > 0.01) return [];
    return [mm(setOut, feature.kind === 'hole' ? feature.diameter : feature.length)];
  });
  return Math.max(...across, 0) - mm(setOut, f.diameter);
}

/** What its mortise is longer than a button is wide. */
function roomOfButton(setOut: SetOut, id: string): number {
  const button = setOut.parts.find((p) => p.id === id)!;
  const mortises = setOut.parts.flatMap((p) =>
    p.features.flatMap((f) =>
      f.kind === 'groove' && f.id === `${p.id}#${id}` ? [mm(setOut, f.to) - mm(setOut, f.from)] : [],
    ),
  );
  return Math.max(...mortises, 0) - mm(setOut, button.width);
}

/** Where a place on a lying part's face is, from the left and from the front of the piece. */
function middleOf(
  setOut: SetOut,
  part: Part,
  [along, across]: readonly [Traced, Traced],
): readonly [number, number] {
  const { min, max } = standingBox(setOut, part);
  const on: [number, number, number] = [0, 0, 0];
  for (const [way, by] of [
    [part.place.length, along],
    [part.place.width, across],
  ] as const) {
    const axis = 'xyz'.indexOf(way[1]!);
    on[axis] = way.startsWith('+') ? min[axis]! + mm(setOut, by) : max[axis]! - mm(setOut, by);
  }
  return [on[0], on[1]];
}

function mm(setOut: SetOut, t: Traced): number {
  return toMm(setOut.ledger.ticks(t));
}

function hundredths(x: number): number {
  return Math.round(x * 100) / 100;
}
