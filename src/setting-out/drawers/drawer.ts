import type { Traced } from '../../measure/index.ts';

/** A drawer as it stands closed: its parts by id, and what carries it. */
export interface Drawer {
  readonly record: string;
  /** `drawer 2 of tools`, counted from below. */
  readonly name: string;
  readonly parts: {
    readonly left: string;
    readonly right: string;
    readonly front: string;
    readonly back: string;
    readonly bottom: string;
    /** The front that is seen, screwed to the box. */
    readonly face: string;
  };
  readonly joint: 'rabbet' | 'dado' | 'screws' | 'pocket-screws';
  readonly bottomFitting: 'groove' | 'applied';
  readonly hang: 'inset' | 'overlay';
  /** The uprights to its left and right, and what is below its opening: parts by id. */
  readonly posts: readonly [left: string, right: string];
  readonly below: string;
  /** The gap round its front. */
  readonly gap: Traced;
  /** What is left between box and upright on either side, and inside the box from end to end and side to side. */
  readonly beside: Traced;
  readonly inside: { readonly width: Traced; readonly depth: Traced };
  readonly runner: {
    /** A pair of the rack. */
    readonly id: string;
    readonly length: Traced;
    readonly screw: string;
    readonly screwLength: Traced;
    readonly screwDiameter: Traced;
    /** The middle of the profile above the box's lower edge, and in the piece. */
    readonly line: Traced;
    readonly height: Traced;
    /** Screws behind the front end, on the case and on the drawer. */
    readonly caseScrews: readonly Traced[];
    readonly drawerScrews: readonly Traced[];
  };
  /** How far it comes out. */
  readonly travel: Traced;
  readonly loadKg?: number;
}
