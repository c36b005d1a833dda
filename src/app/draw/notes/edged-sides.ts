import type { RecordOf } from '../../../job/index.ts';

const OFFERED = [
  ['', 'Front edges'],
  ['front,left,right', 'Front edges, and the ends of what runs through'],
  ['front,upper', 'Front edges, and the upper ends of the sides'],
  ['front,left,right,upper', 'Front edges, and all ends that show'],
] as const;

const WORDS = {
  front: 'front edges',
  left: 'left ends',
  right: 'right ends',
  upper: 'upper ends',
  lower: 'lower ends',
} as const;

/** What the edging of a case may cover, and what it covers now, should the job file say something else. */
export function edgedSides(
  sides: RecordOf<'edging'>['sides'],
): readonly (readonly [value: string, words: string])[] {
  const now = sides?.join(',') ?? '';
  if (sides === undefined || OFFERED.some(([value]) => value === now)) return OFFERED;
  const words = sides.map((side) => WORDS[side]).join(' and ');
  return [...OFFERED, [now, `Only ${words}`]];
}
