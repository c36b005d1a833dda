import { useApp, useDesk } from '../state/use-desk.ts';

/** The search for better cutting while it goes on: how far it is, and a way to end it. */
export function Searching() {
  const desk = useDesk();
  const search = useApp((s) => s.search);
  const lots = useApp((s) => s.history.job.shop.rack.lots);
  if (!search) return null;
  const name = lots.find((l) => l.id === search.lot)?.name ?? search.lot;
  return (
    <p className="searching" role="status">
      This plan can be cut. A cheaper one is still looked for: {name}, {Math.round(search.share * 100)} % of
      what will be tried.{' '}
      <button type="button" className="act" onClick={() => desk.enough()}>
        Leave it at this
      </button>
    </p>
  );
}
