import { axisOf, type Direction, opposite, type Part } from '../setting-out/index.ts';
import type { WorkEdge, WorkSide } from './operation.ts';

const LOOKS: Record<Direction, string> = {
  '+x': 'right',
  '-x': 'left',
  '+y': 'back',
  '-y': 'front',
  '+z': 'upper',
  '-z': 'lower',
};

/** Which way a side of a part looks in the finished piece. */
export function looks(part: Part, side: WorkSide): Direction {
  const { length, width, thickness } = part.place;
  switch (side) {
    case 'start':
      return opposite(length);
    case 'end':
      return length;
    case 'near':
      return opposite(width);
    case 'far':
      return width;
    case 'under':
      return opposite(thickness);
    case 'show':
      return thickness;
  }
}

/** `front edge`, `left end`: a side of a part by where it comes in the piece. */
export function sideWords(part: Part, side: WorkSide): string {
  const noun =
    side === 'start' || side === 'end' ? 'end' : side === 'near' || side === 'far' ? 'edge' : 'face';
  const d = looks(part, side);
  if (part.joins && noun === 'edge') {
    const { mark, looks: way } = part.joins[side === 'near' ? 0 : 1];
    return `${LOOKS[way]} edge of ${mark}`;
  }
  if (noun === 'face') {
    const inner = side === 'under' && axisOf(d).axis === 0 && part.hand !== 'none';
    return inner
      ? 'inner face'
      : part.hand !== 'none' && side === 'show'
        ? 'outer face'
        : `${faceWord(d)} face`;
  }
  return `${LOOKS[d]} ${noun}`;
}

/** What places on a face are measured from: an end, or the tip of its mitre where that is on the other face and not to be seen. */
export function measuredFrom(part: Part, edge: WorkEdge, face: WorkSide): string {
  const hidden = part.features.some((f) => f.kind === 'bevel' && f.edge === edge && f.fullFace !== face);
  return `the ${hidden ? 'tip of the mitre at the ' : ''}${sideWords(part, edge)}`;
}

function faceWord(d: Direction): string {
  return d === '-z' ? 'under' : LOOKS[d];
}

/** The name of a face by which way it looks. */
export function directionWords(d: Direction): string {
  return LOOKS[d];
}

/**
 * The edge from which places along `edge` are measured: the one that looks to the front, or else to the left, or
 * down. `turned` is true when that is the far or end edge, so that a place counts from the other side.
 */
export function referenceFor(
  part: Part,
  edge: WorkEdge,
): { readonly from: WorkEdge; readonly turned: boolean } {
  const [low, high]: [WorkEdge, WorkEdge] =
    edge === 'start' || edge === 'end' ? ['near', 'far'] : ['start', 'end'];
  const turned = axisOf(looks(part, low)).sign > 0;
  return { from: turned ? high : low, turned };
}

/** `E1, E2 and E3`. */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** With a capital at its beginning. */
export function capital(s: string): string {
  return s.charAt(0).toUpperCase() + s.slice(1);
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** A small number as a word, a larger one in figures. */
export function numberWord(n: number): string {
  return NUMBERS[n] ?? String(n);
}

/** What there is of something, in one word or none. */
export function counted(n: number, one: string, many: string): readonly string[] {
  return n === 0 ? [] : [n === 1 ? one : many];
}
