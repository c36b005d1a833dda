import { useApp } from './state/use-desk.ts';

const ROOMS = {
  'setting-out': 'setting out',
  breakdown: 'cutting up the stock',
  build: 'writing the cards',
  'dry-fit': 'running the cards dry',
  checks: 'checking',
} as const;

/** What the plan is at: being worked out, proven, or stopped. */
export function Working() {
  const working = useApp((s) => s.working);
  const failure = useApp((s) => s.failure);
  const dryFit = useApp((s) => s.plan?.dryFit);
  if (failure !== undefined)
    return (
      <span className="working wrong" role="alert">
        Our mistake: {failure}
      </span>
    );
  return (
    <span className="working" role="status">
      {working
        ? `${capital(ROOMS[working.room])} …`
        : dryFit?.fits
          ? 'Dry fit: as drawn'
          : dryFit && 'Dry fit: not as drawn'}
    </span>
  );
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
