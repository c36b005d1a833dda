// npm test: installs what is missing, then runs every check there is, and closes with one line: N passed, N failed.
// A check that fails stops none of the others. Tests count one each, and so does each check that isn't a test.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { install, ROOT_PATH } from './install.mjs';

const CHECKS = [
  {
    name: 'types of the core, without DOM and Node',
    run: ['typescript/bin/tsc', '-p', 'tsconfig.core.json'],
  },
  { name: 'types of everything', run: ['typescript/bin/tsc', '-p', 'tsconfig.json'] },
  {
    name: 'lint and format',
    run: ['@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '--colors=off'],
  },
  {
    name: 'unused files, exports and packages',
    run: ['knip/bin/knip.js', '--no-progress', '--no-config-hints'],
  },
];

/** A test file that takes longer than this is taken to hang. */
const QUIET_MS = 5 * 60_000;
const GROUPS = process.platform !== 'win32';

const count = { passed: 0, failed: 0 };
try {
  install();
  await runChecks();
  await runTests();
} catch (error) {
  count.failed++;
  console.error(error.message);
}
if (count.failed > 0) process.exitCode = 1;
console.log(`${count.passed} passed, ${count.failed} failed`);

/** The checks that aren't tests, two at a time; what one has to say is printed when it has failed. */
async function runChecks() {
  const waiting = [...CHECKS];
  const worker = async () => {
    for (let check = waiting.shift(); check; check = waiting.shift()) {
      const started = performance.now();
      const { code, output } = await run(check.run, 'pipe');
      const ok = code === 0;
      count[ok ? 'passed' : 'failed']++;
      const seconds = ((performance.now() - started) / 1000).toFixed(1);
      if (!ok) console.log(output.trimEnd());
      console.log(`${ok ? 'ok  ' : 'FAIL'} ${check.name} (${seconds} s)`);
    }
  };
  await Promise.all([worker(), worker()]);
}

/** Unit, property, house, command line and browser tests. */
async function runTests() {
  const folder = mkdtempSync(join(tmpdir(), 'casewright-test-'));
  try {
    const file = join(folder, 'progress');
    writeFileSync(file, '');
    const reporters = ['--reporter=default', '--reporter=./scripts/progress-reporter.mjs'];
    const args = ['vitest/vitest.mjs', 'run', '--allowOnly=false', ...reporters];
    const { code, stopped } = await run(args, 'inherit', { TEST_PROGRESS: file, quietMs: QUIET_MS });
    const tests = readProgress(file);
    if (stopped) console.log(`no test file ended for ${QUIET_MS / 60_000} minutes: stopped the tests`);
    for (const name of tests.hanging) console.log(`FAIL ${name} did not end`);
    if (tests.skipped > 0) console.log(`${tests.skipped} tests were skipped`);
    tests.failed += tests.hanging.length;
    // A run that ended badly though no test failed (an error outside the tests, a crash) is a failure all the same,
    // and so is a run without tests.
    if (tests.failed === 0 && (code !== 0 || tests.passed === 0)) tests.failed++;
    count.passed += tests.passed;
    count.failed += tests.failed;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Adds up what the reporter noted: single tests, and the files that started and never ended. */
function readProgress(file) {
  const tests = { passed: 0, failed: 0, skipped: 0, hanging: [] };
  const hanging = new Set();
  for (const line of readFileSync(file, 'utf8').split('\n').filter(Boolean)) {
    const { started, ended, passed, failed, skipped } = JSON.parse(line);
    if (started) hanging.add(started);
    if (!ended) continue;
    hanging.delete(ended);
    tests.passed += passed;
    tests.failed += failed;
    tests.skipped += skipped;
  }
  return { ...tests, hanging: [...hanging].sort() };
}

/**
 * Runs a package's program with this Node; without standard input. With a progress file, ends it and all it started
 * once nothing has been noted for `quietMs`: a test that runs round in circles can't be stopped from within.
 */
function run([program, ...args], how, { quietMs, ...env } = {}) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(ROOT_PATH, 'node_modules', program), ...args], {
      cwd: ROOT_PATH,
      stdio: ['ignore', how, how],
      env: { ...process.env, ...env },
      // A group of its own, so that its workers can be ended with it.
      detached: GROUPS,
    });
    const end = () => (GROUPS ? process.kill(-child.pid, 'SIGKILL') : child.kill());
    const interrupted = () => {
      end();
      process.exit(130);
    };
    process.on('SIGINT', interrupted).on('SIGTERM', interrupted);
    let stopped = false;
    const watch = setInterval(() => {
      if (quietMs === undefined || Date.now() - statSync(env.TEST_PROGRESS).mtimeMs < quietMs) return;
      stopped = true;
      end();
    }, 1000);
    let output = '';
    child.stdout?.on('data', (data) => {
      output += data;
    });
    child.stderr?.on('data', (data) => {
      output += data;
    });
    const done = (result) => {
      clearInterval(watch);
      process.off('SIGINT', interrupted).off('SIGTERM', interrupted);
      resolve({ stopped, ...result });
    };
    child.on('error', (error) => done({ code: 1, output: error.message }));
    child.on('close', (code) => done({ code: code ?? 1, output }));
  });
}
