import { partIsSpoiled, sheetIsCut, tickedAreCut } from '../../plan/index.ts';
import { partsAndBoards } from '../../setting-out/index.ts';
import { EditButton } from '../fields/edit-button.tsx';
import { useApp } from '../state/use-desk.ts';

/** Says of a sheet that it is cut; only of the plan that is on the table now. */
export function SheetIsCut({ sheet }: { sheet: string }) {
  const plan = useApp((s) => (s.working ? undefined : s.plan));
  const edit = plan && sheetIsCut(plan, sheet);
  if (!edit) return null;
  return (
    <p className="acts">
      <EditButton edit={() => edit} quiet>
        {sheet} is cut
      </EditButton>
    </p>
  );
}

/** Says of the cuts whose cards are ticked that they are made; only of the plan that is on the table now. */
export function TickedAreCut() {
  const plan = useApp((s) => (s.working ? undefined : s.plan));
  const noted = plan && tickedAreCut(plan);
  if (!noted) return null;
  if ('why' in noted) return <p className="faint">{noted.why}</p>;
  return (
    <p>
      Cuts are ticked. Before what you measured is entered, note them, and the plan goes on from the pieces
      that lie there.{' '}
      <EditButton edit={() => noted.edit} quiet>
        What is ticked is cut
      </EditButton>
    </p>
  );
}

/** The parts that are cut, each with a way to say that it is spoiled: then it is cut again from what is left. */
export function CutAlready() {
  const job = useApp((s) => s.history.job);
  const setOut = useApp((s) => s.setOut);
  const made = partsAndBoards(setOut).filter((p) => (job.work.made ?? []).some((m) => m.part === p.id));
  if (made.length === 0) return null;
  return (
    <section className="cut-already" aria-label="Cut already">
      <h2>Cut already</h2>
      <p>
        These parts are not cut again and keep their sizes; what was left over is on the rack. If one is
        spoiled, say so.
      </p>
      <ul className="tools">
        {made.map((p) => (
          <li key={p.id}>
            <span className="mark">{p.mark}</span> {p.name}{' '}
            <EditButton edit={() => partIsSpoiled(job, p.id) ?? { edit: 'all', of: [] }} quiet>
              {p.mark} is spoiled
            </EditButton>
          </li>
        ))}
      </ul>
    </section>
  );
}
