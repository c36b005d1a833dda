// npm run soak [RUNS]: draws 50,000 random designs (or RUNS) instead of the 2,000 of npm test, judges each of them, and
// prints how often each feature of the design language occurred; then plans 500 of them to the end, and makes every
// mistake there is in the plans of all examples and of 100 designs. SEED=... draws others.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { install, ROOT_PATH } from './install.mjs';

install();
const runs = process.argv[2] ?? '50000';
const vitest = join(ROOT_PATH, 'node_modules', 'vitest', 'vitest.mjs');
const parts = [
  ['test/generate/designs-', { RUNS: runs }],
  ['test/generated-plans', { RUNS: String(Math.min(500, Number(runs))) }],
  ['test/dry-fit-mutants', { EVERY: '1', PLANS: String(Math.min(100, Number(runs))) }],
];
for (const [files, env] of parts) {
  const { status } = spawnSync(process.execPath, [vitest, 'run', '--project', 'desk', files], {
    cwd: ROOT_PATH,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  });
  if (status !== 0) process.exitCode = status ?? 1;
}
