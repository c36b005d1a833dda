/** Fields that are worked out when they are first read, and kept. */
export function asAsked<T extends object>(ways: { readonly [K in keyof T]: () => T[K] }): T {
  const fields = {} as T;
  for (const key of Object.keys(ways) as (keyof T)[])
    Object.defineProperty(fields, key, {
      enumerable: true,
      configurable: true,
      get: () => {
        const value = ways[key]();
        Object.defineProperty(fields, key, { enumerable: true, value });
        return value;
      },
    });
  return fields;
}
