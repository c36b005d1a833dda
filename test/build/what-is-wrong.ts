import type { document } from '../generate/document.ts';
import { equipped } from '../generate/equipped.ts';
import { built } from './built.ts';
import { dryFaults } from './dry-faults.ts';

/** What a design says that stops it, and else what its dry fit finds wrong. */
export async function whatIsWrong(of: ReturnType<typeof document>): Promise<readonly string[]> {
  const made = built(equipped(of));
  const stops = made.drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code);
  return stops.length > 0 ? stops : (await dryFaults(made)).map((f) => f.sentence);
}
