import { DOORS } from '../materials/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Direction, DoorLeaf, Part } from '../setting-out/index.ts';
import type { Bench } from './bench.ts';
import { planesOf } from './boxes.ts';
import { CAUTION } from './cautions.ts';
import { cutToOpenings } from './cut-to-opening.ts';
import { liftCautions } from './lifting.ts';
import { markWords } from './mark-words.ts';
import type { Touch } from './operation.ts';
import { byEdging, edgingOf, offset, outermost } from './seating.ts';
import { fitStays } from './stays.ts';
import { touchesTold } from './touch-words.ts';
import { stand } from './turning.ts';
import { capital, listWords } from './words.ts';

/** The edge of a door that opens. */
const FREE = { left: 'right edge', right: 'left edge', above: 'lower edge', below: 'upper edge' } as const;

/** The edge that its hinges are on. */
const HUNG = { left: 'left edge', right: 'right edge', above: 'upper end', below: 'lower end' } as const;

/** Hangs the doors on the finished case: measure, let in, hang, adjust. */
export function hangDoors(bench: Bench): void {
  if (bench.setOut.doors.length > 0) stand(bench, 'hang');
  const inset = bench.setOut.doors.filter((d) => d.hang === 'inset');
  for (const record of new Set(inset.map((d) => d.record)))
    measureOpening(bench, inset.filter((d) => d.record === record) as unknown as [DoorLeaf, ...DoorLeaf[]]);
  cutToOpenings(
    bench,
    inset.map((d) => partOf(bench, d.part)),
  );
  for (const leaf of bench.setOut.doors) {
    if (leaf.leaf) letIn(bench, leaf, leaf.leaf);
    setDoor(bench, leaf);
    screwHinges(bench, leaf);
    if (leaf.held?.stays)
      fitStays(
        bench,
        { ...leaf.held, part: leaf.part, says: leaf.hung === 'below' ? 'drop-down flap' : 'flap' },
        leaf.held.stays,
      );
  }
  for (const alike of adjustedAlike(bench)) adjust(bench, alike);
}

/** Doors that are adjusted alike, all of a record together. */
interface Adjusted {
  readonly leaves: readonly DoorLeaf[];
  /** Do two of them meet? */
  readonly pairs: boolean;
}

function adjustedAlike(bench: Bench): readonly Adjusted[] {
  const { doors } = bench.setOut;
  const alike = new Map<string, Adjusted>();
  for (const record of new Set(doors.map((d) => d.record))) {
    const leaves = doors.filter((d) => d.record === record);
    const [{ cup, hang, gap, held }] = leaves as [DoorLeaf, ...DoorLeaf[]];
    const pairs = leaves.length > 1;
    const key = [cup !== undefined, hang, bench.ledger.ticks(gap), held?.stays !== undefined, pairs].join(
      ' ',
    );
    alike.set(key, { pairs, leaves: [...(alike.get(key)?.leaves ?? []), ...leaves] });
  }
  return [...alike.values()];
}

function partOf(bench: Bench, id: string): Part {
  return bench.setOut.parts.find((p) => p.id === id)!;
}

function named(part: Part): string {
  return `${part.mark} (${part.name})`;
}

/** Inset doors fit the opening that was really built, not the one that was drawn. */
function measureOpening(bench: Bench, leaves: readonly [DoorLeaf, ...DoorLeaf[]]): void {
  const [leaf] = leaves;
  const parts = leaves.map((d) => partOf(bench, d.part));
  const marks = parts.map((p) => p.mark);
  const pair = leaves.length > 1;
  const { width, height } = leaf.opening;
  const lengths = [width, height, leaf.gap].map((t) => bench.set('marking', t));
  const put = (t: Traced) => `{${lengths.push(t) - 1}}`;
  const sizes = sizesTold(bench, parts, put);
  const strip = bench.setOut.joints.find((j) => j.duty === 'edging' && j.mate === parts[0]!.id);
  const edging = strip
    ? `, without their edging, {${lengths.push(partOf(bench, strip.part).thickness) - 1}} thick, which the boards leave room for`
    : '';
  bench.do(
    {
      id: `${marks[0]}/measure`,
      kind: 'measure',
      stage: 'hang',
      title: `Measure the opening of ${pair ? listWords(marks) : named(parts[0]!)} as it was built`,
      does: { act: 'other', on: [...marks, 'case'] },
      tool: 'marking',
      lines: [
        'Measure the opening’s width at its upper and lower end and its height at both sides, and both diagonals.',
        `Drawn are {0} wide and {1} high, with a gap of {2} all round${pair ? ' and between the two doors' : ''}: that makes ${sizes}${edging}. What you measure, less the gaps, comes first; enter it, and the next cards follow.`,
        'Have the hinges in the hand: their knuckles or arms must fit that gap.',
        `Where the opening is out of square, cut to its widest and plane the ${pair ? 'outer edges' : FREE[leaf.hung]} to follow it.`,
      ],
      lengths,
    },
    [...marks, 'case'],
  );
}

