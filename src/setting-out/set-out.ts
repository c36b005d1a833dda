import type { CaseJoints } from '../job/index.ts';
import type { Ledger, Traced } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { JoinedBlank } from './blanks/joined-blank.ts';
import type { Cleat } from './case/cleat.ts';
import type { Levellers } from './case/leveller.ts';
import type { ScribedTop } from './case/scribed-top.ts';
import type { Dimensions } from './dimensions.ts';
import type { DoorLeaf } from './doors/door-leaf.ts';
import type { Drawer } from './drawers/drawer.ts';
import type { PrintedFit } from './fits/fit.ts';
import type { GluedPanel } from './glued/glued-panel.ts';
import type { Fastener, Joint } from './joints/joint.ts';
import type { Peg } from './joints/peg.ts';
import type { Lid } from './lids/lid.ts';
import type { Part } from './part.ts';
import type { PinnedShelf } from './pins/pinned-shelf.ts';
import type { TracedBox } from './place.ts';
import type { BoughtPull } from './pulls/bought-pull.ts';
import type { SlidingSet } from './sliding/sliding-set.ts';

/** A place where something is kept or carried: a shelf, a case's bottom, the top. Checks load it. */
export interface Surface {
  readonly part: string;
  /** Free length between supports. */
  readonly span: Traced;
  readonly depth: Traced;
  /** Whether the ends are held (screwed) or only carried: decides nothing yet but is shown. */
  readonly ends: 'screwed' | 'resting';
  /** What it carries in use, kg; absent when the maker didn't say, and the general allowance counts. */
  readonly loadKg?: number;
  /** The document's record that a cure would change. */
  readonly record: string;
}

/** A clear space inside a case. */
export interface Opening {
  readonly id: string;
  readonly box: TracedBox;
  readonly width: Traced;
  readonly height: Traced;
  readonly depth: Traced;
}

/** How the panels of a case are joined; and why so, where that was not asked for. */
export interface Joinery {
  readonly record: string;
  readonly joints: CaseJoints;
  readonly because?: string;
}

/** A case and the ids of the panels that close it on the left and the right. */
export interface SidesOfCase {
  readonly record: string;
  readonly left: string;
  readonly right: string;
}

/** Everything setting-out knows of a piece. */
export interface SetOut {
  readonly ledger: Ledger;
  /** In the order of marks. */
  readonly parts: readonly Part[];
  /** Panels among the parts that are glued up from boards. */
  readonly gluedPanels: readonly GluedPanel[];
  /** Bevelled cleats that cases hang on the wall by. */
  readonly cleats: readonly Cleat[];
  /** Blanks that two parts each are parted from, once they have been worked together. */
  readonly joinedBlanks: readonly JoinedBlank[];
  /** Strips that stand at a slant in mitred corners: they are cut like parts, and go where the pegs say that name them. */
  readonly splines: readonly Part[];
  readonly joints: readonly Joint[];
  readonly fasteners: readonly Fastener[];
  /** Dowels, biscuits and splines. */
  readonly pegs: readonly Peg[];
  readonly openings: readonly Opening[];
  readonly surfaces: readonly Surface[];
  /** Doors that hang, in the order of the document; the two of a pair from the left. */
  readonly doors: readonly DoorLeaf[];
  /** What must go together: each a loop of made dimensions. */
  readonly fits: readonly PrintedFit[];
  /** Loose shelves, opening by opening, the lowest first. */
  readonly pinned: readonly PinnedShelf[];
  /** Doors that slide past one another, a row of them for each record. */
  readonly sliding: readonly SlidingSet[];
  /** Drawers, opening by opening, the lowest first. */
  readonly drawers: readonly Drawer[];
  /** Tops that open, hinged to their backs. */
  readonly lids: readonly Lid[];
  /** Tops that are scribed to walls. */
  readonly scribedTops: readonly ScribedTop[];
  /** Bought pulls, in the order of the document. */
  readonly pulls: readonly BoughtPull[];
  /** Levellers, case by case. */
  readonly levellers: readonly Levellers[];
  /** The bounding box of all parts, as sizes, down to the floor. */
  readonly overall: { readonly width: Traced; readonly height: Traced; readonly depth: Traced };
  /** The two sides of each case, by their parts, in the order in which cases stand; neighbours may have one in common. */
  readonly sides: readonly SidesOfCase[];
  /** One for each case. */
  readonly joinery: readonly Joinery[];
  /** What can be asked for by name (`left side.length`), and its ledger entry. */
  readonly dimensions: Dimensions;
  readonly snags: readonly Snag[];
}
