import { toMm } from '../measure/index.ts';
import type { Point } from '../solid/index.ts';
import { type Assembly, frameOf, fromMember, type Member, planesOf } from './assembly.ts';
import type { DryFitFault } from './report.ts';
import { OFF_PILOT } from './screws.ts';

/** What a card says of a shelf and the pins that it lies on. */
export interface PinCard {
  readonly shelf: string;
  readonly posts: readonly [string, string];
  /** What is below the opening. */
  readonly over: string;
  readonly holeMm: number;
  readonly aboveMm: number;
  readonly level: number;
}

type Fault = Omit<DryFitFault, 'operation'>;

/**
 * Looks whether a shelf, where it was put, lies on four pins: two holes in each upright, on the sides that look at the
 * shelf, at the level that the card counts, one near the front and one near the back.
 */
export function restsOnPins(assembly: Assembly, card: PinCard): readonly Fault[] {
  const member = (mark: string) => assembly.members.find((m) => m.mark === mark);
  const [shelf, over, ...posts] = [card.shelf, card.over, ...card.posts].map(member);
  if (!shelf || !over || posts.some((p) => !p)) {
    const on = [card.shelf, card.over, ...card.posts].find((mark) => !member(mark))!;
    return [{ code: 'workpiece-missing', on, sentence: `${on} is not there.` }];
  }
  const planes = planesOf(shelf);
  const foot = toMm(planesOf(over)['+z']);
  const under = toMm(planes['-z']) - card.aboveMm;
  const [front, back] = [toMm(planes['-y']), toMm(planes['+y'])];
  const faults: Fault[] = [];
  posts.forEach((post, i) => {
    const mark = card.posts[i]!;
    const looks = i === 0 ? -1 : 1;
    const holes = pinHoles(post!, card.holeMm).filter(({ into, at }) => into[0] === looks && at[2] > foot);
    const level = levels(holes.map(({ at }) => at[2]))[card.level - 1];
    if (level === undefined || Math.abs(level - under) > OFF_PILOT) {
      faults.push({
        code: 'no-hole',
        on: card.shelf,
        sentence: `${card.shelf} does not lie on pins at level ${card.level} of ${mark}.`,
      });
      return;
    }
    const here = holes.filter(
      ({ at }) => Math.abs(at[2] - level) <= OFF_PILOT && at[1] > front && at[1] < back,
    );
    const middle = (front + back) / 2;
    if (!here.some(({ at }) => at[1] < middle) || !here.some(({ at }) => at[1] > middle))
      faults.push({
        code: 'no-hole',
        on: card.shelf,
        sentence: `${card.shelf} finds no pins both at the front and at the back of ${mark}.`,
      });
  });
  return faults;
}

/** Holes for pins as they stand in the assembly. */
function pinHoles(member: Member, diameter: number): readonly { readonly at: Point; readonly into: Point }[] {
  const frame = frameOf(member);
  return member.piece.ways
    .filter((w) => w.kind === 'pin' && Math.abs(w.diameter - diameter) < 0.1)
    .map((w) => ({ at: fromMember(frame, w.at), into: fromMember(frame, w.along, true) }));
}

/** The different heights among holes, lowest first: what lies closer together is one. */
function levels(heights: readonly number[]): readonly number[] {
  const found: number[] = [];
  for (const z of [...heights].sort((a, b) => a - b))
    if (found.length === 0 || z - found.at(-1)! > OFF_PILOT) found.push(z);
  return found;
}
