import { useEffect, useMemo, useState } from 'react';
import { bookInputOf, type Drawing, lengthsOf, PLEX, Progress } from '../../book/index.ts';
import { timeWords } from '../../build/index.ts';
import { formatOf } from '../../job/index.ts';
import type { Plan } from '../../plan/index.ts';
import { PlanWaits } from '../plan-waits.tsx';
import { useApp } from '../state/use-desk.ts';
import { CardList } from './card-list.tsx';
import { StepCard } from './step-card.tsx';

/** The step cards: one at a time at the bench, or all of them as a list. */
export function BenchPlace() {
  const plan = useApp((s) => s.plan);
  return plan ? <Cards plan={plan} /> : <PlanWaits title="Bench" />;
}

function Cards({ plan }: { plan: Plan }) {
  const { operations } = plan.build;
  const [at, setAt] = useState(0);
  const [all, setAll] = useState(false);
  const drawings = useDrawings(plan);
  const now = Math.min(at, operations.length - 1);
  const go = (by: number) => setAt(Math.min(operations.length - 1, Math.max(0, now + by)));

  useEffect(() => {
    if (all) return;
    const turn = (e: KeyboardEvent) => {
      if ((e.target as HTMLElement).closest('input, select, aside')) return;
      if (e.key === 'ArrowRight') setAt((i) => Math.min(operations.length - 1, i + 1));
      else if (e.key === 'ArrowLeft') setAt((i) => Math.max(0, i - 1));
    };
    window.addEventListener('keydown', turn);
    return () => window.removeEventListener('keydown', turn);
  }, [all, operations.length]);

  const operation = operations[now];
  if (!operation) return <p>There is nothing to do yet.</p>;
  return (
    <div className="bench">
      <header className="bench-head">
        <h1>Bench</h1>
        <p className="faint">
          {operations.length} cards, {timeWords(plan.hours.active)} of work besides drying, on{' '}
          {daysWords(plan.build.schedule.days)}. Times are rough.
        </p>
        <button type="button" className="act" aria-pressed={all} onClick={() => setAll(!all)}>
          {all ? 'One card at a time' : 'All cards'}
        </button>
      </header>
      {all ? (
        <CardList
          plan={plan}
          open={(i) => {
            setAt(i);
            setAll(false);
          }}
        />
      ) : (
        <>
          <Stages plan={plan} now={now} go={setAt} />
          <StepCard plan={plan} operation={operation} number={now + 1} drawing={drawings[now]} />
          <nav className="turn" aria-label="Cards">
            <button type="button" className="act" disabled={now === 0} onClick={() => go(-1)}>
              ← Before
            </button>
            <span>
              Card {now + 1} of {operations.length}
            </span>
            <button
              type="button"
              className="act"
              disabled={now === operations.length - 1}
              onClick={() => go(1)}
            >
              Next →
            </button>
          </nav>
        </>
      )}
    </div>
  );
}

function daysWords(days: number): string {
  return days === 1 ? 'one day' : `${days} days with the nights between`;
}

/** The stages of the work; each leads to its first card. */
function Stages({ plan, now, go }: { plan: Plan; now: number; go: (i: number) => void }) {
  const { stages, operations } = plan.build;
  const stage = operations[now]!.stage;
  return (
    <ol className="stages">
      {stages.map((s) => (
        <li key={s.id}>
          <button
            type="button"
            aria-current={s.id === stage ? 'step' : undefined}
            onClick={() => go(operations.findIndex((o) => o.stage === s.id))}
          >
            {s.title}
          </button>
        </li>
      ))}
    </ol>
  );
}

/** The drawings of all cards; each depends on what the cards before it have done. */
function useDrawings(plan: Plan): readonly (Drawing | undefined)[] {
  return useMemo(() => {
    const lengths = lengthsOf(plan.setOut.ledger, formatOf(plan.job.shop));
    const progress = new Progress(bookInputOf(plan));
    return plan.build.operations.map((o) => progress.next(o, lengths, PLEX));
  }, [plan]);
}