/** How large doors are cut; once where they are alike. */
function sizesTold(bench: Bench, doors: readonly Part[], put: (t: Traced) => string): string {
  const t = (x: Traced) => bench.ledger.ticks(x);
  const all = doors.map((p) => ({ mark: p.mark, ...(p.fitted ?? p.cut) }));
  const [first] = all;
  const alike = all.every((d) => t(d.width) === t(first!.width) && t(d.length) === t(first!.length));
  const told = ({ width, length }: (typeof all)[number]) => `${put(width)} wide and ${put(length)} high`;
  if (alike && all.length > 1) return `${listWords(all.map((d) => d.mark))} each ${told(first!)}`;
  return listWords(all.map((d) => `${d.mark} ${told(d)}`));
}

/** Butt hinges are let in where they are marked round, not by drawn numbers alone. */
function letIn(bench: Bench, leaf: DoorLeaf, plate: NonNullable<DoorLeaf['leaf']>): void {
  const part = partOf(bench, leaf.part);
  const post = partOf(bench, leaf.post);
  // Along what lies from its left end, else from its lower one, edging included.
  const strip = edgingOf(bench, part, leaf.held ? '-x' : '-z');
  const l = bench.ledger;
  const places = leaf.hinges.map((t) =>
    bench.set('marking', strip ? l.sum('place of the hinge, edging included', t, strip.thickness) : t),
  );
  const n = places.length;
  bench.do(
    {
      id: `${part.mark}/mortise`,
      kind: 'mortise',
      stage: 'hang',
      title: `Let the hinges into ${part.mark} and ${post.mark}`,
      does: { act: 'other', on: [part.mark, 'case'] },
      times: n,
      lines: [
        `Middles of the hinges at ${listWords(places.map((_, i) => `{${i}}`))} ${leaf.held ? 'from the left edge of' : 'from the lower end of'} ${part.mark}, on its ${HUNG[leaf.hung]}.`,
        `Lay an opened hinge there, its pin just free of the front, and mark round the leaf with a knife: {${n}} long, {${n + 1}} wide. Chisel out {${n + 2}} deep, so that the leaf lies level.`,
        `Hold the door in its opening with slips {${n + 3}} thick under it, and carry the marks over to ${post.mark}; let in the other leaves there.`,
      ],
      lengths: [...places, plate.length, plate.width, plate.thickness, bench.set('marking', leaf.gap)],
      cautions: [CAUTION.chisel],
    },
    [part.mark, 'case'],
  );
}

function setDoor(bench: Bench, leaf: DoorLeaf): void {
  const part = partOf(bench, leaf.part);
  const touches = touchesOf(bench, leaf, part);
  const lengths: Traced[] = [];
  const told = touchesTold(bench, touches, lengths);
  const standOff = leaf.hang === 'inset' ? -1 : lengths.push(bench.rule(DOORS.standOff)) - 1;
  bench.do(
    {
      id: `${part.mark}/set`,
      kind: 'hang',
      stage: 'hang',
      title: `${leaf.cup ? 'Try' : 'Set'} ${named(part)} in its place`,
      does: {
        act: 'set',
        workpiece: part.mark,
        into: 'case',
        turn: { length: part.place.length, width: part.place.width },
        touches,
        glue: false,
      },
      lines: [
        ...(leaf.cup ? ['Before its hinges are on.'] : []),
        `${capital(listWords(told))}.`,
        leaf.hang === 'inset'
          ? 'Slips of that thickness under it and beside it hold it there; it should pass by all edges without touching.'
          : `Clamp a batten to the case for it to rest on, which stays there until it hangs; slips {${standOff}} thick keep it off the case’s front, as its bumpers will.`,
      ],
      lengths,
      cautions: liftCautions(bench, [part]),
    },
    [part.mark, 'case'],
  );
}

