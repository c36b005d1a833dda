import { joinMarks } from '../setting-out/index.ts';
import { listWords } from './words.ts';

/** Up to so many marks are read one by one. */
const FEW = 4;

/** Marks in a heading: each by itself where they are few, else in their order, from one to another where none is missing. */
export function markWords(marks: readonly string[]): string {
  if (marks.length <= FEW) return listWords(marks);
  const number = (mark: string) => Number(mark.slice(1));
  const sorted = [...marks].sort((a, b) => (a[0]! < b[0]! ? -1 : a[0]! > b[0]! ? 1 : number(a) - number(b)));
  return listWords(joinMarks(sorted).split(', '));
}
