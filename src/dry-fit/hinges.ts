import { toMm } from '../measure/index.ts';
import type { Point } from '../solid/index.ts';
import { type Assembly, frameOf, fromMember, type Member, planesOf } from './assembly.ts';
import type { DryFitFault } from './report.ts';
import { type DrivenScrew, FAR_FACE, inside, meet, OFF_PILOT } from './screws.ts';

import type { Way } from './virtual-piece.ts';

/** What a card says of a door's hinges. */
export interface HingeCard {
  readonly door: string;
  readonly post: string;
  readonly count: number;
  readonly cupMm: number;
  readonly plateScrewsMm: number;
  readonly lengthMm: number;
  readonly diameterMm: number;
}

/** A blind hole as it stands in the assembly, mm. */
interface Bored {
  readonly mouth: Point;
  readonly into: Point;
  readonly diameter: number;
  readonly way: Way;
}

type Fault = Omit<DryFitFault, 'operation'>;

/** How far the arm of a hinge reaches from the cup to its plate, mm (from memory of usual hinges). */
const ARM = 110;
/** How far the screws of a cup may lie from its middle, mm: the flange is hardly wider than the cup. */
const FLANGE = 40;

/**
 * Presses the cups into the holes that were bored for them and drives the screws of cups and plates. Whether each
 * plate's two holes stand level with its cup is measured on the wood, with the door where it was set.
 */
export function hangHinges(
  assembly: Assembly,
  card: HingeCard,
  driven: readonly DrivenScrew[],
): { readonly screws: readonly DrivenScrew[]; readonly faults: readonly Fault[] } {
  const door = assembly.members.find((m) => m.mark === card.door);
  const post = assembly.members.find((m) => m.mark === card.post);
  if (!door || !post) {
    const on = door ? card.post : card.door;
    return {
      screws: [],
      faults: [{ code: 'workpiece-missing', on, sentence: `${on} is not there to be hinged.` }],
    };
  }
  const faults: Fault[] = [];
  const screws: DrivenScrew[] = [];
  const drive = (member: Member, hole: Bored, filled: readonly Bored[]) => {
    const tip = along(hole, card.lengthMm);
    if (!inside(member, tip, FAR_FACE - 1e-6))
      faults.push({
        code: 'screw-comes-through',
        on: member.mark,
        sentence: `A hinge screw ends less than ${FAR_FACE} mm under the far face of ${member.mark}.`,
      });
    const screw: DrivenScrew = {
      parts: [member.mark, member.mark],
      head: hole.mouth,
      tip,
      radius: card.diameterMm / 2,
      fills: filled.map((h) => h.way),
    };
    if ([...driven, ...screws].some((d) => meet(d, screw)))
      faults.push({
        code: 'screws-meet',
        on: member.mark,
        sentence: `Two screws meet inside ${member.mark}.`,
      });
    screws.push(screw);
  };
  const inDoor = boredIn(door);
  const inPost = boredIn(post);
  const planes = planesOf(door);
  const middle = toMm((planes['-x'] + planes['+x']) / 2);
  const cups = inDoor.filter((h) => Math.abs(h.diameter - card.cupMm) < 0.1);
  if (cups.length !== card.count)
    faults.push({
      code: 'no-hole',
      on: card.door,
      sentence: `${card.door} is to hang on ${card.count} hinges and has holes for ${cups.length} cups.`,
    });
  for (const cup of cups) {
    const beside = inDoor.filter((h) => h.diameter < card.diameterMm && near(h.mouth, cup.mouth) < FLANGE);
    if (beside.length !== 2)
      faults.push({
        code: 'no-hole',
        on: card.door,
        sentence: `A cup in ${card.door} has not two pilot holes.`,
      });
    for (const h of beside) drive(door, h, [h, cup]);
    for (const sign of [-1, 1]) {
      const z = cup.mouth[2] + (sign * card.plateScrewsMm) / 2;
      // A post may carry plates on both faces: this door's are on the side it stands at.
      const hole = inPost
        .filter(
          (h) => h.diameter < card.diameterMm && Math.abs(h.mouth[2] - z) <= OFF_PILOT && within(h, cup),
        )
        .sort((a, b) => Math.abs(a.mouth[0] - cup.mouth[0]) - Math.abs(b.mouth[0] - cup.mouth[0]))
        .find((h) => Math.sign(h.into[0]) === Math.sign(h.mouth[0] - middle));
      if (hole) drive(post, hole, [hole]);
      else
        faults.push({
          code: 'no-hole',
          on: card.post,
          sentence: `A plate on ${card.post} finds no pilot hole level with its cup in ${card.door}.`,
        });
    }
  }
  return { screws, faults };
}

function boredIn(member: Member): readonly Bored[] {
  const frame = frameOf(member);
  return member.piece.ways.flatMap((w) =>
    w.kind === 'hole' && w.depth !== undefined
      ? [
          {
            way: w,
            mouth: fromMember(frame, w.at),
            into: fromMember(frame, w.along, true),
            diameter: w.diameter,
          },
        ]
      : [],
  );
}

function along(hole: Bored, distance: number): Point {
  const [p, d] = [hole.mouth, hole.into];
  return [p[0] + d[0] * distance, p[1] + d[1] * distance, p[2] + d[2] * distance];
}

function near(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** True when the arm of a hinge reaches from its cup to a hole of its plate, seen from above. */
function within(hole: Bored, cup: Bored): boolean {
  return Math.hypot(hole.mouth[0] - cup.mouth[0], hole.mouth[1] - cup.mouth[1]) <= ARM;
}
