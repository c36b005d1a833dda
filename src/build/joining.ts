import { axisOf, type Direction, type Joint, type Part } from '../setting-out/index.ts';
import { glueBases, isCarried, setOnBase } from './bases-under-cases.ts';
import type { Bench } from './bench.ts';
import { highSide, lowSide, overlap, planesOf } from './boxes.ts';
import { type CaseUnit, unitsOf } from './case-units.ts';
import { driveScrews } from './drive-screws.ts';
import type { Touch } from './operation.ts';
import { jointDirection, offset, outermost } from './seating.ts';
import { setGroup } from './set-group.ts';
import { TopsToLay } from './tops-over-cases.ts';
import { stand } from './turning.ts';

/**
 * Sets the cases of a piece beside and upon one another, and screws each to those that stand; a top over several of them
 * is laid as soon as all that it lies on stand.
 */
export function joinCases(bench: Bench): void {
  const [first, ...rest] = unitsOf(bench);
  if (!first) return;
  const standing = new Map(first.parts.map((p) => [p.id, p]));
  const waiting = [...rest];
  const tops = new TopsToLay(bench, first.name);
  let bases = glueBases(bench);
  // Cases go on their base before a top makes them heavier, and before others stand upon them.
  const fill = () => {
    const ready = bases.filter((base) => isCarried(bench, base, standing));
    for (const base of ready) setOnBase(bench, first.name, base, [...standing.values()]);
    bases = bases.filter((base) => !ready.includes(base));
    tops.lay(standing);
  };
  if (rest.length > 0 || tops.any)
    for (const { name, words } of [first, ...rest]) stand(bench, 'assemble', name, words);
  const met = (unit: CaseUnit) => {
    const own = new Set(unit.parts.map((p) => p.id));
    return bench.setOut.joints.filter(
      (j) =>
        j.duty === 'connect' &&
        ((own.has(j.part) && standing.has(j.mate)) || (own.has(j.mate) && standing.has(j.part))),
    );
  };
  fill();
  while (waiting.length > 0) {
    const next = waiting.find((unit) => met(unit).length > 0);
    // Cases that touch none of the others have been told in the drawing.
    if (!next) break;
    waiting.splice(waiting.indexOf(next), 1);
    const joints = met(next);
    // What stands under it says more of its place than what stands beside it.
    const under = joints.find((j) => axisOf(jointDirection(bench, j)).axis === 2);
    setCase(bench, first.name, next, under ?? joints[0]!, standing);
    for (const part of next.parts) standing.set(part.id, part);
    for (const j of joints) driveScrews(bench, first.name, j);
    fill();
  }
}

/**
 * Brings a case to its place: against the panel that it touches, and so far along that as was drawn. Cases upon one another
 * come out a step of the saw wider or narrower: beside them it meets whichever is wider. So it lies on the ends of sides, where these
 * come out a little above the lid between them.
 */
function setCase(
  bench: Bench,
  into: string,
  unit: CaseUnit,
  joint: Joint,
  standing: ReadonlyMap<string, Part>,
): void {
  const there = standing.get(joint.part) ?? standing.get(joint.mate)!;
  const mine = unit.parts.find((p) => p.id === (there.id === joint.part ? joint.mate : joint.part))!;
  const facing = jointDirection(bench, joint);
  // The way from what stands there to what comes.
  const axis = axisOf(facing).axis;
  const outward = (there.id === joint.part) === axisOf(facing).sign > 0;
  const touches = ([0, 1, 2] as const).map((k): Touch => {
    if (k !== axis) {
      // What is edged is felt by its edging.
      const own = outermost(bench, mine, lowSide(k));
      return { ...offset(bench, own, lowSide(k), outermost(bench, there, lowSide(k))), part: own.part.mark };
    }
    const side = outward ? lowSide(k) : highSide(k);
    const face = outward ? highSide(k) : lowSide(k);
    const inLine = othersInLine(bench, unit, there, standing, face);
    return { part: mine.mark, side, of: there.mark, ...(inLine.length > 0 ? { or: inLine } : {}), face };
  }) as unknown as readonly [Touch, Touch, Touch];
  const upon = axis === 2;
  setGroup(
    bench,
    into,
    unit.name,
    upon
      ? `Lift ${unit.words} upon ${there.mark} (${there.name})`
      : `Stand ${unit.words} beside ${there.mark} (${there.name})`,
    touches,
    [
      'Upright on a level floor. What is too long or too heavy to carry is screwed together here only to try it, and once more in its place.',
      'Fronts and edges flush to the touch; clamp panel to panel, a pad under each jaw, before the first screw.',
    ],
    { length: '+x', width: '+y' },
  );
}

/** Marks of others there that end level with what a case comes against, where any of its own parts meets them. */
function othersInLine(
  bench: Bench,
  unit: CaseUnit,
  there: Part,
  standing: ReadonlyMap<string, Part>,
  face: Direction,
): readonly string[] {
  const l = bench.ledger;
  const { axis, sign } = axisOf(face);
  const opposite = sign > 0 ? lowSide(axis) : highSide(axis);
  const at = (part: Part, side: Direction): number => l.ticks(planesOf(l, part).planes[side]);
  const level = at(there, face);
  const meeting = unit.parts.filter((p) => at(p, opposite) === level);
  const beside = ([0, 1, 2] as const).filter((k) => k !== axis);
  const isMet = (p: Part) => meeting.some((own) => beside.every((k) => overlap(l, own, p, k)));
  // Strips are trimmed level with what they edge.
  const strips = new Set(bench.setOut.joints.filter((j) => j.duty === 'edging').map((j) => j.part));
  return [...standing.values()]
    .filter((p) => p.id !== there.id && !strips.has(p.id) && at(p, face) === level && isMet(p))
    .map((p) => p.mark);
}
