import type { Rounding } from '../../measure/index.ts';

/** A size worked out from others, as a tree. Numbers that only multiply or divide have become whole over whole. */
export type Formula = {
  /** The part of the formula as it would be written. */
  readonly says: string;
} & (
  | {
      readonly is: 'length';
      /** What was typed, and which character of the formula (counted from 1) it begins at. */
      readonly text: string;
      readonly at: number;
    }
  | { readonly is: 'name'; readonly name: string; readonly at: number }
  | { readonly is: 'sum' | 'less'; readonly left: Formula; readonly right: Formula }
  | { readonly is: 'scaled'; readonly of: Formula; readonly over: number; readonly under: number }
  | { readonly is: 'greatest' | 'least'; readonly of: readonly Formula[] }
  | { readonly is: 'round'; readonly of: Formula; readonly step: Formula; readonly how: Rounding }
);

/** Words that a formula has a meaning for, and how many sizes each takes at least and at most. */
export const FUNCTIONS: Readonly<Record<string, readonly [least: number, most: number]>> = {
  min: [2, 20],
  max: [2, 20],
  down: [2, 2],
  up: [2, 2],
  nearest: [2, 2],
};

/** The names in a formula, each with its place, as often as they stand there. */
export function namesIn(formula: Formula): readonly { readonly name: string; readonly at: number }[] {
  switch (formula.is) {
    case 'length':
      return [];
    case 'name':
      return [formula];
    case 'sum':
    case 'less':
      return [...namesIn(formula.left), ...namesIn(formula.right)];
    case 'scaled':
      return namesIn(formula.of);
    case 'greatest':
    case 'least':
      return formula.of.flatMap(namesIn);
    case 'round':
      return [...namesIn(formula.of), ...namesIn(formula.step)];
  }
}
