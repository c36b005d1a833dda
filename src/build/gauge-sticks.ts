import type { Ledger, Traced } from '../measure/index.ts';

/** Sticks cut to a distance that is set more than once, two of each: one for either end of a part. */
export interface GaugeStick {
  /** `gauge stick 1`, in the order of first use. */
  readonly name: string;
  /** As it is printed. */
  readonly length: Traced;
  /** The operations that are set by it, and the marks of the parts that they set. */
  readonly uses: readonly { readonly operation: string; readonly mark: string }[];
}

/** The gauge sticks of a build: one length, one name. */
export class GaugeSticks {
  private readonly ledger: Ledger;
  private readonly byLength = new Map<
    number,
    GaugeStick & { readonly uses: { operation: string; mark: string }[] }
  >();

  constructor(ledger: Ledger) {
    this.ledger = ledger;
  }

  /** In the order of first use. */
  get all(): readonly GaugeStick[] {
    return [...this.byLength.values()];
  }

  /** The stick of a length, which from now on also sets the part of a mark. Its last use is this one. */
  use(length: Traced, operation: string, mark: string): GaugeStick {
    const ticks = this.ledger.ticks(length);
    const stick = this.byLength.get(ticks) ?? {
      name: `gauge stick ${this.byLength.size + 1}`,
      length,
      uses: [],
    };
    this.byLength.set(ticks, stick);
    stick.uses.push({ operation, mark });
    return stick;
  }
}
