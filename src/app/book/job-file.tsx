import { useRef } from 'react';
import { SnagList } from '../snags/snag-list.tsx';
import { useApp, useDesk } from '../state/use-desk.ts';
import { saveFile } from './save-file.ts';

/** The job as a file: to be saved, opened, or begun again. */
export function JobFile() {
  const desk = useDesk();
  const name = useApp((s) => s.name);
  const kept = useApp((s) => s.kept);
  const refused = useApp((s) => s.refused);
  const choose = useRef<HTMLInputElement>(null);
  const save = () => saveFile(`${name}.json`, 'application/json', `${JSON.stringify(desk.job, null, 2)}\n`);
  return (
    <section>
      <h2>The job as a file</h2>
      <p>
        {kept
          ? 'Every change is kept in this browser at once. A file is for keeping elsewhere, and for the command line.'
          : 'This browser keeps nothing: save the job to a file before you close the page.'}
      </p>
      <p className="acts">
        <button type="button" className="act" onClick={save}>
          Save {name}.json
        </button>
        <button type="button" className="act" onClick={() => choose.current?.click()}>
          Open a file
        </button>
        <button type="button" className="act quiet" onClick={() => desk.startAgain()}>
          Back to {name} as it was opened
        </button>
        <input
          ref={choose}
          type="file"
          accept=".json,application/json"
          aria-label="Job file to open"
          hidden
          onChange={async (e) => {
            const file = e.target.files?.[0];
            e.target.value = '';
            if (file) desk.open(file.name, await file.text());
          }}
        />
      </p>
      {refused && (
        <section className="refused" role="alert">
          <p>
            <strong>{refused.file} was not opened.</strong> What was open is as it was.
          </p>
          <SnagList snags={refused.snags} />
        </section>
      )}
    </section>
  );
}
