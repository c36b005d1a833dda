import type { SnagKind, SnagRoom } from '../../src/snag/index.ts';

const ROOMS: Record<SnagRoom, string> = {
  job: 'Reading and editing a job',
  'setting-out': 'Setting out',
  breakdown: 'Reading a cut problem',
  build: 'Building',
  'dry-fit': 'Dry fit',
  checks: 'Checks',
  app: 'The app',
};

/** The page about snags: every code, how bad, what it means. */
export function snagPage(kinds: readonly SnagKind[]): string {
  const rooms = Object.keys(ROOMS) as SnagRoom[];
  const tables = rooms.map((room) => {
    const rows = kinds
      .filter((k) => k.room === room)
      .map((k) => `| \`${k.code}\` | ${k.levels.join(' or ')} | ${k.means} |`);
    return [`## ${ROOMS[room]}`, '', '| code | level | meaning |', '| --- | --- | --- |', ...rows, ''].join(
      '\n',
    );
  });
  return [
    '# Snags',
    '',
    'A snag is something to put right. `stop`: don’t cut yet. `mind`: look at it first. `note`: worth knowing.',
    'Each names its place, says what is wrong in a sentence, and, where they apply, gives the figures, the rule with its',
    'source, and cures; a cure with edits can be tried by a program.',
    '',
    'This page is written from `src/snag/catalogue.ts` (`npx vitest run test/house/snag-codes -u`).',
    '',
    ...tables,
  ].join('\n');
}
