import type { Field } from './typed-length.ts';

/** The records of a case with what it hangs by: rails, or a cleat with what that asks of the back. */
export function hung(records: readonly Field[], cleated: boolean): readonly Field[] {
  const hanging = { id: 'hanging', kind: 'hanging', parent: 'case', board: 'other' };
  // A lid hangs on a back thick enough for its hinges.
  const lidded = records.some((r) => r.kind === 'top' && r.hinged);
  if (!cleated || lidded) return [...records, { ...hanging, height: '90 mm' }];
  const fitting = records.find((r) => r.kind === 'back')?.fitting ?? 'applied';
  const back = { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting };
  return [...records.filter((r) => r.kind !== 'back'), back, { ...hanging, by: 'cleat' }];
}
