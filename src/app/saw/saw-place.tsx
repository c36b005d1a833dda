import type { LotBreakdown } from '../../breakdown/index.ts';
import { PlanWaits } from '../plan-waits.tsx';
import { useApp } from '../state/use-desk.ts';
import { SheetCard } from './sheet-card.tsx';

/** How every sheet and strip is cut up, as it lies on the trestles. */
export function SawPlace() {
  const plan = useApp((s) => s.plan);
  if (!plan) return <PlanWaits title="Saw" />;
  const { lots, missing } = plan.breakdown;
  return (
    <div className="saw">
      <h1>Saw</h1>
      <p className="lead">
        Grain from left to right, the trued edge at the bottom, the squared end at the left. The number in a
        ring is the card that makes the cut.
      </p>
      {missing.length > 0 && (
        <p className="wrong" role="alert">
          There is no stock for {missing.map((m) => m.part.mark).join(', ')}.
        </p>
      )}
      {lots
        .filter((l) => l.sheets.length > 0)
        .map((l) => (
          <section key={l.lot.id} className="saw-lot">
            <h2>
              {l.lot.name} <span className="faint">{provenWords(l)}</span>
            </h2>
            {l.sheets.map((s) => (
              <SheetCard key={s.name} plan={plan} lot={l} sheet={s} />
            ))}
          </section>
        ))}
    </div>
  );
}

function provenWords({ plan, sheets }: LotBreakdown): string {
  const used = `${sheets.length} used`;
  if (plan.proven) return `${used}: proven, no plan costs less`;
  if (plan.bound.sheets >= sheets.length) return `${used}: no plan can do with fewer`;
  return `${used}; any plan needs at least ${plan.bound.sheets}`;
}
