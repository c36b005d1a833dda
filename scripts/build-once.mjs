import { createHash } from 'node:crypto';
import {
  accessSync,
  constants,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { join, sep } from 'node:path';

/** How many builds of one name are kept: another process may still be using an older one. */
const KEPT = 4;

/**
 * The folder of what is built from the sources, named by their content; built on first need by `make`, which is given
 * an empty folder. Folders stand in `dist`, and old ones are cleared away.
 *
 * @param {string} root the checkout
 * @param {string} name of what is built
 * @param {(path: string) => boolean} takes whether a file under src (by its path from the root) goes into it
 * @param {readonly string[]} besides further files that it is made of, by their paths from the root
 * @param {(folder: string) => Promise<void>} make
 * @returns {Promise<string>}
 */
export async function buildOnce({ root, name, takes, besides, make }) {
  const builds = join(root, 'dist');
  const folder = join(builds, `${name}-${contentOf(root, takes, besides)}`);
  if (existsSync(folder)) return folder;
  if (!existsSync(builds)) {
    // Asked first: where there is no leave, mkdir may say that the folder above is missing.
    accessSync(root, constants.W_OK);
    mkdirSync(builds, { recursive: true });
  }
  // Built beside its place and renamed: whoever looks meanwhile never sees half of it.
  const making = mkdtempSync(join(builds, 'making-'));
  try {
    await make(making);
    renameSync(making, folder);
    clearOld(builds, `${name}-`);
  } catch (error) {
    rmSync(making, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

function clearOld(builds, start) {
  const old = readdirSync(builds)
    .filter((name) => name.startsWith(start))
    .map((name) => ({ path: join(builds, name), time: statSync(join(builds, name)).mtimeMs }))
    .sort((a, b) => b.time - a.time);
  for (const { path } of old.slice(KEPT)) rmSync(path, { recursive: true, force: true });
}

function contentOf(root, takes, besides) {
  const hash = createHash('sha256');
  const sources = readdirSync(join(root, 'src'), { recursive: true, withFileTypes: true })
    .filter((f) => f.isFile() && !/\.test\.tsx?$/.test(f.name))
    .map((f) => join(f.parentPath, f.name).slice(root.length).replaceAll(sep, '/'))
    .filter(takes)
    .sort();
  for (const path of [...sources, ...besides]) {
    hash.update(path).update('\0');
    hash.update(readFileSync(join(root, path))).update('\0');
  }
  return hash.digest('hex').slice(0, 16);
}
