/** Why a dry fit stopped or came out wrong. */
export interface DryFitFault {
  /** Stable, for programs and tests. */
  readonly code:
    | 'workpiece-missing'
    | 'cut-outside'
    | 'off-the-wood'
    | 'too-small'
    | 'not-alone'
    | 'in-the-way'
    | 'no-clamp'
    | 'door-jams'
    | 'door-drops-out'
    | 'holds-nothing'
    | 'screw-misses'
    | 'screw-comes-through'
    | 'screws-meet'
    | 'no-hole'
    | 'runner-room'
    | 'not-carried'
    | 'no-screw'
    | 'no-plug'
    | 'no-peg'
    | 'peg-binds'
    | 'still-wet'
    | 'glue-on-finish'
    | 'left-out'
    | 'closed-bare'
    | 'part-missing'
    | 'part-differs'
    | 'part-misplaced'
    | 'left-over';
  /** The operation at which it shows; absent when it shows only at the end. */
  readonly operation?: string;
  /** The part or workpiece, by mark. */
  readonly on?: string;
  /** One sentence a maker understands. */
  readonly sentence: string;
}

/** How one part came out, against the drawing. */
export interface PartOutcome {
  readonly mark: string;
  /**
   * Wood that the drawing has and the piece hasn't, and the other way round, mm³: by the box each fills and the
   * hollows in it, laid corner on corner.
   */
  readonly missing: number;
  readonly surplus: number;
  /** How far it stands from where it was drawn, in millimetres. */
  readonly off: number;
}

/** What came of executing the step cards on virtual stock. */
export interface DryFitReport {
  readonly fits: boolean;
  /** Operations run, out of how many. */
  readonly ran: number;
  readonly outOf: number;
  readonly faults: readonly DryFitFault[];
  readonly parts: readonly PartOutcome[];
  /** What lies in the shop at the end and is neither part nor promised leftover, by name. */
  readonly unused: readonly string[];
}
