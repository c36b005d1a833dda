import { screwsUsed } from '../../setting-out/index.ts';
import { LengthField, NumberField } from '../fields/text-field.tsx';
import { useApp } from '../state/use-desk.ts';

/** Screws in the drawers, and how many the piece takes. */
export function Screws() {
  const screws = useApp((s) => s.history.job.shop.rack.screws);
  const setOut = useApp((s) => s.setOut);
  const used = screwsUsed(setOut);
  return (
    <section>
      <h2>Screws</h2>
      <div className="list-frame">
        <table className="list">
          <thead>
            <tr>
              <th scope="col">Screw</th>
              <th scope="col">Length</th>
              <th scope="col">Diameter</th>
              <th scope="col">In the drawer</th>
              <th scope="col">Price of one</th>
              <th scope="col" className="figure">
                Piece takes
              </th>
            </tr>
          </thead>
          <tbody>
            {screws.map((s) => {
              const row = `shop/rack/screws/${s.id}`;
              const name = s.name ?? s.id;
              return (
                <tr key={s.id}>
                  <th scope="row">{name}</th>
                  <td>
                    <LengthField path={`${row}/length`} label={`Length of ${name}`} />
                  </td>
                  <td>
                    <LengthField path={`${row}/diameter`} label={`Diameter of ${name}`} />
                  </td>
                  <td>
                    <NumberField path={`${row}/have`} label={`Number of ${name}`} empty="none" />
                  </td>
                  <td>
                    <NumberField path={`${row}/price`} label={`Price of ${name}`} empty="not said" />
                  </td>
                  <td className="figure">{used.get(s.id) ?? '–'}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
