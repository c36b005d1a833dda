/** Something of which there is only so much: people, a tool, clamps, a place where coats dry. */
export interface Resource {
  readonly id: string;
  readonly there: number;
}

/** What a task takes of a resource: held from its start until its work is done, or until it may be touched again. */
export interface Need {
  readonly resource: string;
  readonly amount: number;
  readonly until: 'worked' | 'ready';
}

/** A piece of work, and how long it must then be left alone. */
export interface Task {
  readonly id: string;
  /** Minutes of work, done in working hours. */
  readonly work: number;
  /** Minutes after it, by day or night, before what needs it may begin: glue sets, a coat dries. */
  readonly wait: number;
  /** True when it may not be left half done overnight: glue is open, a coat is wet. */
  readonly unbroken: boolean;
  /** Ids of tasks that must be ready before. */
  readonly after: readonly string[];
  readonly needs: readonly Need[];
}

/** When a task is done: minutes from midnight before the first day. */
export interface Span {
  readonly start: number;
  /** Its work is done. */
  readonly end: number;
  /** What needs it may begin. */
  readonly ready: number;
}
