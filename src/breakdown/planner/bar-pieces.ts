/** Every piece by its kind, in the order of the kinds. */
export function eachPiece(demand: Int32Array): Int32Array {
  const pieces = new Int32Array(demand.reduce((a, d) => a + d, 0));
  let at = 0;
  demand.forEach((d, i) => {
    pieces.fill(i, at, at + d);
    at += d;
  });
  return pieces;
}

/** How many of each kind there are among pieces given by kind. */
export function countedByKind(pieces: Iterable<number>, kinds: number): Int32Array {
  const counts = new Int32Array(kinds);
  for (const i of pieces) counts[i]!++;
  return counts;
}
