// npm run bench [WORD]: times every bench/*.bench.ts (or those with WORD in their name), each in a process of its own,
// and prints median and spread. Ends with 1 when a median is over its limit.
//
// A bench file's default export is a list of { name, prepare, limitMs? }: `prepare` does what is not to be timed and
// gives the function that is.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { install, ROOT, ROOT_PATH } from './install.mjs';

const FOLDER = new URL('bench/', ROOT);
/** Each bench is run at least so often and, if it is quick, for so long; the first runs only warm up. */
const LEAST_RUNS = 7;
const MOST_RUNS = 2000;
const ENOUGH_MS = 1500;

const [first, file] = process.argv.slice(2);
if (first === '--only') await timeFile(file);
else runAll(first ?? '');

function runAll(word) {
  install();
  const files = readdirSync(FOLDER)
    .filter((name) => name.endsWith('.bench.ts') && name.includes(word))
    .sort();
  if (files.length === 0) {
    console.error('no bench of that name');
    process.exitCode = 1;
  }
  for (const name of files) {
    const args = ['--import', '@oxc-node/core/register', fileURLToPath(import.meta.url), '--only', name];
    const { status } = spawnSync(process.execPath, args, {
      cwd: ROOT_PATH,
      stdio: ['ignore', 'inherit', 'inherit'],
    });
    if (status !== 0) process.exitCode = 1;
  }
}

async function timeFile(name) {
  const { default: benches } = await import(new URL(name, FOLDER).href);
  for (const bench of benches) {
    const times = await timesOf(await bench.prepare());
    const at = (part) => times[Math.min(times.length - 1, Math.floor(part * times.length))];
    const [low, median, high] = [at(0.1), at(0.5), at(0.9)].map((ms) => ms.toPrecision(3));
    const over = bench.limitMs !== undefined && at(0.5) > bench.limitMs;
    const limit = bench.limitMs === undefined ? '' : `, limit ${bench.limitMs} ms${over ? ': OVER' : ''}`;
    console.log(
      `${bench.name}: median ${median} ms (10 % under ${low}, 10 % over ${high}, ${times.length} runs${limit})`,
    );
    if (over) process.exitCode = 1;
  }
}

/** Times of single runs in ms, sorted. */
async function timesOf(run) {
  for (let i = 0; i < 3; i++) await run();
  const times = [];
  const started = performance.now();
  while (times.length < LEAST_RUNS || (performance.now() - started < ENOUGH_MS && times.length < MOST_RUNS)) {
    const before = performance.now();
    await run();
    times.push(performance.now() - before);
  }
  return times.sort((a, b) => a - b);
}
