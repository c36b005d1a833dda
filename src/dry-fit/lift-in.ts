import { TICKS_PER_MM, type Ticks, ticks, toMm } from '../measure/index.ts';
import type { Shape, Solids } from '../solid/index.ts';
import { type Assembly, axesOf, axisOf, type Member, planesOf } from './assembly.ts';
import { type Channel, channelsIn, crossSection, type WoodIn } from './cross-section.ts';
import { inTheWay } from './in-the-way.ts';
import type { DryFitFault } from './report.ts';
import { jamsAt, press } from './swing.ts';
import type { VirtualPiece } from './virtual-piece.ts';

/** A door before it goes in, and what has been fixed on it. */
interface LoosePieces {
  readonly door: Member;
  readonly fixedOn: readonly Member[];
}

/** What a card says of a door that goes into grooves. */
export interface LiftInCard {
  readonly below: string;
  readonly above: string;
  /** Which groove, counted from the front. */
  readonly groove: number;
  readonly between: readonly [left: string, right: string];
  /** How far it stands from the left one, or that it stands against the right one. */
  readonly besideMm: number | 'against-right';
  readonly liftMm: number;
}

/** A door stands at least this deep in both of its grooves, or it drops out, mm. */
const HOLDS = 1;
/** Wood this near its lower end is what runs on the floor of the groove, mm. */
const FOOT = 0.5;

type Fault = Pick<DryFitFault, 'code' | 'sentence'>;

/**
 * Puts a door into its grooves as they were cut: finds them in the wood, swings the door in at every angle, lets it
 * down, sees that both grooves hold it, and slides it from end to end. `sliding` tells which doors stand in which
 * grooves already: one of the same grooves is pushed aside, all others must be passed.
 */
export function liftedIn(
  solids: Solids,
  there: Assembly,
  { door, fixedOn }: LoosePieces,
  sliding: ReadonlyMap<string, string>,
  card: LiftInCard,
): { readonly members: readonly Member[]; readonly faults: readonly Fault[] } {
  const { mark } = door;
  const find = (name: string) => there.members.find((m) => m.mark === name);
  const [below, above, left, right] = [card.below, card.above, ...card.between].map(find);
  if (!below || !above || !left || !right)
    return failed('workpiece-missing', `What ${mark} is to run between is not there.`);
  const [first, last] = [planesOf(left)['+x'], planesOf(right)['-x']];
  const loose: Member = { ...door, origin: [0, 0, 0] };
  const own = planesOf(loose);
  const x =
    card.besideMm === 'against-right'
      ? last - own['+x']
      : first + Math.round(card.besideMm * TICKS_PER_MM) - own['-x'];
  const middle = toMm(x + (own['-x'] + own['+x']) / 2);
  const lower = channelsIn(crossSection(below, middle), 'upper')[card.groove - 1];
  const upper = channelsIn(crossSection(above, middle), 'lower')[card.groove - 1];
  if (!lower || !upper)
    return failed('no-hole', `${mark} finds no groove in ${lower ? card.above : card.below}.`);
  const runs = middleOfTongue(crossSection({ ...loose, origin: [x, 0, 0] }, middle));
  const y = Math.round(((lower.front + lower.back) / 2 - runs) * TICKS_PER_MM);
  const z = Math.round(lower.floor * TICKS_PER_MM) - own['-z'];
  const member: Member = { ...loose, origin: [x, y, z] };
  const others = {
    members: there.members.filter((m) => sliding.get(m.mark) !== `${card.below} ${card.groove}`),
  };
  const faults = [
    ...goesIn(there, member, middle, { lower, upper }, card),
    ...isHeld(member, below, above),
    ...travels(solids, others, member, first, last),
  ];
  // What is fixed on it goes where it goes, as far as it does on either side.
  const fixed = fixedOn.map((m) => movedBy(m, door.origin, member.origin));
  const [own1, own2] = [planesOf(member)['-x'], planesOf(member)['+x']];
  for (const m of fixed) {
    const planes = planesOf(m);
    faults.push(...travels(solids, others, m, first + planes['-x'] - own1, last + planes['+x'] - own2));
  }
  return { members: [member, ...fixed], faults };
}

function failed(code: DryFitFault['code'], sentence: string) {
  return { members: [], faults: [{ code, sentence }] };
}

function movedBy(member: Member, from: Member['origin'], to: Member['origin']): Member {
  const [x, y, z] = member.origin.map((o, k) => o + to[k]! - from[k]!);
  return { ...member, origin: [x!, y!, z!] };
}

