import type { Traced } from '../measure/index.ts';
import type { JoinedBlank } from './blanks/joined-blank.ts';
import type { Cleat } from './case/cleat.ts';
import type { GluedPanel } from './glued/glued-panel.ts';
import type { Part } from './part.ts';

interface Parted<P = Part> {
  readonly parts: readonly P[];
  readonly gluedPanels: readonly GluedPanel<P>[];
  readonly cleats: readonly Cleat<P>[];
  readonly joinedBlanks: readonly JoinedBlank<P>[];
  readonly splines: readonly P[];
}

/**
 * All that comes off the saw: boards in place of the panels that are glued up from them, blanks in place of the strips and
 * panels that are parted from them, splines, and every other part.
 */
export function partsToCut({ parts, gluedPanels, cleats, joinedBlanks, splines }: Parted): readonly Part[] {
  if (gluedPanels.length + cleats.length + joinedBlanks.length + splines.length === 0) return parts;
  const made = new Set([
    ...gluedPanels.map((g) => g.panel),
    ...cleats.flatMap((c) => [c.onCase, c.onWall]),
    ...joinedBlanks.flatMap((b) => b.parts),
  ]);
  return [
    ...parts.filter((p) => !made.has(p.id)),
    ...gluedPanels.flatMap((g) => g.boards),
    ...cleats.map((c) => c.blank),
    ...joinedBlanks.map((b) => b.blank),
    ...splines,
  ];
}

/** The parts of the piece, the boards that panels are glued up from, the blanks that others are parted from, and splines. */
export function partsAndBoards<P>({
  parts,
  gluedPanels,
  cleats,
  joinedBlanks,
  splines,
}: Parted<P>): readonly P[] {
  return [
    ...parts,
    ...gluedPanels.flatMap((g) => g.boards),
    ...cleats.map((c) => c.blank),
    ...joinedBlanks.map((b) => b.blank),
    ...splines,
  ];
}

/** The blank that a part is parted from; absent where it is cut by itself. */
export function blankOf<P>(
  { cleats, joinedBlanks }: Pick<Parted<P>, 'cleats' | 'joinedBlanks'>,
  id: string,
): P | undefined {
  const cleat = cleats.find((c) => c.onCase === id || c.onWall === id);
  return cleat?.blank ?? joinedBlanks.find((b) => b.parts.includes(id))?.blank;
}

/** Blanks of two parts that are still joined: neither part is ready from an earlier day. */
export function stillJoined<P>(
  joinedBlanks: readonly JoinedBlank<P>[],
  made: ReadonlySet<string>,
): readonly JoinedBlank<P>[] {
  return joinedBlanks.filter((b) => !b.parts.some((id) => made.has(id)));
}

/** How thick the stock of a part is as it is sold: strips are planed later, sheets stay as they are. */
export function stockThickness(part: Pick<Part, 'form' | 'rough' | 'thickness'>): Traced {
  return part.form === 'strip' ? (part.rough?.thickness ?? part.thickness) : part.thickness;
}
