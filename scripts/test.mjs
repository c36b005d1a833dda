// npm test: installs what is missing, then runs every check there is, and closes with one line: N passed, N failed.
// A check that fails stops none of the others. Tests count one each, and so does each check that isn't a test.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
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
    const file = join(folder, 'tests.json');
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
    const { code } = await run(['vitest/vitest.mjs', 'run', '--allowOnly=false', ...reporters], 'inherit');
    const tests = readCounts(file);
    if (tests.skipped > 0) console.log(`${tests.skipped} tests were skipped`);
    // A run that ended badly though no test failed (an error outside the tests, a crash) is a failure all the same,
    // and so is a run without tests.
    if (tests.failed === 0 && (code !== 0 || tests.passed === 0)) tests.failed++;
    count.passed += tests.passed;
    count.failed += tests.failed;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Counts single tests in vitest's report; a file that failed before or beside its tests counts as one failure. */
function readCounts(file) {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  let report;
  try {
    report = JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return { ...counts, failed: 1 };
  }
  for (const { status, assertionResults } of report.testResults) {
    const failed = assertionResults.filter((test) => test.status === 'failed').length;
    const passed = assertionResults.filter((test) => test.status === 'passed').length;
    counts.passed += passed;
    counts.failed += failed > 0 ? failed : status === 'failed' ? 1 : 0;
    counts.skipped += assertionResults.length - passed - failed;
  }
  return counts;
}

/** Runs a package's program with this Node; without standard input. */
function run([program, ...args], how) {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [join(ROOT_PATH, 'node_modules', program), ...args], {
      cwd: ROOT_PATH,
      stdio: ['ignore', how, how],
    });
    let output = '';
    child.stdout?.on('data', (data) => {
      output += data;
    });
    child.stderr?.on('data', (data) => {
      output += data;
    });
    child.on('error', (error) => resolve({ code: 1, output: error.message }));
    child.on('close', (code) => resolve({ code: code ?? 1, output }));
  });
}
