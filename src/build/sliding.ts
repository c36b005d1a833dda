import type { Traced } from '../measure/index.ts';
import type { Part, SlidingLeaf, SlidingSet } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import { cutToOpenings } from './cut-to-opening.ts';
import { markWords } from './mark-words.ts';
import { stand } from './turning.ts';
import { listWords } from './words.ts';

/** Lifts sliding doors into their grooves: measure, the rearmost first, try them over their whole way. */
export function liftInDoors(bench: Bench): void {
  if (bench.setOut.sliding.length > 0) stand(bench, 'hang');
  for (const set of bench.setOut.sliding) {
    measureOpening(bench, set);
    cutToOpenings(
      bench,
      set.leaves.map((d) => partOf(bench, d.part)),
    );
    for (const leaf of [...set.leaves].reverse()) liftIn(bench, set, leaf);
    tryThem(bench, set);
  }
}

/** Grooves are waxed once the finish is dry, which would not take on wax, and the piece stands: loose doors are not carried about. */
export function waxGrooves(bench: Bench): void {
  for (const set of bench.setOut.sliding) {
    const doors = marksOf(bench, set);
    const panels = [set.below, set.above].map((id) => partOf(bench, id).mark);
    bench.do(
      {
        id: `${doors[0]}/wax`,
        kind: 'wax',
        stage: 'home',
        title: `Wax the grooves and lift ${listWords(doors)} in`,
        does: { act: 'other', on: [...panels, ...doors] },
        lines: [
          `Rub candle wax or paraffin into the grooves of ${markWords(panels)}, floors and walls, and along the edges that run in them.`,
          'Lift the doors in as before, the rearmost first. A coat of finish takes up room: where a door now binds, scrape its edges, not the grooves.',
        ],
      },
      [...doors, 'case'],
    );
  }
}

function partOf(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}

function marksOf(bench: Bench, set: SlidingSet): readonly string[] {
  return set.leaves.map((d) => partOf(bench, d.part).mark);
}

/** A door stands between two panels as they were really put together. */
function measureOpening(bench: Bench, set: SlidingSet): void {
  const marks = marksOf(bench, set);
  const first = partOf(bench, set.leaves[0]!.part);
  const [below, above] = [set.below, set.above].map((id) => partOf(bench, id).mark);
  const lower = bench.set('router', set.groove.lower);
  const upper = bench.set('router', set.groove.upper);
  bench.do(
    {
      id: `${marks[0]}/measure`,
      kind: 'measure',
      stage: 'hang',
      title: `Measure the opening of ${listWords(marks)} as it was built`,
      does: { act: 'other', on: [...marks, 'case'] },
      tool: 'marking',
      times: marks.length,
      lines: [
        `Measure from ${below} to ${above} at both ends and in the middle, with the case on a level floor, and the depth of all grooves.`,
        'Drawn are {0} between them, a groove {1} deep below and {2} above: that makes the doors {3} high. What you measure at the lowest place comes first; enter it, and the next cards follow.',
        `The doors lap by {4}. Try an offcut of their board in every groove: it must run by its own weight.`,
      ],
      lengths: [
        set.opening.height,
        lower,
        upper,
        (first.fitted ?? first.cut).length,
        bench.set('marking', set.overlap),
      ],
    },
    [...marks, 'case'],
  );
}

