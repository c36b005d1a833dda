import type { Level } from '../../snag/index.ts';
import { useApp, useDesk } from '../state/use-desk.ts';
import { LEVELS, useSnags } from './use-snags.ts';

/** How many snags there are of each level; opens them. */
export function SnagCount() {
  const desk = useDesk();
  const open = useApp((s) => s.snagsOpen);
  const snags = useSnags();
  const count = (level: Level) => snags.filter((s) => s.level === level).length;
  const words = LEVELS.filter(([level]) => count(level) > 0).map(
    ([level, one, more]) => [level, `${count(level)} ${count(level) === 1 ? one : more}`] as const,
  );
  return (
    <button
      type="button"
      className="snag-count"
      aria-expanded={open}
      onClick={() => desk.store.set({ snagsOpen: !open, asked: undefined })}
    >
      {words.length === 0 ? (
        <span className="level">no snags</span>
      ) : (
        words.map(([level, w]) => (
          <span key={level} className={`level ${level}`}>
            {w}
          </span>
        ))
      )}
    </button>
  );
}
