import { editOfCure, type JobDocument, readPlace } from '../../job/index.ts';
import { type Cure, type Snag, sourceWords } from '../../snag/index.ts';
import { EditButton } from '../fields/edit-button.tsx';
import { placeName } from '../numbers/place-name.ts';
import { useApp, useDesk } from '../state/use-desk.ts';
import { keyOf, LEVELS } from './use-snags.ts';

/** Snags in full: what is wrong, by which rule, and how to put it right. */
export function SnagList({ snags }: { snags: readonly Snag[] }) {
  return (
    <ul className="snags">
      {snags.map((s) => (
        <li key={keyOf(s)} className={s.level}>
          <SnagText snag={s} />
        </li>
      ))}
    </ul>
  );
}

function SnagText({ snag: s }: { snag: Snag }) {
  const desk = useDesk();
  const job = useApp((st) => st.history.job);
  const level = LEVELS.find(([l]) => l === s.level)![1];
  const { part, path } = s.where;
  const field = path === undefined ? undefined : fieldAt(job, path);
  return (
    <>
      <p>
        <span className="level">{level}</span> {s.sentence}
      </p>
      {s.rule && (
        <p className="faint">
          {s.rule.says} ({sourceWords(s.rule)})
        </p>
      )}
      {s.cures.map((c) => (
        <CureText key={c.says} cure={c} />
      ))}
      <p className="acts">
        {part !== undefined && (
          <button
            type="button"
            className="act quiet"
            onClick={() => desk.store.set({ part, place: 'Draw', snagsOpen: false })}
          >
            Show the part
          </button>
        )}
        {field !== undefined && (
          <button type="button" className="act quiet" onClick={() => desk.goToField(field)}>
            Go to {placeName(job, field)}
          </button>
        )}
      </p>
    </>
  );
}

/** The field that a snag's path means: its own, or for stock and screws how many there are. */
function fieldAt(job: JobDocument, path: string): string | undefined {
  const stands = readPlace(job, path);
  if (typeof stands === 'string' || typeof stands === 'number') return path;
  return /\/(stock|screws)\/[^/]+$/.test(path) && stands !== undefined ? `${path}/have` : undefined;
}

function CureText({ cure }: { cure: Cure }) {
  const { edits } = cure;
  return (
    <p className="cure">
      {cure.says}{' '}
      {edits && edits.length > 0 && <EditButton edit={() => editOfCure(edits)}>Do that</EditButton>}
    </p>
  );
}
