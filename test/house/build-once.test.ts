import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { buildOnce } from '../../scripts/build-once.mjs';

const roots: string[] = [];
afterEach(() => {
  for (const root of roots.splice(0)) rmSync(root, { recursive: true, force: true });
});

/** A checkout of two source files and a test, and how often it was built. */
function checkout() {
  const root = `${mkdtempSync(join(tmpdir(), 'casewright-build-'))}/`;
  roots.push(root);
  mkdirSync(join(root, 'src/saw'), { recursive: true });
  const write = (path: string, words: string) => writeFileSync(join(root, path), words);
  write('src/saw/blade.ts', 'thin');
  write('src/bench.ts', 'flat');
  write('src/bench.test.ts', 'is it flat?');
  write('lock.json', '1');
  let made = 0;
  const built = (make?: (folder: string) => Promise<void>) =>
    buildOnce({
      root,
      name: 'tools',
      takes: (path) => path !== 'src/bench.ts',
      besides: ['lock.json'],
      make:
        make ??
        (async (folder) => {
          made++;
          writeFileSync(join(folder, 'main.js'), `${made}`);
        }),
    });
  return { root, write, built, made: () => made };
}

test('what is built from the sources is built again only when one of them has changed', async () => {
  const { write, built, made } = checkout();
  const first = await built();
  expect(existsSync(join(first, 'main.js'))).toBe(true);
  expect(await built()).toBe(first);
  write('src/bench.ts', 'not of it');
  write('src/bench.test.ts', 'nor this');
  expect(await built()).toBe(first);
  expect(made()).toBe(1);
  write('src/saw/blade.ts', 'thick');
  const second = await built();
  write('lock.json', '2');
  const third = await built();
  expect(new Set([first, second, third]).size).toBe(3);
  expect(made()).toBe(3);
});

test('a build that fails leaves nothing behind, and the next one tries again', async () => {
  const { root, built } = checkout();
  const fails = async (folder: string) => {
    writeFileSync(join(folder, 'main.js'), 'half of it');
    throw new Error('the blade broke');
  };
  await expect(built(fails)).rejects.toThrow('the blade broke');
  expect(readdirSync(join(root, 'dist'))).toEqual([]);
  expect(existsSync(await built())).toBe(true);
});

test('two that build at once come to the same folder', async () => {
  const { root, built } = checkout();
  const [a, b] = await Promise.all([built(), built()]);
  expect(a).toBe(b);
  expect(readdirSync(join(root, 'dist')).length).toBe(1);
});

test('old builds are cleared away, the newest four are kept', async () => {
  const { root, write, built } = checkout();
  const folders: string[] = [];
  for (let i = 0; i < 6; i++) {
    write('src/saw/blade.ts', `blade ${i}`);
    const folder = await built();
    utimesSync(folder, 1000 + i, 1000 + i);
    folders.push(folder);
  }
  const left = readdirSync(join(root, 'dist')).map((name) => join(root, 'dist', name));
  expect(left.sort()).toEqual(folders.slice(2).sort());
});
