import { useEffect, useRef } from 'react';
import { formatOf, readPlace } from '../../job/index.ts';
import { leavesOf, printSetting } from '../../measure/index.ts';
import { LengthField } from '../fields/text-field.tsx';
import type { Asked } from '../state/app-state.ts';
import { useApp, useDesk } from '../state/use-desk.ts';
import { placeName } from './place-name.ts';
import { reasonsOf } from './reasons.ts';

/** The slip that tells where a number comes from; shown while one is asked about. */
export function Why() {
  const asked = useApp((s) => s.asked);
  return asked && <WhySlip key={asked.traced} asked={asked} />;
}

function WhySlip({ asked }: { asked: Asked }) {
  const desk = useDesk();
  const job = useApp((s) => s.history.job);
  const slip = useRef<HTMLElement>(null);
  const format = formatOf(job.shop);
  const { setOut, traced } = asked;
  const close = () => desk.store.set({ asked: undefined });

  useEffect(() => {
    const before = document.activeElement as HTMLElement | null;
    slip.current?.focus();
    return () => {
      if (before?.isConnected) before.focus();
    };
  }, []);

  const lines = reasonsOf(setOut, traced, format);
  const places = leavesOf(setOut.ledger.data(), traced).flatMap((leaf) =>
    leaf.kind === 'document' && typeof readPlace(job, leaf.id.replace(/@\d+$/, '')) === 'string'
      ? [leaf.id.replace(/@\d+$/, '')]
      : [],
  );
  const typed = [...new Set(places)];
  return (
    <aside
      className="why"
      ref={slip}
      tabIndex={-1}
      aria-label="Where the number comes from"
      onKeyDown={(e) => e.key === 'Escape' && close()}
    >
      <header>
        <strong>{printSetting(setOut.ledger.ticks(traced), format)}</strong>
        <button type="button" className="close" aria-label="Close" onClick={close}>
          ×
        </button>
      </header>
      <ol className="reasons">
        {lines.map((line, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of one explanation never move
          <li key={i} style={{ '--depth': line.depth } as React.CSSProperties}>
            {line.words.map((w) =>
              typeof w === 'string' ? (
                w
              ) : (
                <button key={w.path} type="button" className="link" onClick={() => desk.goToField(w.path)}>
                  {placeName(job, w.path)}
                </button>
              ),
            )}
          </li>
        ))}
      </ol>
      {typed.length > 0 && (
        <section className="change">
          <h3>It rests on</h3>
          {typed.slice(0, 6).map((path) => (
            <LengthField key={path} path={path} label={placeName(job, path)} row />
          ))}
        </section>
      )}
    </aside>
  );
}
