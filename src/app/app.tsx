import { useEffect } from 'react';
import { BenchPlace } from './bench/bench-place.tsx';
import { BookPlace } from './book/book-place.tsx';
import { DrawPlace } from './draw/draw-place.tsx';
import { Why } from './numbers/why.tsx';
import { RackPlace } from './rack/rack-place.tsx';
import { SawPlace } from './saw/saw-place.tsx';
import { SnagSlip } from './snags/snag-slip.tsx';
import type { Desk } from './state/desk.ts';
import { DeskContext, useApp } from './state/use-desk.ts';
import { Strip } from './strip.tsx';
import { useUndoKeys } from './undo-keys.ts';

const ROOMS = {
  Draw: DrawPlace,
  Rack: RackPlace,
  Saw: SawPlace,
  Bench: BenchPlace,
  Book: BookPlace,
} as const;

export function App({ desk }: { desk: Desk }) {
  return (
    <DeskContext value={desk}>
      <Page />
    </DeskContext>
  );
}

function Page() {
  const place = useApp((s) => s.place);
  const title = useApp((s) => s.history.job.design.records.find((r) => r.kind === 'piece')?.name);
  useUndoKeys();
  useEffect(() => {
    document.title = `${title ?? 'Untitled'}, ${place.toLowerCase()} · Casewright`;
  }, [title, place]);
  const Place = ROOMS[place];
  return (
    <>
      <Strip />
      <main className="sheet" aria-label={place}>
        <Place />
      </main>
      <Why />
      <SnagSlip />
    </>
  );
}