/** Beside its post, level with the front or so far before it, and above what is below. */
function touchesOf(bench: Bench, leaf: DoorLeaf, part: Part): readonly [Touch, Touch, Touch] {
  const l = bench.ledger;
  // An edged door is set by its edging.
  const mine = (side: Direction) => outermost(bench, part, side);
  // What opens upward or downward hangs on a panel that lies: it is set from the upright at its left.
  const beside = leaf.beside ?? leaf.post;
  const post = planesOf(l, partOf(bench, beside));
  const below = planesOf(l, partOf(bench, leaf.below));
  const edged = bench.setOut.joints.find((j) => j.duty === 'edging' && j.mate === beside);
  const front = edged ? planesOf(l, partOf(bench, edged.part)) : post;
  const gapTo = (
    side: Touch['side'],
    of: typeof post,
    face: Touch['side'],
    low: Traced,
    high: Traced,
  ): Touch => ({
    side,
    of: of.part.mark,
    face,
    gap: bench.set('marking', l.less('gap beside the door', high, low)),
  });
  const by = (touch: Touch): Touch => byEdging(touch, mine(touch.side), part);
  const at = (side: Direction) => mine(side).planes[side];
  if (leaf.hang === 'overlay') {
    const side = leaf.hung === 'left' ? '-x' : '+x';
    return [
      by(offset(bench, mine(side), side, post)),
      gapTo('+y', front, '-y', at('+y'), front.planes['-y']),
      by(offset(bench, mine('-z'), '-z', below)),
    ];
  }
  return [
    by(
      leaf.hung !== 'right'
        ? gapTo('-x', post, '+x', post.planes['+x'], at('-x'))
        : gapTo('+x', post, '-x', at('+x'), post.planes['-x']),
    ),
    offset(bench, mine('-y'), '-y', front),
    by(gapTo('-z', below, '+z', below.planes['+z'], at('-z'))),
  ];
}

function screwHinges(bench: Bench, leaf: DoorLeaf): void {
  const part = partOf(bench, leaf.part);
  const post = partOf(bench, leaf.post);
  const hinge = bench.job.shop.rack.hinges?.find((h) => h.id === leaf.hinge);
  const screw = bench.job.shop.rack.screws.find((s) => s.id === leaf.screw)!;
  const name = hinge?.name ?? leaf.hinge;
  const count = leaf.hinges.length;
  const screws = count * leaf.screwsPerHinge;
  const what = `${count} × ${name}, ${screws} × ${screw.name ?? screw.id}, {0} long and {1} thick.`;
  const { cup } = leaf;
  bench.do(
    {
      id: `${part.mark}/hinges`,
      kind: 'hang',
      stage: 'hang',
      title: `Hang ${named(part)} on ${post.mark}`,
      does: cup
        ? {
            act: 'hinge',
            workpiece: part.mark,
            into: 'case',
            post: post.mark,
            count,
            cup: cup.diameter,
            plateScrews: cup.plateScrews,
            screw: leaf.screw,
            length: leaf.screwLength,
            diameter: leaf.screwDiameter,
          }
        : { act: 'other', on: [part.mark, 'case'] },
      tool: 'drill',
      times: count,
      lines: cup
        ? [
            what,
            `Lay ${part.mark} on its face: press the cups ({2} wide) into its back, arms square to its edge, two screws each; two screws through each plate into the pilots in ${post.mark}, {3} apart.`,
            'Screw by hand at the end: such short screws strip their holes. Then bring the door back to its place, and clip or slide the arms onto their plates, the uppermost first, someone holding the door.',
          ]
        : [
            what,
            'Pilot holes through the leaves, {2} wide and {3} deep, a little toward the back so that the screws draw them in. One screw in each leaf first; try the door, then the others.',
          ],
      lengths: [
        leaf.screwLength,
        leaf.screwDiameter,
        ...(cup
          ? [cup.diameter, cup.plateScrews]
          : [leaf.pilot, bench.set('drill', leaf.screwLength, 'down')]),
      ],
      cautions: liftCautions(bench, [part]),
    },
    [part.mark, 'case'],
  );
}

function adjust(bench: Bench, { leaves, pairs }: Adjusted): void {
  const marks = leaves.map((d) => partOf(bench, d.part).mark);
  const [{ cup, gap, held, hang }] = leaves as [DoorLeaf, ...DoorLeaf[]];
  bench.do(
    {
      id: `${marks[0]}/adjust`,
      kind: 'adjust',
      stage: 'hang',
      title: `Adjust ${markWords(marks)}`,
      does: { act: 'other', on: [...marks, 'case'] },
      times: leaves.length,
      lines: [
        cup
          ? 'By the screws of the hinges: first height, then sideways until the edges are parallel, then in and out.'
          : 'Where it binds, look which edge has rubbed: a slip of card behind a leaf moves the door away, a deeper recess draws it in.',
        `${gapWords(hang, pairs)} Open and close ${leaves.length > 1 ? 'each' : 'it'} right round: nothing may touch.`,
        held?.stays
          ? 'Take stays, flap and hinges off again for the finish.'
          : 'Take doors and hinges off again for the finish.',
      ],
      lengths: [bench.set('marking', gap)],
    },
    [...marks, 'case'],
  );
}

/** Where the gap is to be seen: all round an inset door, between overlay doors. */
function gapWords(hang: DoorLeaf['hang'], pairs: boolean): string {
  if (hang === 'inset') return `The gap is {0} all round${pairs ? ', and between the two doors' : ''}.`;
  return 'The gap is {0} between doors and under a top that lies on the case; half as much is left free at the case’s own edges.';
}
