import type { Draft, DraftPart } from '../draft.ts';

/**
 * Says which fronts are cut from one strip, and how they follow one another in it: those of a stack with their
 * heights side by side, those of a row end to end. Where they stand in neither, or their order in the piece is not
 * that of their marks, a stop says so.
 */
export function frontStrips(draft: Draft): void {
  const strips = new Map<string, { record: string; face: DraftPart }[]>();
  for (const { record, parts } of draft.drawers) {
    const of = draft.tree.get(record);
    if (of?.kind !== 'drawers' || of.oneStrip === undefined) continue;
    strips.set(of.oneStrip, [...(strips.get(of.oneStrip) ?? []), { record, face: draft.part(parts.face) }]);
  }
  for (const [id, fronts] of strips) {
    if (fronts.length < 2) continue;
    const faces = fronts.map((f) => f.face);
    const follow = stand(draft, faces, 2) ? 'width' : stand(draft, faces, 0) ? 'length' : undefined;
    if (follow && faces.every((f) => f.lot === faces[0]!.lot)) {
      for (const face of faces) face.strip = { id, follow };
      continue;
    }
    draft.stop(
      'drawers.no-strip',
      { id: fronts[1]!.record },
      'oneStrip',
      `The fronts of “${id}” can’t be cut from one strip: they are not of one lot and one ${follow === 'length' ? 'height' : 'width'}, in a stack from below or in a row from the left.`,
      { says: 'Give the same word only to fronts that stand one above the other, or level side by side.' },
    );
  }
}

/** Whether fronts follow one another along an axis, each behind the one before, and are alike across it. */
function stand(draft: Draft, faces: readonly DraftPart[], axis: 0 | 2): boolean {
  const l = draft.ledger;
  const across = axis === 0 ? 2 : 0;
  const [low, high] = [faces[0]!.box.min[across], faces[0]!.box.max[across]].map((t) => l.ticks(t));
  return faces.every((f, i) => {
    const before = faces[i - 1];
    return (
      l.ticks(f.box.min[across]) === low &&
      l.ticks(f.box.max[across]) === high &&
      (!before || l.ticks(f.box.min[axis]) >= l.ticks(before.box.max[axis]))
    );
  });
}