/** The middle of what runs in the lower groove, mm behind the zero of the assembly. */
function middleOfTongue(wood: readonly WoodIn[]): number {
  const foot = Math.min(...wood.map((w) => w.foot));
  const tongue = wood.filter((w) => w.foot < foot + FOOT);
  return (Math.min(...tongue.map((w) => w.front)) + Math.max(...tongue.map((w) => w.back))) / 2;
}

/** The way in: up into the upper groove, swung upright over the edge below, down. */
function goesIn(
  there: Assembly,
  door: Member,
  x: number,
  grooves: { readonly lower: Channel; readonly upper: Channel },
  card: LiftInCard,
): readonly Fault[] {
  const { mark } = door;
  const around = there.members.flatMap((m) => crossSection(m, x));
  const standing = crossSection(door, x);
  const planes = planesOf(door);
  const find = (name: string) => planesOf(there.members.find((m) => m.mark === name)!);
  const [edge, face] = [toMm(find(card.below)['+z']), toMm(find(card.above)['-z'])];
  const front = toMm(planes['-y']);
  const foot = toMm(planes['-z']);
  const over = foot + card.liftMm;
  if (over < edge)
    return [{ code: 'door-jams', sentence: `lifted by that, ${mark} still stands in its lower groove.` }];
  const lip = around.filter((w) => w.head > edge - 1 && w.foot < edge);
  const angle = jamsAt(
    {
      wood: standing.map((w) => ({
        front: w.front - front,
        back: w.back - front,
        foot: w.foot - foot,
        head: w.head - foot,
      })),
      height: toMm(planes['+z']) - foot,
      upper: grooves.upper,
      face,
      edge,
      over,
      reach: grooves.lower.back - Math.min(...lip.map((w) => w.front)),
    },
    around,
  );
  if (angle !== undefined)
    return [{ code: 'door-jams', sentence: `${mark} jams on its way in, ${angle} degrees from upright.` }];
  if (standing.some((w) => around.some((o) => press(w, o))))
    return [{ code: 'door-jams', sentence: `let down, ${mark} does not stand free in its grooves.` }];
  return [];
}

/** Both grooves must hold it, or it drops out of one. */
function isHeld(door: Member, below: Member, above: Member): readonly Fault[] {
  const planes = planesOf(door);
  const down = toMm(planesOf(below)['+z'] - planes['-z']);
  const up = toMm(planes['+z'] - planesOf(above)['-z']);
  return down >= HOLDS && up >= HOLDS
    ? []
    : [
        {
          code: 'door-drops-out',
          sentence: `${door.mark} stands ${round(down)} mm deep below and ${round(up)} mm above: it drops out.`,
        },
      ];
}

/** Swept from end to end, a door runs into nothing. */
function travels(
  solids: Solids,
  there: Assembly,
  door: Member,
  first: number,
  last: number,
): readonly Fault[] {
  const planes = planesOf(door);
  if (planes['-x'] < first || planes['+x'] > last)
    return [{ code: 'door-jams', sentence: `${door.mark} does not fit between its ends.` }];
  const swept = sweptFrom(door, first, last);
  return inTheWay(solids, there, { members: [swept] }).map((clash) => ({
    code: 'in-the-way',
    sentence: `${door.mark} slides into ${clash.there} by about ${clash.depthMm} mm.`,
  }));
}

/** The door as wide as its whole way; what is cut out of it right across is so all the way. */
function sweptFrom(door: Member, first: number, last: number): Member {
  // Of what lies across on a door, its length runs the way the door slides.
  const k = axesOf(door.turn).findIndex((d) => axisOf(d).axis === 0) as 0 | 1 | 2;
  const wide = toMm(door.piece.size[k]);
  const size = [...door.piece.size] as [Ticks, Ticks, Ticks];
  size[k] = ticks(last - first);
  const through = door.piece.cuts.flatMap((c): Shape[] => {
    if (c.kind !== 'box' || c.min[k] > 0 || c.max[k] < wide) return [];
    const max = [...c.max] as [number, number, number];
    max[k] += toMm(size[k]) - wide;
    return [{ kind: 'box', min: c.min, max }];
  });
  const piece: VirtualPiece = { ...door.piece, size, cuts: through };
  const swept: Member = { ...door, piece };
  const off = first - planesOf(swept)['-x'];
  return { ...swept, origin: [door.origin[0] + off, door.origin[1], door.origin[2]] };
}

function round(mm: number): number {
  return Math.round(mm * 10) / 10;
}
