import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** The checkout, with a slash at its end. */
export const ROOT = new URL('../', import.meta.url);
export const ROOT_PATH = fileURLToPath(ROOT);

/** The oldest Node that the packages run on. */
const OLDEST_NODE = 20;

/**
 * Installs the packages with `npm ci` when they are missing or not the ones of the lock file. npm's output goes to
 * standard error, so that standard output stays with the caller. Throws when it can't be done.
 */
export function install() {
  if (Number.parseInt(process.versions.node, 10) < OLDEST_NODE)
    throw new Error(`Node ${OLDEST_NODE} or later is needed; this is ${process.versions.node}.`);
  if (isInstalled()) return;
  console.error('Installing packages (npm ci) ...');
  const args = ['ci', '--include=dev', '--no-fund', '--no-audit', '--loglevel=error'];
  const npm = process.env.npm_execpath;
  const stdio = ['ignore', 2, 2];
  const done = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...args], { cwd: ROOT_PATH, stdio })
    : spawnSync('npm', args, { cwd: ROOT_PATH, stdio, shell: process.platform === 'win32' });
  if (done.error) throw done.error;
  if (done.status !== 0) throw new Error(`npm ci failed (${done.status ?? done.signal}).`);
}

/** Whether what npm wrote down after its last install agrees with the lock file. */
function isInstalled() {
  const noted = new URL('node_modules/.package-lock.json', ROOT);
  return existsSync(noted) && agrees(packagesOf(noted), packagesOf(new URL('package-lock.json', ROOT)));
}

function packagesOf(file) {
  return JSON.parse(readFileSync(file, 'utf8')).packages;
}

/**
 * Whether the packages that are there (by their paths) are the ones that are wanted. Optional ones may be missing:
 * they are those of other machines, and npm leaves them out. The content is compared and not the files' times, which
 * a checkout or a restored copy changes.
 */
export function agrees(there, wanted) {
  for (const [path, { version, integrity, optional }] of Object.entries(wanted)) {
    const found = there[path];
    if (path === '' || (found === undefined && optional)) continue;
    if (found?.version !== version || found.integrity !== integrity) return false;
  }
  return Object.keys(there).every((path) => wanted[path] !== undefined);
}