function liftIn(bench: Bench, set: SlidingSet, leaf: SlidingLeaf): void {
  const l = bench.ledger;
  const { track } = leaf;
  const part = partOf(bench, leaf.part);
  const [below, above, left, right] = [set.below, set.above, ...between(bench, set, leaf)].map((id) =>
    partOf(bench, id),
  ) as [Part, Part, Part, Part];
  const lift = bench.set('marking', set.lift);
  const { planes } = planesOf(l, part);
  const from = l.less('clear distance beside the door', planes['-x'], planesOf(l, left).planes['+x']);
  const beyond = l.less('clear distance on its other side', planesOf(l, right).planes['-x'], planes['+x']);
  const atLeft = l.ticks(from) === 0;
  const atRight = !atLeft && l.ticks(beyond) === 0;
  const beside = atLeft || atRight ? undefined : standsFrom(bench, from, beyond, below);
  const lengths: Traced[] = [
    lift,
    bench.set('router', set.groove.lower),
    bench.set('router', set.engagement),
  ];
  const n = beside === undefined ? -1 : lengths.push(beside) - 1;
  const groove = TRACK[set.tracks === 2 ? 2 : 3]![track]!;
  bench.do(
    {
      id: `${part.mark}/lift-in`,
      kind: 'hang',
      stage: 'hang',
      title: `Lift ${part.mark} (${part.name}) into the ${groove} grooves`,
      does: {
        act: 'lift-in',
        workpiece: part.mark,
        into: 'case',
        turn: { length: part.place.length, width: part.place.width },
        below: below.mark,
        above: above.mark,
        groove: track + 1,
        between: [left.mark, right.mark],
        ...(beside === undefined ? {} : { beside }),
        ...(atRight ? { against: 'right' as const } : {}),
        lift,
      },
      lines: [
        `Hold ${part.mark} with its lower edge toward you, its upper edge in the ${groove} groove of ${above.mark}.`,
        `Lift it by {0}, swing the lower edge in over the front of ${below.mark}, and let it down into the ${groove} groove there. It then stands {1} deep below and {2} deep above: that holds it.`,
        n < 0
          ? `Slide it against ${(atRight ? right : left).mark}.`
          : `Slide it until it is {${n}} from ${left.mark}.`,
      ],
      lengths,
      cautions: [CAUTION.fingers],
    },
    [part.mark, 'case'],
  );
}

/** How far from what is on its left a door is stood: never further than the other end leaves room for. */
function standsFrom(bench: Bench, from: Traced, beyond: Traced, below: Part): Traced {
  const l = bench.ledger;
  const short = cutShort(l, below);
  const near = bench.set('marking', from);
  const room = l.ticks(from) + l.ticks(beyond) - l.ticks(short);
  return l.ticks(near) <= room ? near : bench.set('marking', l.less(NARROWER, from, short), 'down');
}

const NARROWER =
  'clear distance beside the door, in a case that may come out narrower by what the saw can be set to';

/** How much shorter than drawn a board is cut, and with it the case that it keeps apart. */
function cutShort(l: Bench['ledger'], board: Part): Traced {
  const drawn = board.length;
  return l.less(
    'how much shorter it is cut',
    drawn,
    l.least('its length, at most as drawn', drawn, board.cut.length),
  );
}

/** What a door slides between: the ends, or the handles of doors behind it that it can't pass. */
function between(bench: Bench, set: SlidingSet, leaf: SlidingLeaf): readonly [string, string] {
  const bars = set.leaves.filter((other) => other.bars && other.track > leaf.track);
  // Of a row across the door, the one that is met first.
  const handle = (side: '-x' | '+x', door?: SlidingLeaf) => {
    const mates = bench.setOut.joints.flatMap((j) =>
      j.duty === 'handle' && j.part === door?.part ? [j.mate] : [],
    );
    const out = (id: string) => bench.ledger.ticks(planesOf(bench.ledger, partOf(bench, id)).planes[side]);
    return mates.sort((a, b) => (side === '+x' ? out(b) - out(a) : out(a) - out(b)))[0];
  };
  const before = bars.filter((other) => other.order < leaf.order);
  const beyond = bars.filter((other) => other.order > leaf.order);
  return [handle('+x', before.at(-1)) ?? set.left, handle('-x', beyond[0]) ?? set.right];
}

function tryThem(bench: Bench, set: SlidingSet): void {
  const marks = marksOf(bench, set);
  const [left, right] = [set.left, set.right].map((id) => partOf(bench, id).mark);
  bench.do(
    {
      id: `${marks[0]}/adjust`,
      kind: 'adjust',
      stage: 'hang',
      title: `Try ${listWords(marks)}`,
      does: { act: 'other', on: [...marks, 'case'] },
      times: marks.length,
      lines: [
        set.leaves.some((d) => d.bars)
          ? `Slide each as far as it goes, from ${left} to ${right} or to the handle of a door behind it, and back: it may touch nothing but its grooves. They pass with {0} of air.`
          : `Slide each from ${left} to ${right} and back: it may touch nothing but its grooves. They pass with {0} of air.`,
        'Where one binds, look for the shine where it rubbed and take off a shaving there; a door that can be lifted out when it is shut is too low.',
        'At most {1} of the width stands open at once.',
        'Lift them out again for the finish.',
      ],
      lengths: [bench.set('marking', set.gap), bench.set('marking', set.opens)],
    },
    [...marks, 'case'],
  );
}

/** What the grooves of two and of three tracks are called. */
const TRACK: Readonly<Record<number, readonly string[]>> = {
  2: ['front', 'back'],
  3: ['front', 'middle', 'back'],
};
