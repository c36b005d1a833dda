import type { Traced } from '../../measure/index.ts';
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
