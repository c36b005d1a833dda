import { mitreFace, ticks, toMm } from '../../measure/index.ts';
import { leftOf, type Spans } from '../cut-away.ts';
import type { Part, Side } from '../part.ts';
import { axisOf, boxTicks, type TickBox } from '../place.ts';
import type { SetOut } from '../set-out.ts';
import { outward } from './contact.ts';
import { isGlued, type Joint } from './joint.ts';

/**
 * The area that is glued in a joint, in whole mm²; undefined where none is. Of faces that meet, what both still have
 * where they touch, a groove’s wall among them; of a panel let in by its end, that and the walls beside it; of a
 * back in rabbets, their shoulders; of a mitre, its slope.
 */
export function glueAreaMm2(setOut: SetOut, joint: Joint): number | undefined {
  if (!isGlued(joint)) return undefined;
  const [part, mate] = [joint.part, joint.mate].map((id) => setOut.parts.find((p) => p.id === id)!) as [
    Part,
    Part,
  ];
  const { ledger } = setOut;
  const contact = boxTicks(ledger, joint.contact);
  const sides = [0, 1, 2].map((k) => toMm(ticks(contact.max[k as 0] - contact.min[k as 0])));
  if (joint.kind === 'mitre') {
    // The corner's box is as long as the joint and as wide, both ways, as the strips are thick.
    const thick = toMm(ledger.ticks(part.thickness));
    const run = (sides[0]! * sides[1]! * sides[2]!) / (thick * thick);
    return Math.round(run * toMm(mitreFace(ledger.ticks(part.thickness), 45)));
  }
  if (joint.letIn && joint.kind !== 'groove') {
    const across = toMm(ledger.ticks(part.thickness));
    const end = area(sides);
    // A back lies with its face on the shoulder, and keeps clear of the wall.
    if (joint.duty === 'back') return Math.round(end);
    const run = end / across;
    const walls = joint.kind === 'rabbet' ? 1 : 2;
    return Math.round(end + walls * run * toMm(ledger.ticks(joint.letIn.depth)));
  }
  return Math.round(touching(setOut, part, mate, { side: joint.side, contact }));
}

/** The area of a flat box, mm². */
function area(sides: readonly number[]): number {
  return sides.filter((s) => s > 0).reduce((a, b) => a * b, 1);
}

/** What two faces have in common, less the channels that run out in either. */
function touching(setOut: SetOut, part: Part, mate: Part, { side, contact }: Touching): number {
  const flat = ([0, 1, 2] as const).find((k) => contact.min[k] === contact.max[k]);
  if (flat === undefined) return 0;
  // A skin of one tick on either side of the joint, each in its own part: a channel takes it away where it runs out there.
  const skin = (way: -1 | 1, over: TickBox): TickBox => ({
    min: over.min.map((m, k) => (k === flat && way < 0 ? m - 1 : m)) as never,
    max: over.max.map((m, k) => (k === flat && way > 0 ? m + 1 : m)) as never,
  });
  const boxOf = (spans: Spans): TickBox => ({
    min: spans.map(([from], k) => (k === flat ? contact.min[flat] : from)) as never,
    max: spans.map(([, to], k) => (k === flat ? contact.max[flat] : to)) as never,
  });
  const left = (over: TickBox, of: Part, way: -1 | 1) =>
    leftOf(setOut.ledger, [of], skin(way, over)).map(boxOf);
  const { sign } = axisOf(outward(part.place, side));
  return left(contact, part, -sign as -1 | 1)
    .flatMap((box) => left(box, mate, sign))
    .reduce(
      (sum, box) => sum + area([0, 1, 2].map((k) => toMm(ticks(box.max[k as 0] - box.min[k as 0])))),
      0,
    );
}

/** A side of a part, and the flat box in which it touches another. */
interface Touching {
  readonly side: Side;
  readonly contact: TickBox;
}
