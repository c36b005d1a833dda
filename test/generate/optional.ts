import fc from 'fast-check';

/** There or not. */
export function optional<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.option(arbitrary, { nil: undefined });
}

/** The same without the fields that are absent, as JSON has it. */
export function withoutAbsent<T extends object>(o: T): T {
  return Object.fromEntries(Object.entries(o).filter(([, value]) => value !== undefined)) as T;
}
