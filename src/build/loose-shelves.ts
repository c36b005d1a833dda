import type { Traced } from '../measure/index.ts';
import type { Part, PinnedShelf } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import type { Touch } from './operation.ts';
import { offset } from './seating.ts';
import { touchesTold } from './touch-words.ts';
import { stand } from './turning.ts';
import { listWords } from './words.ts';

/** Puts the loose shelves in on their pins, the lowest of each opening first. */
export function layLooseShelves(bench: Bench): void {
  if (bench.setOut.pinned.length > 0) stand(bench, 'fill');
  for (const shelf of bench.setOut.pinned) {
    setIn(bench, shelf);
    rest(bench, shelf);
  }
}

function partOf(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}

function setIn(bench: Bench, shelf: PinnedShelf): void {
  const part = partOf(bench, shelf.part);
  const touches = touchesOf(bench, shelf, part);
  const lengths: Traced[] = [];
  const told = touchesTold(bench, touches, lengths);
  bench.do(
    {
      id: `${part.mark}/set`,
      kind: 'rest',
      stage: 'fill',
      title: `Put ${part.mark} (${part.name}) in`,
      does: {
        act: 'set',
        workpiece: part.mark,
        into: 'case',
        turn: { length: part.place.length, width: part.place.width },
        touches,
        glue: false,
      },
      lines: [
        `Pins first, in the holes of level ${shelf.level} above ${partOf(bench, shelf.below).mark}, two in each upright; then the shelf, tilted past them and let down.`,
        `Where it lies: ${listWords(told)}.`,
      ],
      lengths,
    },
    [part.mark, 'case'],
  );
}

/** Beside the left upright, behind its front, above what is below. */
function touchesOf(bench: Bench, shelf: PinnedShelf, part: Part): readonly [Touch, Touch, Touch] {
  const l = bench.ledger;
  const mine = planesOf(l, part);
  const left = planesOf(l, partOf(bench, shelf.posts[0]));
  const below = planesOf(l, partOf(bench, shelf.below));
  return [
    {
      side: '-x',
      of: left.part.mark,
      face: '+x',
      gap: bench.set('marking', shelf.clearance),
    },
    offset(bench, mine, '-y', left),
    { side: '-z', of: below.part.mark, face: '+z', gap: bench.set('marking', shelf.height) },
  ];
}

/** The four pins are looked at once the shelf is in: it lies on all of them, or it rocks. */
function rest(bench: Bench, shelf: PinnedShelf): void {
  const part = partOf(bench, shelf.part);
  const posts = [partOf(bench, shelf.posts[0]).mark, partOf(bench, shelf.posts[1]).mark] as const;
  const over = partOf(bench, shelf.below).mark;
  const above = bench.set('marking', shelf.above);
  const pin = bench.job.shop.rack.pins?.find((p) => p.id === shelf.pin);
  bench.do(
    {
      id: `${part.mark}/rest`,
      kind: 'rest',
      stage: 'fill',
      title: `${part.mark} lies on its pins`,
      does: {
        act: 'rest',
        workpiece: part.mark,
        into: 'case',
        posts,
        over,
        hole: shelf.hole.diameter,
        above,
        level: shelf.level,
      },
      lines: [
        `${shelf.pins} × ${pin?.name ?? shelf.pin}, in holes of {0}: two in ${posts[0]} and two in ${posts[1]}, level ${shelf.level} above ${over}. It lies {1} above their middles.`,
        'Press on each corner: where it rocks, one hole stands high; ease the shelf there, not the hole.',
      ],
      lengths: [shelf.hole.diameter, above],
    },
    [part.mark, 'case'],
  );
}
