import { useEffect, useRef } from 'react';
import { useApp, useDesk } from '../state/use-desk.ts';
import { SnagList } from './snag-list.tsx';
import { useSnags } from './use-snags.ts';

/** All snags on a slip over the page, while it is open. */
export function SnagSlip() {
  const open = useApp((s) => s.snagsOpen);
  return open && <Slip />;
}

function Slip() {
  const desk = useDesk();
  const snags = useSnags();
  const working = useApp((s) => s.working !== undefined);
  const slip = useRef<HTMLElement>(null);
  useEffect(() => slip.current?.focus(), []);
  const close = () => desk.store.set({ snagsOpen: false });
  return (
    <aside
      className="snag-slip"
      ref={slip}
      tabIndex={-1}
      aria-label="Snags"
      onKeyDown={(e) => e.key === 'Escape' && close()}
    >
      <header>
        <strong>Snags</strong>
        {working && <span className="faint">of the plan before; a new one is being worked out</span>}
        <button type="button" className="close" aria-label="Close" onClick={close}>
          ×
        </button>
      </header>
      {snags.length === 0 ? <p>Nothing to put right.</p> : <SnagList snags={snags} />}
    </aside>
  );
}
