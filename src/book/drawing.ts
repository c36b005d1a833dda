import type { Traced } from '../measure/index.ts';

/** A point on paper, in millimetres from the top left corner: x to the right, y down. */
export type PaperPoint = readonly [x: number, y: number];

/** How heavy a line is and what it means. Widths and dashes are in `pens.ts`. */
export type Pen = 'outline' | 'edge' | 'thin' | 'fine' | 'hidden' | 'centre' | 'cut';

/** A colour by its use. The colours themselves are in `pens.ts`. */
export type Tone =
  | 'ink'
  | 'quiet'
  | 'faint'
  | 'measure'
  | 'paper'
  | 'wood'
  | 'wood-side'
  | 'wood-top'
  | 'board'
  | 'board-side'
  | 'board-top'
  | 'shade'
  | 'warn'
  | 'warn-paper';

/** The two cuts of the book's typeface. */
export type Face = 'regular' | 'semibold';

/** A straight line. */
export interface Line {
  readonly kind: 'line';
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly pen: Pen;
  readonly tone: Tone;
}

/** A closed outline, filled, drawn round, or both. */
export interface Polygon {
  readonly kind: 'polygon';
  readonly points: readonly PaperPoint[];
  readonly fill?: Tone;
  readonly pen?: Pen;
  readonly tone?: Tone;
}

export interface Circle {
  readonly kind: 'circle';
  readonly centre: PaperPoint;
  readonly radius: number;
  readonly fill?: Tone;
  readonly pen?: Pen;
  readonly tone?: Tone;
}

/** One line of text. `at` is on the baseline, at the end that `anchor` names. */
export interface Text {
  readonly kind: 'text';
  readonly at: PaperPoint;
  readonly text: string;
  /** Height of the type (its em) in millimetres; 1 mm is 2.83 points. */
  readonly size: number;
  readonly face: Face;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Turned a quarter to the left, so that it reads from the right-hand side of the page. */
  readonly upright?: true;
  readonly tone: Tone;
  readonly trace?: Traced;
}

/** A measure with all its strokes laid out; `trace` is the length that it shows. */
export interface Dimension {
  readonly kind: 'dimension';
  readonly trace: Traced;
  readonly strokes: readonly Line[];
  readonly label: Text;
}

export type Mark = Line | Polygon | Circle | Text | Dimension;
export type Stroke = Line | Polygon | Circle | Text;

/** A drawing as data: a piece of paper and what is drawn on it, in the order of drawing. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

/** The simple marks that a mark is made of. */
export function strokesOf(mark: Mark): readonly Stroke[] {
  return mark.kind === 'dimension' ? [...mark.strokes, mark.label] : [mark];
}

/** Marks carried to another place on the paper. */
export function moved(marks: readonly Mark[], dx: number, dy: number): Mark[] {
  const to = (p: PaperPoint): PaperPoint => [p[0] + dx, p[1] + dy];
  const line = (m: Line): Line => ({ ...m, from: to(m.from), to: to(m.to) });
  const text = (m: Text): Text => ({ ...m, at: to(m.at) });
  return marks.map((m): Mark => {
    if (m.kind === 'line') return line(m);
    if (m.kind === 'text') return text(m);
    if (m.kind === 'circle') return { ...m, centre: to(m.centre) };
    if (m.kind === 'polygon') return { ...m, points: m.points.map(to) };
    return { ...m, strokes: m.strokes.map(line), label: text(m.label) };
  });
}

/** A line. */
export function line(from: PaperPoint, to: PaperPoint, pen: Pen = 'thin', tone: Tone = 'ink'): Line {
  return { kind: 'line', from, to, pen, tone };
}

/** An upright rectangle by its top left corner and its size. */
export function rectangle(
  x: number,
  y: number,
  width: number,
  height: number,
  look: { readonly fill?: Tone; readonly pen?: Pen; readonly tone?: Tone },
): Polygon {
  return {
    kind: 'polygon',
    points: [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    ...look,
  };
}

/** A line of text. */
export function text(
  at: PaperPoint,
  words: string,
  size: number,
  look: {
    readonly face?: Face;
    readonly anchor?: Text['anchor'];
    readonly tone?: Tone;
    readonly upright?: boolean;
    readonly trace?: Traced;
  } = {},
): Text {
  return {
    kind: 'text',
    at,
    text: words,
    size,
    face: look.face ?? 'regular',
    anchor: look.anchor ?? 'start',
    tone: look.tone ?? 'ink',
    ...(look.upright ? { upright: true as const } : {}),
    ...(look.trace === undefined ? {} : { trace: look.trace }),
  };
}
