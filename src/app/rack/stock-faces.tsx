import type { Stock } from '../../job/index.ts';
import { ChoiceField } from '../fields/choice-field.tsx';

/** Which faces of the sheets on the rack may be seen: a line for each size of them. */
export function StockFaces({ at, stock }: { at: string; stock: readonly Stock[] }) {
  const asked = stock.filter((s) => (s.have ?? 0) > 0 || s.goodFaces !== undefined);
  if (asked.length === 0) return null;
  return (
    <ul className="tools">
      {asked.map((s) => (
        <li key={s.id}>
          {s.name ?? s.id} is good on{' '}
          <ChoiceField
            path={`${at}/stock/${s.id}/goodFaces`}
            label={`Good faces of ${s.name ?? s.id}`}
            choices={[
              ['', 'both faces'],
              ['one', 'one face'],
              ['none', 'neither face'],
            ]}
            end="."
          />
        </li>
      ))}
    </ul>
  );
}
