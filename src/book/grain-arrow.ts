import { line, type Mark, text } from './drawing.ts';

/** A two-headed arrow along x with the word `grain` over it, from (0, 0) to the right. */
export function grainArrow(x: number, y: number, length: number): Mark[] {
  const head = 1.4;
  const end = x + length;
  return [
    line([x, y], [end, y], 'fine', 'quiet'),
    line([x, y], [x + head, y - head * 0.5], 'fine', 'quiet'),
    line([x, y], [x + head, y + head * 0.5], 'fine', 'quiet'),
    line([end, y], [end - head, y - head * 0.5], 'fine', 'quiet'),
    line([end, y], [end - head, y + head * 0.5], 'fine', 'quiet'),
    text([end + 1.6, y + 0.95], 'grain', 2.7, { tone: 'quiet' }),
  ];
}
