import { Working } from './working.tsx';

/** A place whose plan isn't there yet. */
export function PlanWaits({ title }: { title: string }) {
  return (
    <div className="waits">
      <h1>{title}</h1>
      <p>
        The plan is being worked out. <Working />
      </p>
    </div>
  );
}
