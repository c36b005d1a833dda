import { useState } from 'react';
import { SnagList } from '../snags/snag-list.tsx';
import { useApp, useDesk } from '../state/use-desk.ts';
import type { ListCut } from '../worker/list-work.ts';
import { LotSheets } from './lot-sheets.tsx';

const HEADINGS = 'name\tlength\twidth\tthickness\tcount\tgrain';

/** A list that the maker brings along, pasted from a spreadsheet and cut from the same rack. */
export function OwnList() {
  const desk = useDesk();
  const shop = useApp((s) => s.history.job.shop);
  const [text, setText] = useState('');
  const [working, setWorking] = useState(false);
  const [cut, setCut] = useState<ListCut | undefined>();
  const [failure, setFailure] = useState<string | undefined>();
  const begin = async () => {
    setWorking(true);
    setFailure(undefined);
    try {
      setCut(await desk.cutList(text, shop));
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
    setWorking(false);
  };
  return (
    <section className="own-list">
      <h2>A list of your own</h2>
      <p>
        Paste it from a spreadsheet, with a row of headings: name, length (along the grain), width, thickness
        or stock, count, grain; in any order and unit. It is cut from the rack as it stands, apart from this
        piece.
      </p>
      <textarea
        aria-label="Pieces, with a row of headings"
        rows={6}
        spellCheck={false}
        placeholder={HEADINGS}
        value={text}
        onChange={(e) => setText(e.target.value)}
      />
      <p className="acts">
        <button type="button" className="act" disabled={text.trim() === '' || working} onClick={begin}>
          {working ? 'Working it out' : 'Cut it from the rack'}
        </button>
      </p>
      {failure && (
        <p className="wrong" role="alert">
          {failure}
        </p>
      )}
      {cut && (cut.ok ? <Cut cut={cut} /> : <Refused cut={cut} />)}
    </section>
  );
}

function Refused({ cut }: { cut: ListCut & { readonly ok: false } }) {
  return (
    <div className="refused" role="alert">
      <SnagList snags={cut.snags} />
    </div>
  );
}

function Cut({ cut: { plan, notes } }: { cut: ListCut & { readonly ok: true } }) {
  return (
    <>
      {notes.length > 0 && <SnagList snags={notes} />}
      <LotSheets plan={plan} />
    </>
  );
}
