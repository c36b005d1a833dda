/** What the judge can find wrong with a cut plan. */
export type FindingCode =
  | 'unknown-stock'
  | 'unknown-piece'
  | 'sheet-count'
  | 'sheet-size'
  | 'cut-outside'
  | 'cut-direction'
  | 'part-size'
  | 'piece-size'
  | 'piece-grain'
  | 'piece-count'
  | 'false-reason'
  | 'stock-exceeded'
  | 'area-sum'
  | 'stages'
  | 'first-cut'
  | 'cut-too-long'
  | 'hold'
  | 'carry'
  | 'yard-cuts'
  | 'vehicle'
  | 'flaw'
  | 'faces'
  | 'group'
  | 'worth'
  | 'cost'
  | 'bound'
  | 'proven'
  | 'format'
  | 'placed-list'
  | 'left-list'
  | 'bought-list';

/** One thing that is wrong, where, and in words. */
export interface Finding {
  readonly code: FindingCode;
  /** `sheets[0]`, `sheets[0].cuts.parts[1]`, `pieces.side`, `cost`, ... */
  readonly at: string;
  readonly says: string;
}

/** The judge's verdict: the plan holds when there are no findings. */
export interface Verdict {
  readonly holds: boolean;
  readonly findings: readonly Finding[];
}
