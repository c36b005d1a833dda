/** A text for shapes that are the same to a millionth of a millimetre, to remember what was found out about them. */
export function shapeKey(of: unknown): string {
  return JSON.stringify(of, (_, x: unknown) => (typeof x === 'number' ? Math.round(x * 1e6) / 1e6 : x));
}
