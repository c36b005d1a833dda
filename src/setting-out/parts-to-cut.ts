import type { Traced } from '../measure/index.ts';
import type { Cleat } from './case/cleat.ts';
import type { GluedPanel } from './glued/glued-panel.ts';
import type { Part } from './part.ts';

interface Parted<P = Part> {
  readonly parts: readonly P[];
  readonly gluedPanels: readonly GluedPanel<P>[];
  readonly cleats: readonly Cleat<P>[];
  readonly splines: readonly P[];
}

/**
 * All that comes off the saw: boards in place of the panels that are glued up from them, blanks in place of the strips that
 * are parted from them, splines, and every other part.
 */
export function partsToCut({ parts, gluedPanels, cleats, splines }: Parted): readonly Part[] {
  if (gluedPanels.length + cleats.length + splines.length === 0) return parts;
  const made = new Set([...gluedPanels.map((g) => g.panel), ...cleats.flatMap((c) => [c.onCase, c.onWall])]);
  return [
    ...parts.filter((p) => !made.has(p.id)),
    ...gluedPanels.flatMap((g) => g.boards),
    ...cleats.map((c) => c.blank),
    ...splines,
  ];
}

/** The parts of the piece, the boards that panels are glued up from, the blanks that strips are parted from, and splines. */
export function partsAndBoards<P>({ parts, gluedPanels, cleats, splines }: Parted<P>): readonly P[] {
  return [...parts, ...gluedPanels.flatMap((g) => g.boards), ...cleats.map((c) => c.blank), ...splines];
}

/** How thick the stock of a part is as it is sold: strips are planed later, sheets stay as they are. */
export function stockThickness(part: Pick<Part, 'form' | 'rough' | 'thickness'>): Traced {
  return part.form === 'strip' ? (part.rough?.thickness ?? part.thickness) : part.thickness;
}
