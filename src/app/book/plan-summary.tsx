import { timeWords } from '../../build/index.ts';
import { Sizes } from '../numbers/number.tsx';
import { useApp } from '../state/use-desk.ts';

/** The plan on one page: what was proven, what it takes, what it costs and of what. */
export function PlanSummary() {
  const plan = useApp((s) => s.plan);
  if (!plan) return null;
  const { dryFit, hours, costs, breakdown } = plan;
  const money = (x: number) => `${x.toFixed(2)} ${costs.currency}`;
  const judged = breakdown.lots.filter((l) => l.verdict.holds).length;
  return (
    <div className="summary">
      <div>
        <section>
          <h2>Proven</h2>
          <p>
            {dryFit.fits
              ? `All ${dryFit.ran} cards were run on virtual stock, and the piece came out as drawn.`
              : `${dryFit.ran} of ${dryFit.outOf} cards were run, and ${dryFit.faults.length} things came out wrong: see the snags.`}{' '}
            {judged} of {breakdown.lots.length} cutting plans were checked again by a program that did not
            make them.
          </p>
          <p>
            {plan.setOut.parts.length} parts, about {Math.round(plan.mass.kg)} kg together;{' '}
            {timeWords(hours.active)} of work and {timeWords(hours.waiting)} of waiting, in rough figures.
          </p>
        </section>
        {breakdown.leftovers.length > 0 && (
          <section>
            <h2>Back on the rack</h2>
            <ul className="plain">
              {breakdown.leftovers.map((l) => (
                <li key={l.name}>
                  <span className="mark">{l.name}</span>{' '}
                  <Sizes of={plan.setOut} sizes={[l.length, l.width]} />
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
      <section>
        <h2>Cost</h2>
        <table className="list">
          <tbody>
            {[...costs.bought, ...(costs.labour ? [costs.labour] : [])].map((row) => (
              <tr key={row.what}>
                <th scope="row">{row.what}</th>
                <td className="figure">
                  {row.count} at {row.each.toFixed(2)}
                </td>
                <td className="figure">{money(row.amount)}</td>
              </tr>
            ))}
            <tr className="total">
              <th scope="row">Together</th>
              <td />
              <td className="figure">{money(costs.total)}</td>
            </tr>
          </tbody>
        </table>
        <p className="faint">What is on the rack counts as paid.</p>
      </section>
    </div>
  );
}
