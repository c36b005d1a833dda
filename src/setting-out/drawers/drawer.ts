import type { Traced } from '../../measure/index.ts';

/** Wooden runners: strips screwed to the uprights, in grooves of the box's sides. */
export interface WoodenRunners {
  /** The strips, parts by id. */
  readonly left: string;
  readonly right: string;
  /** The lower wall of the grooves above the box's lower edge, how wide they are and how deep. */
  readonly up: Traced;
  readonly width: Traced;
  readonly depth: Traced;
}

/** A strip under the middle of a drawer, and two on its bottom that run beside it: parts by id. */
export interface CentreRunner {
  readonly runner: string;
  readonly guides: readonly [left: string, right: string];
  /** What is left between the guides and the runner, on both sides together. */
  readonly play: Traced;
  /** What is left between the box and what is above it, which keeps it from tipping. */
  readonly above: Traced;
}

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
  /** How long the box is from front to back. */
  readonly length: Traced;
  /** Bought runners that it hangs on. */
  readonly runner?: {
    /** A pair of the rack. */
    readonly id: string;
    readonly screw: string;
    readonly screwLength: Traced;
    readonly screwDiameter: Traced;
    /** What each takes between drawer and case. */
    readonly thick: Traced;
    /** The middle of the profile above the box's lower edge, and in the piece. */
    readonly line: Traced;
    readonly height: Traced;
    /** Screws behind the front end, on the case and on the drawer. */
    readonly caseScrews: readonly Traced[];
    readonly drawerScrews: readonly Traced[];
  };
  /** Strips on the uprights that it runs on instead. */
  readonly wooden?: WoodenRunners;
  /** A centre runner: it slides on what is below. */
  readonly centre?: CentreRunner;
  /** How far it comes out. */
  readonly travel: Traced;
  readonly loadKg?: number;
}
