import type { Ledger, Traced } from '../../measure/index.ts';
import type { Part } from '../part.ts';

/** A panel that is glued up edge to edge from boards, planed flat, and cut to its size. */
export interface GluedPanel<P = Part> {
  /** The part of the piece that it is. */
  readonly panel: string;
  /** From its near edge to its far one. They are no parts of the piece: the panel is. */
  readonly boards: readonly P[];
  /** How wide each board is once both its edges are planed. */
  readonly jointed: Traced;
  /** What boards and panel measure when the glue has set, before anything is taken off. */
  readonly raw: { readonly length: Traced; readonly width: Traced; readonly thickness: Traced };
  /** What is cut off at the near edge and at the start first, so that it measures from fresh sides. */
  readonly off: { readonly near: Traced; readonly start: Traced };
}

/** Where panels and parts of a piece are told together. */
interface Made {
  readonly ledger: Ledger;
  readonly parts: readonly Part[];
  readonly gluedPanels: readonly GluedPanel[];
}

/** All that comes off the saw: the boards of panels that are glued up in place of these, and every other part. */
export function partsToCut({ parts, gluedPanels }: Omit<Made, 'ledger'>): readonly Part[] {
  if (gluedPanels.length === 0) return parts;
  const glued = new Set(gluedPanels.map((g) => g.panel));
  return [...parts.filter((p) => !glued.has(p.id)), ...gluedPanels.flatMap((g) => g.boards)];
}

/** The parts of the piece, and the boards that panels are glued up from. */
export function partsAndBoards({ parts, gluedPanels }: Omit<Made, 'ledger'>): readonly Part[] {
  return [...parts, ...gluedPanels.flatMap((g) => g.boards)];
}

/** How thick the stock of a part is as it is sold: strips are planed later, sheets stay as they are. */
export function stockThickness(part: Pick<Part, 'form' | 'rough' | 'thickness'>): Traced {
  return part.form === 'strip' ? (part.rough?.thickness ?? part.thickness) : part.thickness;
}
