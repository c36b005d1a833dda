import { formatOf } from '../../job/index.ts';
import { commonName, groupParts } from '../../setting-out/index.ts';
import { Length } from '../numbers/number.tsx';
import { useApp, useDesk } from '../state/use-desk.ts';
import { featureWords } from './feature-words.ts';

/** Every part as it will be when it is finished, equal ones on one line. */
export function PartsList() {
  const desk = useDesk();
  const setOut = useApp((s) => s.setOut);
  const shop = useApp((s) => s.history.job.shop);
  const chosen = useApp((s) => s.part);
  const unit = formatOf(shop).unit === 'mm' ? 'mm' : 'inches';
  const lots = new Map(shop.rack.lots.map((l) => [l.id, l.name]));
  return (
    <section className="parts" aria-labelledby="parts-head">
      <h2 id="parts-head">
        Parts{' '}
        <span className="faint">
          {setOut.parts.length}, finished sizes in {unit}
        </span>
      </h2>
      <div className="list-frame">
        <table className="list">
          <thead>
            <tr>
              <th scope="col">Mark</th>
              <th scope="col">Part</th>
              <th scope="col" className="figure">
                No.
              </th>
              <th scope="col" className="figure">
                Length
              </th>
              <th scope="col" className="figure">
                Width
              </th>
              <th scope="col" className="figure">
                Thick
              </th>
              <th scope="col" className="wide-only">
                Of
              </th>
              <th scope="col" className="wide-only">
                Worked on it
              </th>
            </tr>
          </thead>
          <tbody>
            {groupParts(setOut).map(({ parts, marks }) => {
              const first = parts[0]!;
              const isChosen = parts.some((p) => p.id === chosen);
              return (
                <tr key={first.id} className={isChosen ? 'chosen' : undefined}>
                  <th scope="row">
                    <button
                      type="button"
                      className="mark"
                      aria-pressed={isChosen}
                      title="Show it in the picture"
                      onClick={() => desk.choose(isChosen ? undefined : first.id)}
                    >
                      {marks}
                    </button>
                  </th>
                  <td>{parts.length === 1 ? first.name : commonName(parts)}</td>
                  <td className="figure">{parts.length}</td>
                  {[first.length, first.width, first.thickness].map((t, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: three sizes in a fixed order
                    <td key={i} className="figure">
                      <Length of={setOut} t={t} bare />
                    </td>
                  ))}
                  <td className="wide-only">{lots.get(first.lot) ?? first.lot}</td>
                  <td className="faint wide-only">{featureWords(first.features)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </section>
  );
}
