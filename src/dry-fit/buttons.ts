import { TICKS_PER_MM, toMm } from '../measure/index.ts';
import type { Solids } from '../solid/index.ts';
import { type Assembly, axisOf, frameOf, type Member, planesOf } from './assembly.ts';
import { inTheWay, sharedVolume } from './in-the-way.ts';
import type { DryFitFault } from './report.ts';
import { boundsOf } from './shape-bounds.ts';

/** What a card says of the buttons at one upright. */
export interface ButtonCard {
  readonly post: string;
  /** Which way the mortises look: `+x` or `-x`. */
  readonly face: '+x' | '-x';
  readonly top: string;
  readonly tongueMm: number;
  /** From the front end of its mortise to each button, and how far each is to move to the front and to the back. */
  readonly besideMm: readonly number[];
  readonly movesMm: readonly number[];
}

type Fault = Pick<DryFitFault, 'code' | 'sentence'>;

/** A tongue that must be lifted further than this before it meets the wood above it holds nothing, mm. */
const LIFT = 1.5;
/** What rounding on cards may take of the room that a mortise leaves beyond what the wood moves, mm. */
const SHORT = 1;

/**
 * Puts buttons into the mortises that were really routed in an upright, from the front: each so far from the front end of its own, so
 * deep, and against the top. They must go in, move with the top as far as the card says, and keep it from lifting.
 */
export function buttonsIn(
  solids: Solids,
  there: Assembly,
  loose: readonly Member[],
  card: ButtonCard,
): { readonly members: readonly Member[]; readonly faults: readonly Fault[] } {
  const post = there.members.find((m) => m.mark === card.post);
  const top = there.members.find((m) => m.mark === card.top);
  if (!post || !top) {
    const sentence = `${post ? card.top : card.post} is not there.`;
    return { members: [], faults: [{ code: 'workpiece-missing', sentence }] };
  }
  const mortises = mortisesIn(post, card.face);
  if (mortises.length !== loose.length) {
    const sentence = `${card.post} has ${mortises.length} mortises there for ${loose.length} buttons.`;
    return { members: [], faults: [{ code: 'no-hole', sentence }] };
  }
  const faults: Fault[] = [];
  const members = loose.map((button, i) => {
    const [mortise, movesMm] = [mortises[i]!, card.movesMm[i]!];
    const member = putIn(button, post, top, card, mortise.front + card.besideMm[i]!);
    faults.push(...faultsOf(solids, there, member, { post, top, card, movesMm, highMm: mortise.high }));
    return member;
  });
  return { members, faults };
}

function putIn(button: Member, post: Member, top: Member, card: ButtonCard, frontMm: number): Member {
  const { sign } = axisOf(card.face);
  const [own, upright] = [planesOf({ ...button, origin: [0, 0, 0] }), planesOf(post)];
  const tongue = Math.round(card.tongueMm * TICKS_PER_MM);
  const tip = upright[card.face] - sign * tongue;
  return {
    ...button,
    origin: [
      tip - own[sign > 0 ? '-x' : '+x'],
      Math.round(frontMm * TICKS_PER_MM) - own['-y'],
      planesOf(top)['-z'] - own['+z'],
    ],
  };
}

interface InPlace {
  readonly post: Member;
  readonly top: Member;
  readonly card: ButtonCard;
  readonly movesMm: number;
  /** How wide its mortise is, up and down. */
  readonly highMm: number;
}

function faultsOf(
  solids: Solids,
  there: Assembly,
  button: Member,
  { post, top, card, movesMm, highMm }: InPlace,
): readonly Fault[] {
  const { mark } = button;
  const { sign } = axisOf(card.face);
  const moved = (x: number, y: number, z: number): Member => {
    const [a, b, c] = button.origin;
    const by = [x, y, z].map((d) => Math.round(d * TICKS_PER_MM)) as [number, number, number];
    return { ...button, origin: [a + by[0], b + by[1], c + by[2]] };
  };
  const others: Assembly = { members: there.members.filter((m) => m !== top) };
  const meets = (to: Member, among: Assembly) => inTheWay(solids, among, { members: [to] })[0];
  const clash = meets(button, there) ?? meets(moved(sign * card.tongueMm, 0, 0), others);
  if (clash)
    return [
      { code: 'in-the-way', sentence: `${mark} runs into ${clash.there} by about ${clash.depthMm} mm.` },
    ];
  const faults: Fault[] = [];
  for (const by of [-movesMm, movesMm]) {
    const to = moved(0, by, 0);
    const short = sharedVolume(solids, to, post) / (card.tongueMm * highMm);
    const stop = short > SHORT ? card.post : meets(to, others)?.there;
    if (stop !== undefined)
      faults.push({
        code: 'in-the-way',
        sentence: `${mark} runs into ${stop} when the top moves ${by < 0 ? 'to the front' : 'to the back'} by what the card says.`,
      });
  }
  if (sharedVolume(solids, moved(0, 0, LIFT), post) === 0)
    faults.push({
      code: 'holds-nothing',
      sentence: `${mark} doesn’t catch in ${card.post}, and holds nothing down.`,
    });
  return faults;
}

/** Front end and width up and down, mm, of what is cut into a face of an upright and closed at both ends, from the front. */
function mortisesIn(
  post: Member,
  face: '+x' | '-x',
): readonly { readonly front: number; readonly high: number }[] {
  const { sign } = axisOf(face);
  const planes = planesOf(post);
  const [front, rear, surface] = [toMm(planes['-y']), toMm(planes['+y']), toMm(planes[face])];
  const frame = frameOf(post);
  const found = post.piece.cuts
    .filter((cut) => cut.kind === 'box')
    .map((body) => boundsOf({ kind: 'moved', body, frame }))
    .filter(({ min, max }) => {
      const opens = sign > 0 ? max[0] > surface && min[0] < surface : min[0] < surface && max[0] > surface;
      const through = min[2] < toMm(planes['-z']) || max[2] > toMm(planes['+z']);
      const blind = sign > 0 ? min[0] > toMm(planes['-x']) : max[0] < toMm(planes['+x']);
      return opens && blind && !through && min[1] > front && max[1] < rear;
    })
    .sort((a, b) => a.min[1] - b.min[1]);
  // Several passes of a bit make one.
  const fronts = [...new Set(found.map(({ min }) => Math.round(min[1] * 100)))];
  return fronts.map((front) => {
    const passes = found.filter(({ min }) => Math.round(min[1] * 100) === front);
    const low = Math.min(...passes.map(({ min }) => min[2]));
    return { front: front / 100, high: Math.max(...passes.map(({ max }) => max[2])) - low };
  });
}
