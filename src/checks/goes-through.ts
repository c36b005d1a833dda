/**
 * Whether a rectangle goes through a rectangular opening, straight or turned in it. Sizes in one unit, touching allowed.
 * Of sides p >= q in an opening a >= b: p <= a and q <= b, or q <= b and
 * ((a + b) / (p + q))^2 + ((a - b) / (p - q))^2 >= 2.
 * W. B. Carver, The American Mathematical Monthly 64 (1957), p. 114 (from memory).
 */
export function goesThrough(
  rectangle: readonly [number, number],
  opening: readonly [number, number],
): boolean {
  const [p, q] = [Math.max(...rectangle), Math.min(...rectangle)];
  const [a, b] = [Math.max(...opening), Math.min(...opening)];
  if (b <= 0 || q > b) return false;
  if (p <= a) return true;
  return ((a + b) / (p + q)) ** 2 + ((a - b) / (p - q)) ** 2 >= 2;
}
