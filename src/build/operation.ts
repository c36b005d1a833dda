import type { Traced } from '../measure/index.ts';
import type { OperationKind } from './operation-kind.ts';
import type { PegsIn, SplineIn } from './pegs-of-act.ts';
import type { StageId } from './stages.ts';

/** A side of a workpiece as it lies on the bench, in the workpiece's own frame. */
export type WorkSide = 'start' | 'end' | 'near' | 'far' | 'under' | 'show';
export type WorkEdge = 'start' | 'end' | 'near' | 'far';
export type WorkFace = 'show' | 'under';

/** A direction in the standing piece: x to the right, y to the back, z up. */
export type PieceDirection = '+x' | '-x' | '+y' | '-y' | '+z' | '-z';

/**
 * One of the three touches that fix where a part goes: its face that looks in `side` stands `gap` away from the
 * face `face` of a part already there (or of the floor of the assembly). A gap of nothing is a touch.
 */
export interface Touch {
  /** The mark whose side is meant, where several hang together; the workpiece's own when absent. */
  readonly part?: string;
  readonly side: PieceDirection;
  /** The mark of a part that is already there; `bench` for the first one. */
  readonly of: string;
  /** Others whose `face` is drawn in line with that one: it comes against whichever stands out furthest. */
  readonly or?: readonly string[];
  readonly face: PieceDirection;
  /** Measured along the axis of `face`, outward positive; absent for a touch or flush. */
  readonly gap?: Traced;
  /** The side lies against the shoulder of a rabbet, which is so far in from that face. */
  readonly shoulder?: true;
}

/** A piece that a cut gives: its name, and whether its length lies across the workpiece's. */
export interface Yield {
  readonly name: string;
  readonly turned: boolean;
}

/** Which way a part is turned when it goes in: where its length and its width point. */
export interface Turn {
  readonly length: PieceDirection;
  readonly width: PieceDirection;
}

/**
 * What an operation does, in nothing but what its card prints: marks, sides, numbers. Every number has been
 * rounded to what the tool can set. The dry fit runs these.
 */
