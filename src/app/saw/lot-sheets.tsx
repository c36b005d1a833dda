import type { LotBreakdown } from '../../breakdown/index.ts';
import type { Plan } from '../../plan/index.ts';
import { SheetCard } from './sheet-card.tsx';

/** Every lot with its sheets, and what finds no stock. */
export function LotSheets({
  plan,
  after,
}: {
  plan: Pick<Plan, 'job' | 'setOut' | 'breakdown' | 'build'>;
  /** What stands below each sheet. */
  after?: (sheet: string) => React.ReactNode;
}) {
  const { lots, missing } = plan.breakdown;
  return (
    <>
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
              <div key={s.name}>
                <SheetCard plan={plan} lot={l} sheet={s} />
                {after?.(s.name)}
              </div>
            ))}
          </section>
        ))}
    </>
  );
}

function provenWords({ plan, sheets }: LotBreakdown): string {
  const used = `${sheets.length} used`;
  if (plan.proven) return `${used}: proven, no plan costs less`;
  if (plan.bound.sheets >= sheets.length) return `${used}: no plan can do with fewer`;
  return `${used}; any plan needs at least ${plan.bound.sheets}${plan.endedByClock ? '; the search was ended before its time' : ''}`;
}
