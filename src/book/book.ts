import type { Drawing } from './drawing.ts';

/** A page of the plan book: a drawing the size of its paper, and its place in the table of contents. */
export interface BookPage extends Drawing {
  /** What kind of page it is; pages of one kind follow one another. */
  readonly kind:
    | 'cover'
    | 'views'
    | 'cutting-list'
    | 'sheets'
    | 'shopping'
    | 'finish'
    | 'time'
    | 'gauges'
    | 'labels'
    | 'steps'
    | 'snags';
  /** Set on the first page of a part of the book. */
  readonly bookmark?: string;
}

/** A plan book as data. */
export interface Book {
  readonly title: string;
  readonly pages: readonly BookPage[];
}