export type Act =
  /**
   * A straight cut square through the workpiece. `at` is measured from `from` (start or near); the kerf lies on the
   * side that is not kept. `yields` names what lies before and behind the line; undefined is waste.
   */
  | {
      readonly act: 'saw';
      readonly workpiece: string;
      readonly across: 'length' | 'width';
      readonly at: Traced;
      readonly keep: 'before' | 'behind';
      readonly yields: readonly [Yield | undefined, Yield | undefined];
      /** A rough cut, which leaves so much beside the line on either side that nothing there counts as sawn to a mark. */
      readonly rough?: Traced;
      /** Cut with scissors or a knife: nothing is lost. */
      readonly knife?: true;
    }
  /** Strips crosscut to one length at one stop, one cut after the other; what stays of a strip for more cuts keeps its name. */
  | {
      readonly act: 'saw-alike';
      readonly cuts: readonly {
        readonly workpiece: string;
        readonly yields: readonly [Yield, Yield | undefined];
      }[];
      readonly at: Traced;
      /** Cut with scissors or a knife: nothing is lost. */
      readonly knife?: true;
    }
  /** A workpiece that needs no cut gets its mark. */
  | { readonly act: 'name'; readonly workpiece: string; readonly as: Yield }
  /** Planed to a width, both edges alike, or to a thickness, both faces. */
  | {
      readonly act: 'plane';
      readonly workpieces: readonly string[];
      readonly across: 'width' | 'thickness';
      readonly to: Traced;
    }
  /** Boards glued edge to edge, in their order from the near edge to the far one. */
  | {
      readonly act: 'glue-up';
      readonly boards: readonly string[];
      readonly as: string;
    }
  /** A slanting end cut: the line lies on `fullFace`, `at` from the start; what lies beyond it falls off. */
  | {
      readonly act: 'bevel';
      readonly workpieces: readonly string[];
      readonly edge: WorkEdge;
      readonly at: Traced;
      readonly angle: number;
      readonly fullFace: WorkFace;
    }
  /**
   * A blank parted along its grain by a tilted blade. On its upper face the line lies `at` from the near edge: up to there is
   * the first of the two, under which the slope runs in; the second has its full face below. Undefined is waste.
   */
  | {
      readonly act: 'part';
      readonly workpiece: string;
      readonly at: Traced;
      readonly angle: number;
      readonly yields: readonly [first: string | undefined, second: string | undefined];
    }
  /**
   * A blank ripped into the two parts that were worked in it together: one as wide as `widths` says from the near edge, the other
   * so wide from the far edge; what lies between falls to the blade.
   */
  | {
      readonly act: 'rip-apart';
      readonly workpiece: string;
      readonly widths: readonly [near: Traced, far: Traced];
      readonly yields: readonly [near: string, far: string];
    }
  /**
   * A step along an edge, `width` in from the edge and `depth` in from the face; it stops so far `from` the start (or near
   * edge) and so far before the end (or far edge), or runs right through.
   */
  | {
      readonly act: 'rabbet';
      readonly workpieces: readonly string[];
      readonly edge: WorkEdge;
      readonly face: WorkFace;
      readonly width: Traced;
      readonly depth: Traced;
      readonly from?: Traced;
      readonly before?: Traced;
    }
  /**
   * Channels out of a face, all with one straight bit at one depth. Of each, where the bit's side nearer to `edge`
   * runs, pass by pass; they run right across, or from a place so far from an edge on to the other.
   */
  | {
      readonly act: 'groove';
      readonly workpieces: readonly string[];
      readonly edge: WorkEdge;
      readonly face: WorkFace;
      readonly bit: Traced;
      readonly depth: Traced;
      readonly channels: readonly (readonly Traced[])[];
      readonly stop?: { readonly from: WorkEdge; readonly at: Traced };
      /** Where they stop before the other edge too. */
      readonly otherStop?: { readonly from: WorkEdge; readonly at: Traced };
    }
  /** A corner sawn out right through, so far in from an end and so far from an edge. */
  | {
      readonly act: 'notch';
      readonly workpieces: readonly string[];
      readonly end: 'start' | 'end';
      readonly edge: 'near' | 'far';
      readonly length: Traced;
      readonly width: Traced;
    }
  /**
   * What goes beyond a wall is sawn off the far edge along the wall’s own line, or off the end that is named, and off what
   * is glued there `with` it: so much of the part stays, as drawn.
   */
  | {
      readonly act: 'scribe';
      readonly workpiece: string;
      readonly edge?: 'start' | 'end';
      readonly with?: readonly string[];
      readonly leaves: Traced;
    }
  /** Pocket holes with the jig set for a board of `collar`, at places along `edge`, measured from `from`. */
  | {
      readonly act: 'pocket';
      readonly workpieces: readonly string[];
      readonly face: WorkFace;
      readonly edge: WorkEdge;
      readonly from: WorkEdge;
      readonly along: readonly Traced[];
      readonly collar: Traced;
    }
  /**
   * Round holes square to a side. On a face a place is so far from the start (or the end, see `from`) and so far from
   * the near edge (or the far one, see `acrossFrom`); on an edge it is so far along from `from`, and so far up from the under face.
   */
  | {
      readonly act: 'drill';
      readonly workpieces: readonly string[];
      readonly side: WorkSide;
      readonly from: WorkEdge;
      readonly acrossFrom?: 'far';
      readonly at: readonly (readonly [Traced | 'middle', Traced | 'middle'])[];
      /** On a face: the numbers along these measures of the part are from its middle, and mean a hole to each side of it; `middle` is on it. */
      readonly middle?: readonly ('length' | 'width')[];
      readonly diameter: Traced;
      readonly depth?: Traced;
      readonly countersink?: Traced;
      /** First a wide flat-bottomed hole at each place, so deep from the face. */
      readonly counterbore?: { readonly diameter: Traced; readonly depth: Traced };
      /** A bit that isn’t a twist drill. */
      readonly bit?: 'forstner' | 'hole-saw';
      /** The holes stay open: no screw goes in. */
      readonly open?: true;
      /** The holes are for dowels. */
      readonly dowels?: true;
    }
  /**
   * Slots for biscuits: a round cutter plunged square into a side, its middle at places that are given as those of
   * holes. In an edge it lies flat; in a face it runs along the part's length or width.
   */
  | {
      readonly act: 'biscuit-slot';
      readonly workpieces: readonly string[];
      readonly side: WorkSide;
      readonly run: 'length' | 'width';
      /** Square to the slope of a mitred end, whose inner face this is: the second number of a place is down the slope from there. */
      readonly slopeFrom?: WorkFace;
      readonly from: WorkEdge;
      readonly acrossFrom?: 'far';
      readonly at: readonly (readonly [Traced, Traced])[];
      readonly depth: Traced;
      readonly kerf: Traced;
      readonly cutter: Traced;
    }
  /**
   * A groove for a spline, square to the slope of a mitred end. `routed`: the base lies on the slope, and the bit’s nearer side is
   * so far down from the inner edge, pass by pass. `sawn`: the base lies on the inner face, the blade tilted to 45 degrees; its
   * side nearer the part comes through the plane of that face so far beyond the inner edge, and it reaches so far along itself.
   */
  | {
      readonly act: 'spline-groove';
      readonly workpieces: readonly string[];
      readonly edge: 'start' | 'end';
      readonly slopeFrom: WorkFace;
      readonly by:
        | { readonly routed: readonly Traced[]; readonly bit: Traced; readonly depth: Traced }
        | { readonly sawn: readonly { readonly beyond: Traced; readonly blade: Traced }[] };
      readonly stop?: { readonly from: WorkEdge; readonly at: Traced };
      readonly otherStop?: { readonly from: WorkEdge; readonly at: Traced };
    }
  /**
   * Rows of holes for pins in a face. On lines so far from the near edge (or the far one, see `acrossFrom`): the first
   * hole so far from an end, then one every pitch up to a number, but for those that are left out.
   */
  | {
      readonly act: 'pin-holes';
      readonly workpieces: readonly string[];
      readonly side: WorkFace;
      readonly from: 'start' | 'end';
      readonly acrossFrom?: 'far';
      readonly rows: readonly {
        /** Its lines are so far from the far edge, whatever holds for the others. */
        readonly acrossFrom?: 'far';
        readonly lines: readonly Traced[];
        readonly first: Traced;
        /** Absent where there is one hole only. */
        readonly pitch?: Traced;
        readonly count: number;
        readonly leftOut: readonly number[];
      }[];
      readonly diameter: Traced;
      readonly depth: Traced;
    }
  /**
   * Slots with round ends, right through, all between the same two lines: `ends` are the middles of the bit at the ends
   * of every slot, `beside` the middle line of each. What runs along the length is so far from `from`, else from the near edge.
   */
  | {
      readonly act: 'slot';
      readonly workpieces: readonly string[];
      readonly face: WorkFace;
      readonly run: 'length' | 'width';
      readonly from: 'start' | 'end';
      /** Screws go through them, and move in them. */
      readonly screws?: true;
      readonly bit: Traced;
      readonly ends: readonly [Traced, Traced];
      readonly beside: readonly Traced[];
    }
  /** A part goes to its place in an assembly. */
  | {
      readonly act: 'set';
      readonly workpiece: string;
      readonly into: string;
      readonly turn: Turn;
      readonly touches: readonly [Touch, Touch, Touch];
      readonly glue: boolean;
      /** Its mitres are closed by tape or a band, which hold them until the glue has set; no screw does. */
      readonly folds?: true;
      /** Dowels or biscuits that go into it and into parts that stand there. */
      readonly pegs?: readonly PegsIn[];
      readonly splines?: readonly SplineIn[];
      /** It comes straight to so far below its place, and up from there. */
      readonly hooks?: Traced;
    }
  /**
   * Strips glued to boards that lie loose, all alike. Both are turned as they will be in the piece; in the touches,
   * `board` stands for each strip's own board.
   */
  | {
      readonly act: 'edge';
      readonly pairs: readonly { readonly strip: string; readonly board: string }[];
      readonly turn: Turn;
      readonly boardTurn: Turn;
      readonly touches: readonly [Touch, Touch, Touch];
    }
  /** What stands beyond a board's own sides is trimmed off level with them. */
  | {
      readonly act: 'flush';
      readonly workpieces: readonly string[];
      readonly sides: readonly PieceDirection[];
      /** Of each board the strips that are trimmed, where others are on already: their ends come level with those. */
      readonly strips?: readonly (readonly string[])[];
    }
  /** Screws into the pocket holes along an edge, or through the holes of a side. */
  | {
      readonly act: 'screw';
      readonly workpiece: string;
      readonly into: string;
      readonly mate: string;
      readonly by: 'pockets' | 'holes';
      /** What lies between, whose holes they pass; and `only` where plain holes beside are for screws that come later. */
      readonly over?: string;
      readonly only?: 'countersunk';
      readonly side: WorkSide;
      readonly screw: string;
      readonly length: Traced;
      readonly diameter: Traced;
      readonly count: number;
    }
  /** Plugs glued over the sunk heads of screws at a side, and trimmed flush. */
  | {
      readonly act: 'plug';
      readonly workpiece: string;
      readonly into: string;
      readonly side: WorkSide;
      readonly plug: string;
      readonly diameter: Traced;
      readonly count: number;
    }
  /**
   * The cups of a door pressed into their holes and screwed, their plates screwed to an upright: `count` hinges, the
   * screws of a plate `plateScrews` apart, half above and half below the middle of the cup.
   */
  | {
      readonly act: 'hinge';
      readonly workpiece: string;
      readonly into: string;
      readonly post: string;
      readonly count: number;
      readonly cup: Traced;
      readonly plateScrews: Traced;
      readonly screw: string;
      readonly length: Traced;
      readonly diameter: Traced;
    }
  /**
   * A shelf lies on pins in the holes of two uprights, two in each: so wide are the holes, so far above their middles it
   * lies, and it is the level so many above what is below the opening.
   */
  | {
      readonly act: 'rest';
      readonly workpiece: string;
      readonly into: string;
      readonly posts: readonly [string, string];
      readonly over: string;
      readonly hole: Traced;
      readonly above: Traced;
      readonly level: number;
    }
  /**
   * A door goes into the grooves of what is below and above, counted from the front: up, in, and down onto the floor
   * of the lower one, `beside` what is first of `between`, or against the second where `against` says so (against the first when both are absent). It then slides between the two.
   */
  | {
      readonly act: 'lift-in';
      readonly workpiece: string;
      readonly into: string;
      readonly turn: Turn;
      readonly below: string;
      readonly above: string;
      readonly groove: number;
      readonly between: readonly [left: string, right: string];
      readonly beside?: Traced;
      readonly against?: 'right';
      readonly lift: Traced;
    }
  /**
   * Runners screwed to both sides of a drawer and to the uprights, `thickness` between them, and the drawer drawn out
   * by its travel: `moves` are the parts that come out.
   */
  | {
      readonly act: 'runners';
      readonly sides: readonly [string, string];
      readonly posts: readonly [string, string];
      readonly into: string;
      readonly thickness: Traced;
      readonly screw: string;
      readonly length: Traced;
      readonly diameter: Traced;
      readonly count: number;
      readonly travel: Traced;
      readonly moves: readonly string[];
    }
  /**
   * A drawer drawn out by its travel on wooden runners, which stand in the grooves of its sides: `moves` are the parts that
   * come out. `guided`: its `sides` are guides that run beside one runner, and `edges` slide on what is below.
   */
  | {
      readonly act: 'draw-out';
      readonly guided?: { readonly on: string; readonly edges: readonly [string, string] };
      readonly sides: readonly [string, string];
      readonly runners: readonly [string, string];
      readonly into: string;
      readonly travel: Traced;
      readonly moves: readonly string[];
    }
  /**
   * A bought pull screwed on from behind, through the board behind where there is one: `count` machine screws, its holes
   * so far apart, its thread so deep.
   */
  | {
      readonly act: 'pull';
      readonly workpiece: string;
      readonly behind?: string;
      readonly into: string;
      readonly pull: string;
      readonly screw: string;
      readonly length: Traced;
      readonly diameter: Traced;
      readonly count: number;
      readonly holes?: Traced;
      readonly deep: Traced;
    }
  /** Sleeves of levellers let into the holes of a bottom from below: `count` of them, so wide and so deep. */
  | {
      readonly act: 'levellers';
      readonly workpiece: string;
      readonly into: string;
      readonly fixing: string;
      readonly count: number;
      readonly diameter: Traced;
      readonly deep: Traced;
    }
  /**
   * Wooden buttons put in at one upright, from the front: the tongue of each goes so deep into its mortise in `face`, and the
   * button so far behind the mortise's front end, against the top; one screw up through each. It
   * `moves` so far to the front and to the back with the top.
   */
  | {
      readonly act: 'buttons';
      readonly workpieces: readonly string[];
      readonly into: string;
      readonly post: string;
      readonly face: PieceDirection;
      readonly top: string;
      readonly turn: Turn;
      readonly tongue: Traced;
      readonly beside: readonly Traced[];
      readonly moves: readonly Traced[];
      readonly screw: string;
      readonly length: Traced;
      readonly diameter: Traced;
    }
  /** Work that changes no shape. */
  | { readonly act: 'other'; readonly on: readonly string[] };

/** One thing a person does with one tool. */
export interface Operation {
  /** `feature-or-part/kind`. */
  readonly id: string;
  readonly kind: OperationKind;
  /** The card's heading: `Rip the side strip from sheet S1`. */
  readonly title: string;
  readonly does: Act;
  /** A tool of the shop by id; absent for hand work. */
  readonly tool?: string;
  /** The stage it belongs to: operations of a stage are done one after another. */
  readonly stage: StageId;
  /** What must be true before: ids of operations. */
  readonly after: readonly string[];
  /** Which face lies up, in words. */
  readonly faceUp?: string;
  /** The edge everything is measured from, in words. */
  readonly reference?: string;
  /** The card's lines, in order, complete sentences; `{0}`, `{1}`: the n-th of `lengths`, printed in the shop's unit. */
  readonly lines: readonly string[];
  readonly lengths: readonly Traced[];
  readonly minutes: { readonly active: number; readonly waiting: number };
  /** Clamps that stay on until it may be touched again. */
  readonly clamps?: number;
  /** Operations with the same name here go on without a break: glue is open. */
  readonly together?: string;
  /** Safety, in a sentence each. */
  readonly cautions: readonly string[];
}
