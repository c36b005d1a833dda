import { toMm } from '../measure/index.ts';
import type { Point, Shape } from '../solid/index.ts';
import { type Assembly, axesOf, axisOf, frameOf, type Member } from './assembly.ts';
import { type Hollow, type Hollows, minus, plus } from './hollows.ts';
import { pairHollows } from './pair-hollows.ts';
import type { DryFitFault, PartOutcome } from './report.ts';
import type { Box } from './shape-bounds.ts';
import { shapeOfPiece } from './virtual-piece.ts';

/** A part as it was drawn: its mark, and its shape where it stands, mm. */
export interface DrawnPart {
  readonly mark: string;
  readonly shape: Shape;
  /** How much further than a step of the saw its size is from the drawing, so that it goes with what others print, mm. */
  readonly toFit?: number;
}

/**
 * How far a part may come out from its drawing, mm: its length and width by the step of the saw (a part between two
 * others is rounded down), its thickness not at all, its place a little more than marking out leaves.
 */
const BESIDE_STEP = 0.05;
const THICKNESS = 0.05;
const PLACE = 1.5;
/** A raw edge this thin is what setting the saw leaves, mm. */
const RAW = 0.5;
/** Compares what was built with what was drawn: every part there, the right size, the right hollows, in its place. */
export function compare(
  hollows: Hollows,
  built: Assembly,
  drawn: readonly DrawnPart[],
  sawStep: number,
): { readonly parts: readonly PartOutcome[]; readonly faults: readonly DryFitFault[] } {
  const parts: PartOutcome[] = [];
  const faults: DryFitFault[] = [];
  const first = built.members[0];
  const anchor = first && drawn.find((d) => d.mark === first.mark);
  // The drawing counts from the piece's corner, the build from its first part: one shift brings them together.
  const size = sawStep + BESIDE_STEP;
  const shift: Point =
    anchor && first
      ? minus(hollows.of(standingShape(first)).box.min, hollows.of(anchor.shape).box.min)
      : [0, 0, 0];
  const standing = new Map(built.members.map((m) => [m.mark, m]));
  const pairs = drawn.flatMap((part) => {
    const member = standing.get(part.mark);
    return member ? [[member, part] as const] : [];
  });
  const boxes = new Boxes(hollows, pairs, shift);
  for (const part of drawn) {
    const member = standing.get(part.mark);
    if (!member) {
      faults.push({
        code: 'part-missing',
        on: part.mark,
        sentence: `${part.mark} is not in the finished piece.`,
      });
      continue;
    }
    const box = boxes.shiftOf(member, part, sawStep);
    if (box.astray) faults.push({ code: 'part-misplaced', on: part.mark, sentence: box.astray });
    const { outcome, wrong } = compareOne(hollows, member, part, box.shift, size + (part.toFit ?? 0));
    parts.push(outcome);
    for (const sentence of wrong.differs) faults.push({ code: 'part-differs', on: part.mark, sentence });
    if (wrong.misplaced) faults.push({ code: 'part-misplaced', on: part.mark, sentence: wrong.misplaced });
  }
  return { parts, faults };
}

/**
 * Boxes that were set beside others. Each may have come out smaller by as much as a saw is set, and those before it as
 * well: its own parts are held against its first one, and that one against what it was set beside, with a step of the saw to it.
 */
class Boxes {
  /** How far each box stands from the drawing, by its first part; under 0 what belongs to none. */
  private readonly shifts: Map<number, Point>;
  private readonly told = new Set<number>();

  constructor(hollows: Hollows, pairs: readonly (readonly [Member, DrawnPart])[], whole: Point) {
    this.shifts = new Map([[0, whole]]);
    for (const [member, part] of pairs) {
      const nth = member.box?.nth ?? 0;
      if (!this.shifts.has(nth))
        this.shifts.set(
          nth,
          minus(hollows.of(standingShape(member)).box.min, hollows.of(part.shape).box.min),
        );
    }
  }

