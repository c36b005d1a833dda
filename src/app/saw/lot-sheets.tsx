import { provenWords } from '../../breakdown/index.ts';
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
