import { ticks, toMm } from '../measure/index.ts';
import type { Point, Shape, Solids } from '../solid/index.ts';
import { type Assembly, frameOf, fromMember, type Member, planesOf } from './assembly.ts';
import { beside, faces, type Mouth } from './pegs.ts';
import type { DryFitFault } from './report.ts';
import { boundsOf, overlap } from './shape-bounds.ts';
import { shapeOfPiece, type VirtualPiece, type Way } from './virtual-piece.ts';
import { volumeOf } from './volume-of.ts';

/** What a card says of a spline between two parts, and the strip that lies there. */
export interface SplineCard {
  readonly part: string;
  readonly mate: string;
  readonly mark: string;
  readonly strip: VirtualPiece;
  /** How long and how wide the card says it is, mm. */
  readonly longMm: number;
  readonly wideMm: number;
  /** From the front edge of the mate to the spline's end, mm. */
  readonly behindMm: number;
}

/** A spline that stands in a groove of a member, in that member's own frame. */
export interface Inlay {
  readonly mark: string;
  readonly body: Shape;
}

type Fault = Omit<DryFitFault, 'operation'>;

/** A spline goes into its groove by hand when it is no thicker than that less nothing, and holds when it is no thinner than by this, mm. */
const LOOSE = 0.4;
/** A spline may be narrower than both grooves are deep by this, mm: narrower, and it slips away into one. */
const DEEPER = 5;
/** How far the end of a spline may be off the groove's own, mm. */
const AT_END = 0.5;
/** How far grooves may lie from each other, mm: parts that are pushed on shift by as much. */
const OFF_LINE = 1;
/** How far a strip may be off what its card says, mm: less than a tooth of the saw. */
const OFF_SIZE = 0.75;
/** A raw edge this thin is what setting the saw leaves, mm. */
const RAW = 0.5;
/** Wood that a part may share with a spline, mm³: what rounding on the cards makes. */
const GIVE = 50;

/** Puts a spline into the grooves that two parts turn to each other, and tells what goes wrong. */
export function splined(
  assembly: Assembly,
  card: SplineCard,
  filled: ReadonlySet<Way>,
): {
  readonly fills: readonly Way[];
  readonly inlay?: readonly [Way, Inlay];
  readonly faults: readonly Fault[];
} {
  const [part, mate] = [card.part, card.mate].map((mark) => assembly.members.find((m) => m.mark === mark));
  if (!part || !mate) {
    const on = part ? card.mate : card.part;
    return { fills: [], faults: [{ code: 'workpiece-missing', on, sentence: `${on} is not there.` }] };
  }
  const words = `${card.part} and ${card.mate}`;
  const pair = mouths(part, filled).flatMap((own) => {
    const other = mouths(mate, filled).find((m) => faces(own, m) && beside(own, m) <= OFF_LINE);
    return other ? [[own, other] as const] : [];
  })[0];
  if (!pair)
    return {
      fills: [],
      faults: [
        {
          code: 'no-peg',
          on: card.part,
          sentence: `spline ${card.mark} is to go between ${words}, but no grooves for it meet there.`,
        },
      ],
    };
  const [own, other] = pair;
  const faults: Fault[] = [];
  const binds = (sentence: string) => faults.push({ code: 'peg-binds', on: card.part, sentence });
  const [long, wide, thick] = card.strip.size.map(toMm) as [number, number, number];
  for (const [made, printed, word] of [
    [long, card.longMm, 'long'],
    [wide, card.wideMm, 'wide'],
  ] as const)
    if (Math.abs(made - printed) > OFF_SIZE)
      binds(`spline ${card.mark} is ${round(made)} mm ${word}, not ${round(printed)}.`);
  if (card.strip.raw.some((r) => toMm(ticks(r)) > RAW))
    binds(`spline ${card.mark} still has a raw edge of what it was cut from.`);
  for (const { way } of pair) {
    if (way.diameter < thick)
      binds(`spline ${card.mark} is ${round(thick - way.diameter)} mm too thick for its groove.`);
    if (way.diameter > thick + LOOSE)
      binds(`spline ${card.mark} is ${round(way.diameter - thick)} mm thinner than its groove is wide.`);
  }
  const spare = own.way.depth! + other.way.depth! - wide;
  if (spare < 0) binds(`spline ${card.mark} is ${round(-spare)} mm too wide: the mitre stays open.`);
  if (spare > DEEPER) binds(`spline ${card.mark} is ${round(spare)} mm narrower than its grooves are deep.`);
  // Along the depth of the case, from the front edge that the card names.
  const front = toMm(planesOf(mate)['-y']) + card.behindMm;
  for (const { at, way } of pair)
    if (front < at[1] - way.run! / 2 - AT_END || front + long > at[1] + way.run! / 2 + AT_END)
      binds(`spline ${card.mark} runs past the end of its groove between ${words}.`);
  return {
    fills: [own.way, other.way],
    inlay: [other.way, { mark: card.mark, body: bodyOf(mate, other, front, [long, wide, thick]) }],
    faults: [...new Map(faults.map((f) => [f.sentence, f])).values()],
  };
}

/** Newcomers that would stand where a spline is. */
export function inSplines(
  solids: Solids,
  there: Assembly,
  came: Assembly,
  inlays: ReadonlyMap<Way, Inlay>,
): readonly { readonly newcomer: string; readonly spline: string }[] {
  return there.members.flatMap((member) =>
    member.piece.ways.flatMap((way) => {
      const inlay = inlays.get(way);
      if (!inlay) return [];
      const spline: Shape = { kind: 'moved', body: inlay.body, frame: frameOf(member) };
      return came.members
        .filter((m) => shares(solids, m, spline))
        .map((m) => ({ newcomer: m.mark, spline: inlay.mark }));
    }),
  );
}

function shares(solids: Solids, member: Member, spline: Shape): boolean {
  const shape: Shape = { kind: 'moved', body: shapeOfPiece(member.piece), frame: frameOf(member) };
  if (!overlap(boundsOf(shape), boundsOf(spline))) return false;
  return volumeOf(solids, { kind: 'common', of: [shape, spline] }) > GIVE;
}

function mouths(member: Member, filled: ReadonlySet<Way>): readonly Mouth[] {
  const frame = frameOf(member);
  return member.piece.ways
    .filter((w) => w.kind === 'spline' && !filled.has(w))
    .map((way) => ({ way, at: fromMember(frame, way.at), into: fromMember(frame, way.along, true) }));
}

/** The spline in its member's frame, half in the slope and half before it. */
function bodyOf(
  member: Member,
  { at, way }: Mouth,
  front: number,
  [long, wide, thick]: readonly [number, number, number],
): Shape {
  // A mitred end runs along its part's width, and that along the depth of the case.
  const y = frameOf(member).y;
  const offset = (front + long / 2 - at[1]) * y[1];
  const across: Point = [way.along[2], 0, -way.along[0]];
  const points = [-long / 2, long / 2].flatMap((a) =>
    [-wide / 2, wide / 2].flatMap((b) =>
      [-thick / 2, thick / 2].map(
        (c): Point => [
          way.at[0] + way.along[0] * b + across[0] * c,
          way.at[1] + offset + a,
          way.at[2] + way.along[2] * b + across[2] * c,
        ],
      ),
    ),
  );
  return { kind: 'hull', points };
}

function round(x: number): number {
  return Math.round(x * 10) / 10;
}
