import type { Snag } from '../snag/index.ts';

/** The fields of a JSON object. */
export type Fields = Readonly<Record<string, unknown>>;

const MOST_FAULTS = 200;

/**
 * Collects what is wrong with parsed JSON while it is read, so that everything can be told at once. Each reader
 * gives a harmless stand-in when it has noted a fault, so reading can go on.
 */
export class Faults {
  readonly found: Snag[] = [];
  private readonly paths = new Set<string>();

  /** Notes a fault; the sentence is the path followed by `says`. */
  add(code: string, path: string, says: string, cure?: string): void {
    this.paths.add(path);
    if (this.found.length >= MOST_FAULTS) return;
    this.found.push({
      code,
      level: 'stop',
      where: { path },
      sentence: `${path === '' ? 'The problem' : path} ${says}.`,
      cures: [{ says: cure ?? `Mend ${path === '' ? 'the file' : path}.` }],
    });
  }

  /** Whether a fault was noted at exactly this path. */
  at(path: string): boolean {
    return this.paths.has(path);
  }

  /** Whether a fault was noted anywhere below this path. */
  under(prefix: string): boolean {
    for (const p of this.paths) if (p.startsWith(prefix)) return true;
    return false;
  }

  object(json: unknown, path: string, known: readonly string[]): Fields | undefined {
    if (typeof json !== 'object' || json === null || Array.isArray(json)) {
      this.add('cut.not-an-object', path, `must be an object, not ${named(json)}`);
      return undefined;
    }
    for (const key of Object.keys(json))
      if (!known.includes(key))
        this.add(
          'cut.unknown-field',
          path === '' ? key : `${path}.${key}`,
          'is not a field of the format',
          `Take it out; the fields here are ${known.join(', ')}.`,
        );
    return json as Fields;
  }

  list(o: Fields, path: string, key: string, most: number): readonly unknown[] | undefined {
    const v = o[key];
    if (v === undefined) this.missing(path + key);
    else if (!Array.isArray(v)) this.add('cut.not-a-list', path + key, `must be a list, not ${named(v)}`);
    else if (v.length > most)
      this.add(
        'cut.too-many',
        path + key,
        `has ${v.length} entries; ${most} is the most`,
        'Split the problem.',
      );
    else return v;
    return undefined;
  }

  number(o: Fields, path: string, key: string, least: number, most: number): number {
    const v = o[key];
    if (v === undefined) this.missing(path + key);
    else if (typeof v !== 'number' || Number.isNaN(v))
      this.add('cut.not-a-number', path + key, `must be a number, not ${named(v)}`);
    else if (v < least) this.add('cut.too-small', path + key, `is ${v}; the least is ${least}`);
    else if (v > most) this.add('cut.too-large', path + key, `is ${v}; the most is ${most}`);
    else return v;
    return least;
  }

  whole(o: Fields, path: string, key: string, least: number, most: number): number {
    const v = this.number(o, path, key, least, most);
    if (Number.isInteger(v)) return v;
    this.add('cut.not-whole', path + key, `must be a whole number, not ${v}`);
    return least;
  }

  flag(o: Fields, path: string, key: string, absent: boolean | undefined): boolean {
    const v = o[key];
    if (v === undefined && absent !== undefined) return absent;
    if (v === undefined) this.missing(path + key);
    else if (typeof v !== 'boolean')
      this.add('cut.not-a-flag', path + key, `must be true or false, not ${named(v)}`);
    else return v;
    return false;
  }

  choice<T extends string>(o: Fields, path: string, key: string, of: readonly T[]): T {
    const v = o[key];
    if (v === undefined) this.missing(path + key);
    else if (!of.includes(v as T))
      this.add('cut.not-a-choice', path + key, `must be one of ${of.join(', ')}, not ${named(v)}`);
    else return v as T;
    return of[0]!;
  }

  /** A name that nothing else in `taken` has. */
  id(o: Fields, path: string, taken: Set<string>): string {
    const v = o.id;
    const at = `${path}id`;
    if (v === undefined) this.missing(at);
    else if (typeof v !== 'string' || v === '')
      this.add('cut.not-a-name', at, 'must be a text of at least one letter');
    else if (taken.has(v))
      this.add('cut.same-id', at, `is "${v}", which is used before`, 'Give each a name of its own.');
    else {
      taken.add(v);
      return v;
    }
    return '';
  }

  private missing(path: string): void {
    this.add('cut.missing-field', path, 'is missing', `Add ${path}.`);
  }
}

function named(v: unknown): string {
  if (v === null) return 'nothing';
  if (Array.isArray(v)) return 'a list';
  if (typeof v === 'string') return `the text "${v.slice(0, 40)}"`;
  if (typeof v === 'object') return 'an object';
  return String(v);
}
