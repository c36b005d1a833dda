/** How bad: `stop` means don't cut yet, `mind` means look at it, `note` is worth knowing. */
export type Level = 'stop' | 'mind' | 'note';

/** The rule a snag rests on, and where it was taken from. */
export interface Rule {
  readonly says: string;
  /** A publication with its section, "common practice", or "from memory". */
  readonly source: string;
  /** Whether the figure was read in the source (false: from memory). */
  readonly confirmed: boolean;
}

/** A change that would cure a snag: a field of a record set to a new value, as it would be typed. */
export interface CureEdit {
  readonly record: string;
  readonly field: string;
  /** Without a value the field is taken away. */
  readonly value?: string | number | boolean;
}

/** One way to put a snag right; with edits, a program can try it. */
export interface Cure {
  readonly says: string;
  readonly edits?: readonly CureEdit[];
}

/** Where a snag sits: a place in the document, a part, an operation, a lot. */
export interface Where {
  readonly path?: string;
  readonly record?: string;
  readonly part?: string;
  readonly operation?: string;
  readonly lot?: string;
}

/** The figures behind a snag. */
export interface Figures {
  readonly value: number;
  readonly limit: number;
  /** How far the value is on the right side of the limit; negative when it isn't. */
  readonly margin: number;
  readonly unit: string;
}

/** Something to put right, found by a check or while reading the document. */
export interface Snag {
  /** Stable, for programs and tests: `document.unknown-field`, `sag.shelf`. */
  readonly code: string;
  readonly level: Level;
  readonly where: Where;
  /** What is wrong, in one sentence a maker understands. */
  readonly sentence: string;
  readonly figures?: Figures;
  readonly rule?: Rule;
  readonly cures: readonly Cure[];
}
