// npm run soak [RUNS]: draws 50,000 random designs (or RUNS) instead of the 2,000 of npm test, judges each of them, and
// prints how often each feature of the design language occurred. SEED=... draws others.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { install, ROOT_PATH } from './install.mjs';

install();
const runs = process.argv[2] ?? '50000';
const vitest = join(ROOT_PATH, 'node_modules', 'vitest', 'vitest.mjs');
const { status } = spawnSync(
  process.execPath,
  [vitest, 'run', '--project', 'desk', 'test/generate/designs-'],
  {
    cwd: ROOT_PATH,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, RUNS: runs },
  },
);
process.exitCode = status ?? 1;
