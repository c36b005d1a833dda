import { applyEdit, editOfCure, type JobDocument } from '../job/index.ts';
import { type SetOut, setOut } from '../setting-out/index.ts';
import type { Cure, CureEdit, Snag } from '../snag/index.ts';

/** No more cures are tried for one plan; those beyond stay as they are. */
const MOST = 40;

/**
 * The snags of a piece that was set out, with cures that were tried. One whose edits leave the snag where it is, or bring another
 * that stops the work, is not offered beside others; alone, it stays as a word of advice.
 */
export function curesThatHelp(job: JobDocument, drawn: SetOut): readonly Snag[] {
  const stops = drawn.snags.filter((s) => s.level === 'stop');
  const before = new Set(stops.map((s) => s.code));
  const tried = new Map<string, SetOut['snags'] | undefined>();
  const after = (edits: readonly CureEdit[]) => {
    const key = JSON.stringify(edits);
    if (!tried.has(key)) tried.set(key, setOutAfter(job, edits));
    return tried.get(key);
  };
  let left = MOST;
  return drawn.snags.map((snag) => {
    const some = snag.cures.filter((c) => c.edits !== undefined);
    if (snag.level !== 'stop' || some.length === 0 || some.length > left) return snag;
    left -= some.length;
    const helping = new Set<Cure>();
    for (const cure of some) {
      const then = after(cure.edits!)?.filter((s) => s.level === 'stop');
      if (then?.every((s) => before.has(s.code) && !isSame(s, snag))) helping.add(cure);
    }
    if (helping.size === some.length) return snag;
    const kept = snag.cures.filter((c) => c.edits === undefined || helping.has(c));
    return { ...snag, cures: kept.length > 0 ? kept : snag.cures.map(({ says }) => ({ says })) };
  });
}

function isSame(a: Snag, b: Snag): boolean {
  return a.code === b.code && a.where.path === b.where.path;
}

/** What is told once a cure’s edits are made; undefined where these are refused. */
function setOutAfter(job: JobDocument, edits: readonly CureEdit[]): SetOut['snags'] | undefined {
  const edited = applyEdit(job, editOfCure(edits));
  return edited.ok ? setOut(edited.job).snags : undefined;
}
