import { toMm } from '../measure/index.ts';
import type { Shape } from '../solid/index.ts';
import { frameOf, type Member, planesOf } from './assembly.ts';
import { boundsOf } from './shape-bounds.ts';

/** A rectangle of wood in a cut through the piece from front to back, mm. */
export interface WoodIn {
  readonly front: number;
  readonly back: number;
  readonly foot: number;
  readonly head: number;
}

/** A member cut through upright at a place along x: its wood in rectangles. Only straight channels count as cut out. */
export function crossSection(member: Member, x: number): readonly WoodIn[] {
  const planes = planesOf(member);
  if (x <= toMm(planes['-x']) || x >= toMm(planes['+x'])) return [];
  let wood: readonly WoodIn[] = [
    {
      front: toMm(planes['-y']),
      back: toMm(planes['+y']),
      foot: toMm(planes['-z']),
      head: toMm(planes['+z']),
    },
  ];
  const frame = frameOf(member);
  for (const body of member.piece.cuts) {
    if (!isBox(body)) continue;
    const { min, max } = boundsOf({ kind: 'moved', body, frame });
    if (x <= min[0] || x >= max[0]) continue;
    wood = wood.flatMap((w) => less(w, { front: min[1], back: max[1], foot: min[2], head: max[2] }));
  }
  return wood;
}

function isBox(shape: Shape): boolean {
  return shape.kind === 'box' || (shape.kind === 'moved' && isBox(shape.body));
}

function less(wood: WoodIn, cut: WoodIn): readonly WoodIn[] {
  const front = Math.max(wood.front, cut.front);
  const back = Math.min(wood.back, cut.back);
  const foot = Math.max(wood.foot, cut.foot);
  const head = Math.min(wood.head, cut.head);
  if (front >= back || foot >= head) return [wood];
  return [
    { ...wood, back: front },
    { ...wood, front: back },
    { front, back, foot: wood.foot, head: foot },
    { front, back, foot: head, head: wood.head },
  ].filter((w) => w.back - w.front > 1e-9 && w.head - w.foot > 1e-9);
}

/** A channel open to one face of what was cut through. */
export interface Channel {
  readonly front: number;
  readonly back: number;
  /** Height of its floor. */
  readonly floor: number;
}

/** How far under its face a channel is looked for, mm. */
const UNDER = 0.25;

/** Channels in the upper (or lower) face of a member's cross-section, from the front. */
export function channelsIn(wood: readonly WoodIn[], face: 'upper' | 'lower'): readonly Channel[] {
  const up = face === 'upper';
  const surface = up ? Math.max(...wood.map((w) => w.head)) : Math.min(...wood.map((w) => w.foot));
  const level = up ? surface - UNDER : surface + UNDER;
  const there = wood
    .filter((w) => w.foot < level && w.head > level)
    .sort((a, b) => a.front - b.front || a.back - b.back);
  const channels: Channel[] = [];
  let reached = there[0]?.back ?? 0;
  for (const w of there.slice(1)) {
    if (w.front > reached + 1e-6) {
      const middle = (reached + w.front) / 2;
      const over = wood.filter((o) => o.front < middle && o.back > middle);
      const floor = up ? Math.max(...over.map((o) => o.head)) : Math.min(...over.map((o) => o.foot));
      channels.push({ front: reached, back: w.front, floor });
    }
    reached = Math.max(reached, w.back);
  }
  return channels;
}
