import type { Field } from './typed-length.ts';

/**
 * The records of a case with a back in each of its bays in place of the one that is let in behind all of them; as they are where
 * it has no bays, or something asks for the one back.
 */
export function withBayBacks(records: readonly Field[]): readonly Field[] {
  const back = records.find((r) => r.kind === 'back');
  const bays = records.filter((r) => r.kind === 'opening' && r.parent === 'inside');
  const whole =
    records.some((r) => r.parent === 'back' || (r.kind === 'top' && r.hinged) || r.by === 'cleat') ||
    !records.some((r) => r.id === 'inside' && r.split === 'across');
  if (!back || back.fitting === 'applied' || bays.length < 2 || whole) return records;
  return [
    ...records.filter((r) => r !== back),
    ...bays.map((bay, i) => ({ ...back, id: `back.${i + 1}`, parent: bay.id })),
  ];
}
