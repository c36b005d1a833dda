import { toMm } from '../measure/index.ts';
import type { Point, Solids } from '../solid/index.ts';
import { type Assembly, frameOf, fromMember, type Member, planesOf } from './assembly.ts';
import { inTheWay } from './in-the-way.ts';
import type { DryFitFault } from './report.ts';
import { type DrivenScrew, FAR_FACE, inside, meet, OFF_PILOT } from './screws.ts';
import type { Way } from './virtual-piece.ts';

/** What a card says of a drawer's runners. */
export interface RunnerCard {
  readonly sides: readonly [string, string];
  readonly posts: readonly [string, string];
  readonly thicknessMm: number;
  readonly lengthMm: number;
  readonly diameterMm: number;
  readonly count: number;
  readonly travelTicks: number;
  /** What comes out with the drawer. */
  readonly moves: readonly string[];
}

type Fault = Omit<DryFitFault, 'operation'>;

/** A blind hole on a face that looks to the left or the right. */
interface Pilot {
  readonly mouth: Point;
  readonly into: Point;
  readonly way: Way;
}

/** How much more and less room than they need runners put up with, mm: what rounding on cards leaves beside 1/32 in. */
const WIDER = 1.6;
const NARROWER = 0.8;

/** The drawer is looked at in so many places of its way out. */
const STOPS = 4;

/**
 * Screws a drawer's runners to its sides and to the uprights: on each hand there is room for one, the pilots of both
 * halves stand level, and every screw stays in the wood. Then the drawer is drawn out, and must meet nothing.
 */
export function runOnRunners(
  solids: Solids,
  assembly: Assembly,
  card: RunnerCard,
  driven: readonly DrivenScrew[],
): { readonly screws: readonly DrivenScrew[]; readonly faults: readonly Fault[] } {
  const member = (mark: string) => assembly.members.find((m) => m.mark === mark);
  const missing = [...card.sides, ...card.posts, ...card.moves].find((mark) => !member(mark));
  if (missing !== undefined)
    return {
      screws: [],
      faults: [{ code: 'workpiece-missing', on: missing, sentence: `${missing} is not there.` }],
    };
  const faults: Fault[] = [];
  const screws: DrivenScrew[] = [];
  ([0, 1] as const).forEach((hand) => {
    const [side, post] = [member(card.sides[hand])!, member(card.posts[hand])!];
    const [a, b] = [planesOf(side), planesOf(post)];
    const room = toMm(hand === 0 ? a['-x'] - b['+x'] : b['-x'] - a['+x']);
    if (room - card.thicknessMm > WIDER || card.thicknessMm - room > NARROWER)
      faults.push({
        code: 'runner-room',
        on: side.mark,
        sentence: `Between ${side.mark} and ${post.mark} there are ${Math.round(room * 10) / 10} mm for a runner of ${card.thicknessMm} mm.`,
      });
    const ofSide = pilots(side, hand === 0 ? 1 : -1, card.diameterMm);
    const heights = ofSide.map((p) => p.mouth[2]);
    const level = heights[0];
    const ofPost = pilots(post, hand === 0 ? -1 : 1, card.diameterMm).filter(
      (p) =>
        level !== undefined &&
        Math.abs(p.mouth[2] - level) <= OFF_PILOT &&
        p.mouth[1] < toMm(a['+y']) &&
        p.mouth[1] > toMm(a['-y']),
    );
    if (level === undefined || heights.some((z) => Math.abs(z - level) > OFF_PILOT) || ofPost.length < 2) {
      faults.push({
        code: 'no-hole',
        on: side.mark,
        sentence: `The runner on ${side.mark} finds no level row of pilot holes in it and in ${post.mark}.`,
      });
      return;
    }
    for (const [m, row] of [
      [side, ofSide],
      [post, ofPost],
    ] as const)
      for (const p of row) {
        const tip: Point = [p.mouth[0] + p.into[0] * card.lengthMm, p.mouth[1], p.mouth[2]];
        if (!inside(m, tip, FAR_FACE - 1e-6))
          faults.push({
            code: 'screw-comes-through',
            on: m.mark,
            sentence: `A runner’s screw ends less than ${FAR_FACE} mm under the far face of ${m.mark}.`,
          });
        const screw: DrivenScrew = {
          parts: [m.mark, m.mark],
          head: p.mouth,
          tip,
          radius: card.diameterMm / 2,
          fills: [p.way],
        };
        if ([...driven, ...screws].some((d) => meet(d, screw)))
          faults.push({ code: 'screws-meet', on: m.mark, sentence: `Two screws meet inside ${m.mark}.` });
        screws.push(screw);
      }
  });
  if (faults.length === 0 && screws.length !== card.count)
    faults.push({
      code: 'no-hole',
      on: card.sides[0],
      sentence: `${card.count} screws are to hold the runners of ${card.sides.join(' and ')}, and there are pilot holes for ${screws.length}.`,
    });
  return { screws, faults: [...faults, ...drawnOut(solids, assembly, card)] };
}

function pilots(member: Member, into: 1 | -1, screwMm: number): readonly Pilot[] {
  const frame = frameOf(member);
  return member.piece.ways
    .filter((w) => w.kind === 'hole' && w.depth !== undefined && w.diameter < screwMm)
    .map((way) => ({ mouth: fromMember(frame, way.at), into: fromMember(frame, way.along, true), way }))
    .filter((p) => Math.round(p.into[0]) === into);
}

/** What a drawer runs into on its way out. */
export function drawnOut(
  solids: Solids,
  assembly: Assembly,
  card: Pick<RunnerCard, 'moves' | 'travelTicks'>,
): readonly Fault[] {
  const out = assembly.members.filter((m) => card.moves.includes(m.mark));
  const there = { members: assembly.members.filter((m) => !card.moves.includes(m.mark)) };
  for (let n = 1; n <= STOPS; n++) {
    const by = Math.round((card.travelTicks * n) / STOPS);
    const moved = out.map((m) => ({ ...m, origin: [m.origin[0], m.origin[1] - by, m.origin[2]] as const }));
    const [clash] = inTheWay(solids, there, { members: moved });
    if (clash)
      return [
        {
          code: 'in-the-way',
          on: clash.newcomer,
          sentence: `${clash.newcomer}, drawn out ${Math.round(toMm(by))} mm, runs into ${clash.there}.`,
        },
      ];
  }
  return [];
}
