import { useState } from 'react';
import { useApp, useDesk } from '../state/use-desk.ts';
import { JobFile } from './job-file.tsx';
import { PlanSummary } from './plan-summary.tsx';
import { saveFile } from './save-file.ts';

const TYPES = { pdf: 'application/pdf', csv: 'text/csv' } as const;
const ENDINGS = { pdf: '-book.pdf', csv: '-cutting-list.csv' } as const;

/** Everything to take along: the plan book, the cutting list, the job as a file. */
export function BookPlace() {
  const desk = useDesk();
  const name = useApp((s) => s.name);
  const ready = useApp((s) => s.plan !== undefined && s.working === undefined);
  const [at, setAt] = useState<'pdf' | 'csv'>();
  const [wrong, setWrong] = useState<string>();
  const get = async (kind: 'pdf' | 'csv') => {
    setAt(kind);
    setWrong(undefined);
    try {
      saveFile(`${name}${ENDINGS[kind]}`, TYPES[kind], await desk.file(kind));
    } catch (error) {
      setWrong(error instanceof Error ? error.message : String(error));
    }
    setAt(undefined);
  };
  return (
    <div className="book">
      <h1>Book</h1>
      <p className="lead">
        What goes along into the shop: drawings, cutting list, sheets with their cuts, shopping list, step
        cards, snags.
      </p>
      <p className="acts">
        <button
          type="button"
          className="act strong"
          disabled={!ready || at !== undefined}
          onClick={() => get('pdf')}
        >
          {at === 'pdf' ? 'Setting the pages …' : 'Plan book (PDF)'}
        </button>
        <button
          type="button"
          className="act"
          disabled={!ready || at !== undefined}
          onClick={() => get('csv')}
        >
          Cutting list (CSV)
        </button>
        {!ready && <span className="faint">as soon as the plan is worked out</span>}
        {wrong !== undefined && (
          <span className="wrong" role="alert">
            The file could not be made: {wrong}
          </span>
        )}
      </p>
      <PlanSummary />
      <JobFile />
    </div>
  );
}
