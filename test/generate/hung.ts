import type { Field } from './typed-length.ts';

/** The records of a case with what it hangs by: rails, or a cleat with what that asks of the back and the bottom. */
export function hung(records: readonly Field[], cleated: boolean): readonly Field[] {
  const hanging = { id: 'hanging', kind: 'hanging', parent: 'case', board: 'other' };
  if (!cleated) return [...records, { ...hanging, height: '90 mm' }];
  const back = { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'groove' };
  return [
    ...records
      .filter((r) => r.kind !== 'back')
      .map(({ bottom, ...r }) => (r.kind === 'case' || bottom === undefined ? r : { ...r, bottom })),
    back,
    { ...hanging, by: 'cleat' },
  ];
}
