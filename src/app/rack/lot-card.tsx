import type { Lot } from '../../job/index.ts';
import { partsToCut } from '../../setting-out/index.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { LengthField, NumberField } from '../fields/text-field.tsx';
import { useApp } from '../state/use-desk.ts';
import { StockFaces } from './stock-faces.tsx';
import { StockFlaws } from './stock-flaws.tsx';

/** A lot: stock of one material and one measured thickness. */
export function LotCard({ lot }: { lot: Lot }) {
  const at = `shop/rack/lots/${lot.id}`;
  const sheet = lot.form === 'sheet';
  // What is bought is trimmed like the lot; an offcut may have clean sides.
  const trimmed = sheet && lot.trim !== undefined && lot.stock.some((s) => (s.have ?? 0) > 0);
  const parts = useApp((s) => partsToCut(s.setOut).filter((p) => p.lot === lot.id).length);
  const breakdown = useApp((s) => s.plan?.breakdown);
  const sheets = breakdown?.lots.find((l) => l.lot.id === lot.id)?.sheets ?? [];
  const currency = useApp((s) => s.history.job.shop.currency);
  return (
    <section className="lot" aria-label={lot.name}>
      <h2>
        <LengthField path={`${at}/name`} label={`Name of ${lot.id}`} />
      </h2>
      <p>
        Sold as <LengthField path={`${at}/nominal`} label={`Nominal thickness of ${lot.name}`} end="," />{' '}
        measures{' '}
        <LengthField
          path={`${at}/thickness`}
          label={`Measured thickness of ${lot.name}`}
          empty="not measured"
          end=","
        />{' '}
        {sheet ? (
          <>
            <LengthField path={`${at}/trim`} label={`Trim of ${lot.name}`} empty="nothing" /> trimmed off all
            round; face veneer{' '}
            <LengthField
              path={`${at}/veneer`}
              label={`Face veneer of ${lot.name}`}
              empty="not known"
              end="."
            />
          </>
        ) : (
          <>
            <LengthField path={`${at}/width`} label={`Width of ${lot.name}`} /> wide;{' '}
            <ChoiceField
              path={`${at}/tape`}
              label={`What ${lot.name} is`}
              choices={[
                ['', 'solid wood'],
                ['iron-on', 'veneer tape with glue on it'],
                ['glue', 'veneer tape without glue'],
              ]}
              end="."
            />
          </>
        )}{' '}
        <span className="faint">{partsWords(parts)}</span>
      </p>
      <div className="list-frame">
        <table className="list">
          <thead>
            <tr>
              <th scope="col">Stock</th>
              <th scope="col">Length</th>
              {sheet && <th scope="col">Width</th>}
              {trimmed && <th scope="col">Trimmed</th>}
              <th scope="col">On the rack</th>
              <th scope="col">Price ({currency})</th>
              <th scope="col">Worth</th>
              <th scope="col" className="figure">
                Plan uses
              </th>
            </tr>
          </thead>
          <tbody>
            {lot.stock.map((s) => {
              const row = `${at}/stock/${s.id}`;
              const name = s.name ?? s.id;
              const of = (what: string) => `${what} of ${name}, ${lot.name}`;
              return (
                <tr key={s.id}>
                  <th scope="row">{name}</th>
                  <td>
                    <LengthField path={`${row}/length`} label={of('Length')} />
                  </td>
                  {sheet && (
                    <td>
                      <LengthField path={`${row}/width`} label={of('Width')} />
                    </td>
                  )}
                  {trimmed && (
                    <td>
                      <LengthField path={`${row}/trim`} label={of('Trim')} empty="as above" />
                    </td>
                  )}
                  <td>
                    <NumberField path={`${row}/have`} label={of('Number')} empty="none" />
                  </td>
                  <td>
                    <NumberField path={`${row}/price`} label={of('Price')} empty="not sold" />
                  </td>
                  <td>
                    <NumberField path={`${row}/value`} label={of('Worth')} empty="little" />
                  </td>
                  <td className="figure">{sheets.filter((x) => x.source.stock.id === s.id).length || '–'}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {sheet && <StockFaces at={at} stock={lot.stock} />}
      {lot.stock.map((s) => (
        <StockFlaws key={s.id} at={`${at}/stock/${s.id}`} stock={s} sheet={sheet} />
      ))}
    </section>
  );
}

function partsWords(parts: number): string {
  if (parts === 0) return 'No part is made of it.';
  return parts === 1 ? 'One part is made of it.' : `${parts} parts are made of it.`;
}
