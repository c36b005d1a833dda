import { timeWords } from '../../build/index.ts';
import type { Plan } from '../../plan/index.ts';
import { CardLine } from './card-line.tsx';

/** All cards under their stages; a number opens its card. */
export function CardList({ plan, open }: { plan: Plan; open: (index: number) => void }) {
  const { operations, stages } = plan.build;
  const numbered = operations.map((operation, index) => ({ operation, index }));
  return stages.map((s) => (
    <section key={s.id} className="card-list">
      <h2>{s.title}</h2>
      <ol>
        {numbered
          .filter(({ operation }) => operation.stage === s.id)
          .map(({ operation: o, index }) => (
            <li key={o.id}>
              <button
                type="button"
                className="mark"
                onClick={() => open(index)}
                aria-label={`Card ${index + 1}`}
              >
                {index + 1}
              </button>
              <div>
                <strong>{o.title}</strong>
                {o.minutes.active > 0 && <span className="faint"> {timeWords(o.minutes.active)}</span>}
                <p>
                  {o.lines.map((line, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: a card's lines never move
                    <span key={i}>
                      <CardLine plan={plan} operation={o} line={line} />{' '}
                    </span>
                  ))}
                </p>
              </div>
            </li>
          ))}
      </ol>
    </section>
  ));
}