  shiftOf(
    member: Member,
    part: DrawnPart,
    sawStep: number,
  ): { readonly shift: Point; readonly astray?: string } {
    const { nth, beside } = member.box ?? { nth: 0, beside: [] };
    const shift = this.shifts.get(nth)!;
    if (nth === 0 || this.told.has(nth)) return { shift };
    this.told.add(nth);
    const others = beside.map((n) => this.shifts.get(n)!);
    const off = Math.max(...shift.map((s, i) => Math.min(...others.map((o) => Math.abs(s - o[i]!)))));
    return off > PLACE + sawStep
      ? {
          shift,
          astray: `The box that ${part.mark} belongs to stands ${round(off)} mm from where it was drawn.`,
        }
      : { shift };
  }
}

function compareOne(hollows: Hollows, member: Member, part: DrawnPart, shift: Point, size: number) {
  const made = hollows.of(standingShape(member));
  const drawn = hollows.of(part.shape);
  const [madeBox, drawnBox] = [made.box, drawn.box];
  const sizes = [0, 1, 2].map(
    (i) => madeBox.max[i]! - madeBox.min[i]! - (drawnBox.max[i]! - drawnBox.min[i]!),
  );
  const offs = [0, 1, 2].map((i) => madeBox.min[i]! - drawnBox.min[i]! - shift[i]!);
  const off = Math.max(...offs.map(Math.abs));
  const differs: string[] = [];
  const through = axisOf(axesOf(member.turn)[2]).axis;
  const wrongSizes = sizes.filter((s, i) => Math.abs(s) > (i === through ? THICKNESS : size));
  if (wrongSizes.length > 0) {
    const worst = wrongSizes.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
    differs.push(`${part.mark} comes out ${round(Math.abs(worst))} mm too ${worst > 0 ? 'large' : 'small'}.`);
  }
  if (member.piece.raw.some((r) => toMm(r) > RAW))
    differs.push(`${part.mark} still has a raw edge of what it was cut from.`);
  if (looksAway(member, part))
    differs.push(`${part.mark} shows the wrong face: its show face looks the other way.`);
  // Corner on corner, as the box it fills and the hollows in it.
  const by = minus(madeBox.min, drawnBox.min);
  const moved = <T extends { readonly middle: Point }>(h: T): T => ({ ...h, middle: plus(h.middle, by) });
  const hollow = pairHollows(
    made.hollows,
    drawn.hollows.map((h) => ({
      ...moved(h),
      centre: plus(h.centre, by),
      ...(h.cuts ? { cuts: h.cuts.map(moved) } : {}),
    })),
    size,
  );
  if (hollow.lacking.length > 0)
    differs.push(`${part.mark} lacks ${hollow.lacking.length} of the cuts and holes that were drawn.`);
  if (hollow.extra.length > 0)
    differs.push(`${part.mark} has ${hollow.extra.length} cuts or holes that were not drawn, or not there.`);
  const [madeVolume, drawnVolume, common] = boxVolumes(madeBox, drawnBox);
  const outcome: PartOutcome = {
    mark: part.mark,
    missing: round(drawnVolume - common + hollow.wider + sum(hollow.extra)),
    surplus: round(madeVolume - common + hollow.narrower + sum(hollow.lacking)),
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

/** True for a part whose show face looks to where its under face was drawn. */
function looksAway(member: Member, { shape }: DrawnPart): boolean {
  const [a, b] = [frameOf(member).z, shape.kind === 'moved' ? shape.frame.z : undefined];
  return b !== undefined && a[0] * b[0] + a[1] * b[1] + a[2] * b[2] < -0.5;
}

/** Volumes of two boxes laid corner on corner, and of what they share. */
function boxVolumes(a: Box, b: Box): readonly [number, number, number] {
  const size = (box: Box, i: number) => box.max[i]! - box.min[i]!;
  const volume = (side: (i: number) => number) => side(0) * side(1) * side(2);
  return [
    volume((i) => size(a, i)),
    volume((i) => size(b, i)),
    volume((i) => Math.min(size(a, i), size(b, i))),
  ];
}

function sum(of: readonly Hollow[]): number {
  return of.reduce((total, h) => total + h.volume, 0);
}

function standingShape(member: Member): Shape {
  const known = STANDING.get(member);
  if (known) return known;
  const shape: Shape = { kind: 'moved', body: shapeOfPiece(member.piece), frame: frameOf(member) };
  STANDING.set(member, shape);
  return shape;
}

/** A member never changes, and what it looks like is asked for several times. */
const STANDING = new WeakMap<Member, Shape>();

function round(x: number): number {
  return Math.round(x * 1000) / 1000;
}
