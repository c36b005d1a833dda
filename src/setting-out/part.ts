import type { Traced } from '../measure/index.ts';
import type { Feature } from './feature.ts';
import type { CutSize } from './fits/cut-size.ts';
import type { Direction, Place } from './place.ts';

/**
 * The six sides of a part in its own frame. Length runs from `start` to `end`, width from `near` to `far`,
 * thickness from `under` to `show`: the show face is the one that is seen most.
 */
export type Side = 'start' | 'end' | 'near' | 'far' | 'under' | 'show';

/** What the stock of a part is: cut from a sheet in two directions, or from strips of a given section in one. */
export type StockForm = 'sheet' | 'strip';

/**
 * One part of the piece. Its sizes are those of the finished part's bounding box, so a part is exactly
 * length x width x thickness less its features. Identity is the record it comes from and the role it plays.
 */
export interface UncutPart {
  /** `record/role`, with `:n` where the record asks for several: `bay2/shelf:1`. */
  readonly id: string;
  readonly record: string;
  readonly role: string;
  /** A name a maker would use: `left side`, `shelf in bay 2`. */
  readonly name: string;
  /** The letter and number pencilled on the wood; once issued it never changes. */
  readonly mark: string;
  readonly lot: string;
  readonly form: StockForm;
  /** Along the grain. */
  readonly length: Traced;
  readonly width: Traced;
  readonly thickness: Traced;
  /** Sizes to cut to, before what is trimmed off once the part is glued on; equal to the finished ones if absent. */
  readonly rough?:
    | { readonly length: Traced; readonly width: Traced; readonly thickness: Traced }
    | undefined;
  /** Set when it is cut to `rough` first, and to its opening once that can be measured. */
  readonly cutLater?: true | undefined;
  /** Whether the grain must run along the length. */
  readonly grain: 'length' | 'free';
  readonly place: Place;
  readonly features: readonly Feature[];
  /** Whether the part has a mirror twin, and which of the two it is. */
  readonly hand: 'left' | 'right' | 'none';
  /** Parts with one strip's id are cut from it in the order of their marks, so that the grain runs on from one to the next. */
  readonly strip?:
    | {
        readonly id: string;
        readonly follow: 'length' | 'width';
        /** Its place in the strip, where that is not the order of the marks. */
        readonly place?: number;
        /** Marks of the parts that lie beside its ends in the strip; told where a part could be turned end for end. */
        readonly beside?: { readonly start?: string; readonly end?: string };
      }
    | undefined;
  /** Set for a blank of two parts: whose edge its near one is, and whose its far one, and which way that looks in the piece. */
  readonly joins?: readonly [near: JoinedEdge, far: JoinedEdge] | undefined;
  /** Set when the printed length must not exceed the drawn one, as the part stands between two others; but for bottoms and lids of cases in a row, which go to the nearest step. */
  readonly between: boolean;
}

/** A long edge of a blank of two parts. */
export interface JoinedEdge {
  /** The mark of the part that has it. */
  readonly mark: string;
  readonly looks: Direction;
}

/** A part with the sizes that it is cut to. */
export interface Part extends UncutPart {
  /** Sizes to cut to, on the grid of what the saw can set, and so that nothing it must fit is printed too tight. */
  readonly cut: CutSize;
  /** Sizes that its opening asks for by the drawing, where it is cut to that later. */
  readonly fitted?: CutSize | undefined;
}
