import type { Edit, Stock } from '../../job/index.ts';
import { EditButton } from '../fields/edit-button.tsx';
import { LengthField } from '../fields/text-field.tsx';

/** The flaws of a sheet or board of which there is one: where they lie, and a way to note another. */
export function StockFlaws({ at, stock, sheet }: { at: string; stock: Stock; sheet: boolean }) {
  const flaws = stock.flaws ?? [];
  if (stock.have !== 1) return null;
  const name = stock.name ?? stock.id;
  const set = (list: Stock['flaws']): Edit =>
    list && list.length > 0
      ? { edit: 'set', at: `${at}/flaws`, value: list }
      : { edit: 'set', at: `${at}/flaws` };
  return (
    <ul className="tools">
      {flaws.map((f) => {
        const row = `${at}/flaws/${f.id}`;
        const of = (what: string) => `${what} of ${f.name ?? f.id}, ${name}`;
        return (
          <li key={f.id}>
            {name} has a flaw <LengthField path={`${row}/name`} label={of('Name')} empty={f.id} /> at{' '}
            <LengthField path={`${row}/x`} label={of('Place along')} /> from the left
            {sheet && (
              <>
                {' '}
                and <LengthField path={`${row}/y`} label={of('Place across')} /> from the lower edge
              </>
            )}
            , <LengthField path={`${row}/length`} label={of('Length')} /> long
            {sheet && (
              <>
                {' '}
                and <LengthField path={`${row}/width`} label={of('Width')} /> wide
              </>
            )}
            .{' '}
            <EditButton edit={() => set(flaws.filter((x) => x !== f))} quiet>
              Take it away
            </EditButton>
          </li>
        );
      })}
      <li>
        <EditButton edit={() => set([...flaws, another(flaws, sheet)])} quiet>
          Note a flaw of {name}
        </EditButton>
      </li>
    </ul>
  );
}

function another(flaws: NonNullable<Stock['flaws']>, sheet: boolean): NonNullable<Stock['flaws']>[number] {
  let n = flaws.length + 1;
  while (flaws.some((f) => f.id === `flaw-${n}`)) n++;
  const along = { id: `flaw-${n}`, x: '0 mm', length: '20 mm' };
  return sheet ? { ...along, y: '0 mm', width: '20 mm' } : along;
}
