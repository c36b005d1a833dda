import { useState } from 'react';
import type { ListPlan } from '../../plan/index.ts';
import { CardLine } from '../bench/card-line.tsx';
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
  const snags = [...notes, ...plan.snags.filter((s) => s.level !== 'note')];
  return (
    <>
      {snags.length > 0 && <SnagList snags={snags} />}
      <LotSheets plan={plan} />
      <ListCards plan={plan} />
    </>
  );
}

/** The cards of a list, each under the number that stands in the rings of the drawings. */
function ListCards({ plan }: { plan: ListPlan }) {
  return (
    <section className="list-cards" aria-label="Cards of the list">
      <h2>Cut by cut</h2>
      {plan.build.operations.map((o, i) => (
        <article key={o.id} className="list-card">
          <h3>
            <span className="mark">{i + 1}</span> {o.title}
          </h3>
          <ol>
            {o.lines.map((line, k) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a card's lines never move
              <li key={k}>
                <CardLine plan={plan} operation={o} line={line} />
              </li>
            ))}
          </ol>
          {o.cautions.map((c) => (
            <p key={c} className="caution">
              {c}
            </p>
          ))}
        </article>
      ))}
    </section>
  );
}
