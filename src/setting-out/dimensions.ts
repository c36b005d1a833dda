import type { Traced } from '../measure/index.ts';

/** Sizes by their own names (`length`, `cut width`), as they belong to one part under whatever name it is asked for. */
type Sizes = Map<string, Traced>;

/** Named lengths as plain data, to be copied between threads. */
export interface DimensionsData {
  readonly alone: ReadonlyMap<string, Traced>;
  readonly ofNamed: ReadonlyMap<string, ReadonlyMap<string, Traced>>;
}

/**
 * What can be asked for by name (`overall.width`, `left side.length`), with its ledger entry. A part goes by several
 * names, and all of them share its sizes: a large piece has thousands of names, which are only put together when
 * somebody wants to see them all. Where two things have one name, the first keeps it.
 */
export class Dimensions implements Iterable<readonly [name: string, of: Traced]> {
  private readonly alone: Sizes;
  private readonly ofNamed = new Map<string, Sizes>();
  /** The same sizes by the part they belong to, while they are still being added. */
  private readonly ofPart = new Map<string, Sizes>();

  constructor(entries: Iterable<readonly [string, Traced]> = []) {
    this.alone = new Map(entries);
  }

  /** The same again, from what `data` gave. */
  static from({ alone, ofNamed }: DimensionsData): Dimensions {
    const made = new Dimensions(alone);
    for (const [name, sizes] of ofNamed) made.ofNamed.set(name, sizes as Sizes);
    return made;
  }

  data(): DimensionsData {
    return { alone: this.alone, ofNamed: this.ofNamed };
  }

  /** Gives a length a name of its own. */
  add(name: string, of: Traced): void {
    if (!this.has(name)) this.alone.set(name, of);
  }

  /** Lets a part go by several names. */
  call(part: string, names: readonly string[]): void {
    const sizes: Sizes = new Map();
    this.ofPart.set(part, sizes);
    for (const name of names) if (!this.ofNamed.has(name)) this.ofNamed.set(name, sizes);
  }

  /** Gives a part that has its names one more size. */
  addOf(part: string, size: string, of: Traced): void {
    const sizes = this.ofPart.get(part);
    if (!sizes) throw new Error(`a part without names: ${part}`);
    if (!sizes.has(size)) sizes.set(size, of);
  }

  get(name: string): Traced | undefined {
    const own = this.alone.get(name);
    if (own !== undefined) return own;
    const at = name.lastIndexOf('.');
    return at < 0 ? undefined : this.ofNamed.get(name.slice(0, at))?.get(name.slice(at + 1));
  }

  has(name: string): boolean {
    return this.get(name) !== undefined;
  }

  *keys(): Generator<string> {
    for (const [name] of this) yield name;
  }

  *values(): Generator<Traced> {
    for (const [, of] of this) yield of;
  }

  *[Symbol.iterator](): Generator<readonly [name: string, of: Traced]> {
    yield* this.alone;
    for (const [name, sizes] of this.ofNamed)
      for (const [size, of] of sizes) if (!this.alone.has(`${name}.${size}`)) yield [`${name}.${size}`, of];
  }
}
