/** What an object with such fields holds: how each is worked out, and those that have been. */
interface Asked {
  readonly ways: Readonly<Record<string, () => unknown>>;
  readonly found: Map<string, unknown>;
}

const HIDDEN = Symbol('as asked');

/** Prototypes with one getter for each field, by the fields' names. */
const PROTOTYPES = new Map<string, object>();

/**
 * Fields that are worked out when they are first read, and kept. Their getters belong to a prototype that all such
 * objects share: an object with getters of its own is kept long after its piece, with all that they can reach.
 */
export function asAsked<T extends object>(ways: { readonly [K in keyof T]: () => T[K] }): T {
  const fields = Object.create(prototypeOf(Object.keys(ways)));
  fields[HIDDEN] = { ways, found: new Map() };
  return fields;
}

function prototypeOf(names: readonly string[]): object {
  const key = names.join();
  const known = PROTOTYPES.get(key);
  if (known) return known;
  const made = {};
  for (const name of names)
    Object.defineProperty(made, name, {
      enumerable: true,
      get(this: Record<typeof HIDDEN, Asked>) {
        const { ways, found } = this[HIDDEN];
        const known = found.get(name);
        if (known !== undefined || found.has(name)) return known;
        const made = ways[name]!();
        found.set(name, made);
        return made;
      },
    });
  PROTOTYPES.set(key, made);
  return made;
}
