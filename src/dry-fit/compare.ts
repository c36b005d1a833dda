import type { Body, Point, Shape, Solids } from '../solid/index.ts';
import { type Assembly, frameOf, type Member } from './assembly.ts';
import type { DryFitFault, PartOutcome } from './report.ts';
import { shapeOfPiece } from './virtual-piece.ts';

/** A part as it was drawn: its mark, and its shape where it stands, mm. */
export interface DrawnPart {
  readonly mark: string;
  readonly shape: Shape;
}

/** How far a part may come out from its drawing, mm: a step of the saw for size, a little more for place. */
const SIZE = 0.75;
const PLACE = 1.5;
/** A hollow (a hole, a rabbet) is the drawn one when its middle is this near and its volume within this share. */
const HOLLOW_PLACE = 1.5;
const HOLLOW_SHARE = 0.2;
/** Slivers below this are rounding, mm³. */
const SLIVER = 15;

/** Compares what was built with what was drawn: every part there, the right size, the right hollows, in its place. */
export function compare(
  solids: Solids,
  built: Assembly,
  drawn: readonly DrawnPart[],
): { readonly parts: readonly PartOutcome[]; readonly faults: readonly DryFitFault[] } {
  const parts: PartOutcome[] = [];
  const faults: DryFitFault[] = [];
  const first = built.members[0];
  const anchor = first && drawn.find((d) => d.mark === first.mark);
  // The drawing counts from the piece's corner, the build from its first part: one shift brings them together.
  const shift =
    anchor && first
      ? solids.within(() => minus(lowCorner(solids, first), lowOf(solids.make(anchor.shape))))
      : ([0, 0, 0] as Point);
  for (const part of drawn) {
    const member = built.members.find((m) => m.mark === part.mark);
    if (!member) {
      faults.push({
        code: 'part-missing',
        on: part.mark,
        sentence: `${part.mark} is not in the finished piece.`,
      });
      continue;
    }
    const { outcome, wrong } = solids.within(() => compareOne(solids, member, part, shift));
    parts.push(outcome);
    for (const sentence of wrong.differs) faults.push({ code: 'part-differs', on: part.mark, sentence });
    if (wrong.misplaced) faults.push({ code: 'part-misplaced', on: part.mark, sentence: wrong.misplaced });
  }
  return { parts, faults };
}

function compareOne(solids: Solids, member: Member, part: DrawnPart, shift: Point) {
  const made = solids.make({ kind: 'moved', body: shapeOfPiece(member.piece), frame: frameOf(member) });
  const drawn = solids.make(part.shape);
  const [madeBox, drawnBox] = [made.bounds()!, drawn.bounds()!];
  const sizes = [0, 1, 2].map(
    (i) => madeBox.max[i]! - madeBox.min[i]! - (drawnBox.max[i]! - drawnBox.min[i]!),
  );
  const offs = [0, 1, 2].map((i) => madeBox.min[i]! - drawnBox.min[i]! - shift[i]!);
  const off = Math.max(...offs.map(Math.abs));
  const differs: string[] = [];
  const worst = sizes.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  if (Math.abs(worst) > SIZE)
    differs.push(`${part.mark} comes out ${round(Math.abs(worst))} mm too ${worst > 0 ? 'large' : 'small'}.`);
  // In place, corner on corner, what is missing and what is too much.
  const aligned = drawn.moved({
    origin: minus(madeBox.min, drawnBox.min),
    x: [1, 0, 0],
    y: [0, 1, 0],
    z: [0, 0, 1],
  });
  differs.push(...differentHollows(solids, part.mark, made, aligned));
  const outcome: PartOutcome = {
    mark: part.mark,
    missing: round(aligned.without(made).volume()),
    surplus: round(made.without(aligned).volume()),
    off: round(off),
  };
  return {
    outcome,
    wrong: {
      differs,
      misplaced: off > PLACE ? `${part.mark} stands ${round(off)} mm from where it was drawn.` : undefined,
    },
  };
}

/** Hollows that only one of the two has. A turned or mirrored part, a missing hole and a wrong edge all show here. */
function differentHollows(solids: Solids, mark: string, made: Body, drawn: Body): readonly string[] {
  const ofDrawn = hollows(solids, drawn);
  const missing: Hollow[] = [];
  const left = [...hollows(solids, made)];
  for (const h of ofDrawn) {
    const i = left.findIndex((m) => alike(m, h));
    if (i < 0) missing.push(h);
    else left.splice(i, 1);
  }
  const says: string[] = [];
  if (missing.length > 0) says.push(`${mark} lacks ${missing.length} of the cuts and holes that were drawn.`);
  if (left.length > 0)
    says.push(`${mark} has ${left.length} cuts or holes that were not drawn, or not there.`);
  return says;
}

interface Hollow {
  readonly volume: number;
  readonly centre: Point;
}

function hollows(solids: Solids, body: Body): readonly Hollow[] {
  const { min, max } = body.bounds()!;
  const empty = solids.make({ kind: 'box', min, max }).without(body);
  return empty
    .pieces()
    .map((p) => ({ volume: p.volume(), centre: p.centre() }))
    .filter((h) => h.volume > SLIVER);
}

function alike(a: Hollow, b: Hollow): boolean {
  const apart = Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1], a.centre[2] - b.centre[2]);
  return apart <= HOLLOW_PLACE && Math.abs(a.volume - b.volume) <= HOLLOW_SHARE * b.volume;
}

function lowCorner(solids: Solids, member: Member): Point {
  return lowOf(solids.make({ kind: 'moved', body: shapeOfPiece(member.piece), frame: frameOf(member) }));
}

function lowOf(body: Body): Point {
  return body.bounds()!.min;
}

function minus(a: Point, b: Point): Point {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function round(x: number): number {
  return Math.round(x * 1000) / 1000;
}
