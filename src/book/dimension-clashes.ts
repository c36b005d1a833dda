import { type Drawing, type Line, strokesOf, type Text } from './drawing.ts';
import type { TextMeasure } from './text-measure.ts';

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * What on a drawing gets in the way of reading it: texts that overlap, dimension strokes or part lines that run
 * through a figure, and figures that leave the paper. A sentence each; none when the drawing is clear.
 */
export function dimensionClashes(drawing: Drawing, type: TextMeasure): string[] {
  const clashes: string[] = [];
  const texts: {
    readonly text: Text;
    readonly box: Box;
    readonly owner: number;
    readonly figure: boolean;
  }[] = [];
  const lines: { readonly line: Line; readonly owner: number }[] = [];
  drawing.marks.forEach((mark, owner) => {
    for (const s of strokesOf(mark)) {
      if (s.kind === 'text')
        texts.push({ text: s, box: textBox(s, type), owner, figure: mark.kind === 'dimension' });
      if (s.kind === 'line') lines.push({ line: s, owner });
    }
  });
  texts.forEach((a, i) => {
    const { box } = a;
    if (box.left < 0 || box.top < 0 || box.right > drawing.width || box.bottom > drawing.height)
      clashes.push(`"${a.text.text}" leaves the paper`);
    for (const b of texts.slice(i + 1))
      if (overlap(box, b.box)) clashes.push(`"${a.text.text}" and "${b.text.text}" overlap`);
    if (!a.figure) return;
    for (const l of lines)
      if (l.line.pen !== 'hidden' && crosses(l.line, box))
        clashes.push(`a line runs through "${a.text.text}"`);
  });
  return clashes;
}

/** The box that a text's letters fill, without the room of letters that hang below the line. */
export function textBox(t: Text, type: TextMeasure): Box {
  const wide = type.width(t.text, t.size, t.face);
  const before = t.anchor === 'start' ? 0 : t.anchor === 'middle' ? wide / 2 : wide;
  const [x, y] = t.at;
  const high = t.size * 0.72;
  return t.upright
    ? { left: x - high, right: x, top: y - wide + before, bottom: y + before }
    : { left: x - before, right: x - before + wide, top: y - high, bottom: y };
}

function overlap(a: Box, b: Box): boolean {
  const room = 0.01;
  return (
    a.left < b.right - room && b.left < a.right - room && a.top < b.bottom - room && b.top < a.bottom - room
  );
}

/** Whether a line passes through a box (clipping its parameter by the four sides). */
function crosses(l: Line, box: Box): boolean {
  let [from, to] = [0, 1];
  const way = [l.to[0] - l.from[0], l.to[1] - l.from[1]] as const;
  const limits = [
    [l.from[0], way[0], box.left, box.right],
    [l.from[1], way[1], box.top, box.bottom],
  ] as const;
  for (const [start, step, low, high] of limits) {
    if (Math.abs(step) < 1e-9) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [s, t] = [(low - start) / step, (high - start) / step];
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  return to - from > 1e-9;
}
