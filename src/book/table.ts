import { type Face, line, type Mark, moved, type Tone } from './drawing.ts';
import type { Block } from './flow.ts';
import type { TextMeasure } from './text-measure.ts';
import { paragraph, type Run } from './typeset.ts';

/** A column: its heading, its share of the width, and how its cells are set. */
export interface TableColumn {
  readonly title: string;
  /** Millimetres; a column without takes what is left, shared with others without. */
  readonly width?: number;
  readonly align?: 'start' | 'end';
  readonly face?: Face;
  readonly tone?: Tone;
}

export type Cell = string | readonly Run[];

/** Height of the type in tables. */
export const TABLE_TYPE = 3.4;
const GUTTER = 4.5;
const PAD = 1.5;

/** A table as blocks: a head that comes again on each page, and a block a row, ruled lightly between. */
export function table(
  columns: readonly TableColumn[],
  rows: readonly (readonly Cell[])[],
  width: number,
  type: TextMeasure,
): Block[] {
  const fixed = columns.reduce((s, c) => s + (c.width ?? 0), 0) + GUTTER * (columns.length - 1);
  const open = columns.filter((c) => c.width === undefined).length;
  const share = open > 0 ? (width - fixed) / open : 0;
  const row = (cells: readonly Cell[], size: number, look: { readonly head: boolean }) => {
    const marks: Mark[] = [];
    let height = 0;
    let x = 0;
    columns.forEach((c, i) => {
      const wide = c.width ?? share;
      const set = paragraph(cells[i] ?? '', wide, size, type, {
        face: look.head ? 'regular' : (c.face ?? 'regular'),
        tone: look.head ? 'quiet' : (c.tone ?? 'ink'),
        align: c.align ?? 'start',
      });
      marks.push(...moved(set.marks, x, PAD));
      height = Math.max(height, set.height);
      x += wide + GUTTER;
    });
    return { marks, height: height + PAD * 2 - size * 0.3 };
  };
  const rule = (y: number, strong: boolean) =>
    line([0, y], [width, y], strong ? 'thin' : 'fine', strong ? 'ink' : 'faint');
  const titles = row(
    columns.map((c) => c.title),
    TABLE_TYPE * 0.86,
    { head: true },
  );
  const head: Block = {
    marks: [...titles.marks, rule(titles.height, true)],
    height: titles.height,
    keep: true,
  };
  // No row stands alone at the foot or the head of a page.
  const paired = (i: number) => rows.length > 1 && (i === 0 || i === rows.length - 2);
  const body = rows.map((cells, i): Block => {
    const set = row(cells, TABLE_TYPE, { head: false });
    return { marks: [...set.marks, rule(set.height, false)], height: set.height, head, keep: paired(i) };
  });
  return [head, ...body];
}
