import { SnagCount } from './snags/snag-count.tsx';
import { PLACES } from './state/places.ts';
import { useApp, useDesk } from './state/use-desk.ts';
import { Working } from './working.tsx';

/** The five places along the edge of the sheet, with what is always at hand: undo, snags, how the plan stands. */
export function Strip() {
  const desk = useDesk();
  const place = useApp((s) => s.place);
  const back = useApp((s) => s.history.back.length);
  const forth = useApp((s) => s.history.forth.length);
  return (
    <header className="strip">
      <span className="maker">Casewright</span>
      <nav aria-label="Places">
        {PLACES.map((name) => (
          <button
            key={name}
            type="button"
            aria-current={name === place ? 'page' : undefined}
            onClick={() => desk.goTo(name)}
          >
            {name}
          </button>
        ))}
      </nav>
      <div className="at-hand">
        <Working />
        <button type="button" className="act quiet" disabled={back === 0} onClick={() => desk.undo()}>
          Undo
        </button>
        <button type="button" className="act quiet" disabled={forth === 0} onClick={() => desk.redo()}>
          Redo
        </button>
        <SnagCount />
      </div>
    </header>
  );
}
