import type { Field } from './typed-length.ts';

/**
 * The records of a case with a back in each of its bays in place of the one behind all of them; as they are where
 * it has no bays, or something asks for the one back. `mixed`: side by side, every second one in grooves where the others are in
 * rabbets, or the other way round.
 */
export function withBayBacks(records: readonly Field[], how: 'alike' | 'mixed'): readonly Field[] {
  const back = records.find((r) => r.kind === 'back');
  const bays = records.filter((r) => r.kind === 'opening' && r.parent === 'inside');
  const inside = records.find((r) => r.id === 'inside');
  const whole =
    records.some((r) => r.parent === 'back' || (r.kind === 'top' && r.hinged) || r.by === 'cleat') ||
    !(inside?.split === 'across' || inside?.split === 'down');
  if (!back || bays.length < 2 || whole) return records;
  // Dividers come into a mitred case when it is closed: backs beside them stand in no grooves.
  const across = inside?.split === 'across';
  const mitred = across && records.some((r) => r.kind === 'case' && r.joints === 'mitre');
  const fitting = mitred && back.fitting === 'groove' ? 'rabbet' : back.fitting;
  return [
    ...records.filter((r) => r !== back),
    ...bays
      // Laid on between two others, one would hang by its lower end.
      .filter(
        (_, i) => back.fitting !== 'applied' || inside?.split === 'down' || i === 0 || i + 1 === bays.length,
      )
      .map((bay, i) => ({
        ...back,
        ...(fitting === undefined ? {} : { fitting }),
        id: `back.${i + 1}`,
        parent: bay.id,
        ...(how === 'mixed' && across && !mitred && i % 2 === 1 ? { fitting: other(back) } : {}),
      })),
  ];
}

function other({ fitting }: Field): unknown {
  return fitting === 'rabbet' ? 'groove' : fitting === 'groove' ? 'rabbet' : fitting;
}
