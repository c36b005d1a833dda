import { describe, expect, test } from 'vitest';
import { FACES, isRoom, roomOf } from './arrows.ts';
import { notContents, outsideWords } from './core-words.ts';
import { ourFiles, type TextFile } from './files.ts';

const files = ourFiles();
const sources = files.filter(({ path }) => /\.(?:tsx?|mjs)$/.test(path));
const core = sources.filter(
  ({ path }) =>
    path.startsWith('src/') && !path.endsWith('.test.ts') && !FACES.includes(roomOf(path) as never),
);

/** Places of a machine: a person's folders, a temporary folder, a drive. Written so as not to find itself. */
const MACHINE = [/(?<![\w.$}:/])\/(?:home|Users|root|tmp|work|mnt|workspace)\/[\w.-]/, /\b[A-Z]:\\\w/];
const REGISTRY = [
  /\bregistry\.[a-z]+\.[a-z]+/i,
  /\bnpm(?:mirror|config_registry)\b/i,
  /"resolved": "https?:/,
];
const UNDONE = new RegExp(
  `\\b(?:${['TO', 'FIX', 'XX'].map((w, i) => w + ['DO', 'ME', 'X'][i]).join('|')})\\b`,
);
const NAMES = /(?:^|\/)(?:utils?|helpers?|misc|common|stuff)(?:[./-]|$)/i;
/** Lines of a file; more than this wants a reason ("Long because ...") within its first lines. */
const LONG = 500;
const FIRST_LINES = 10;

function linesWith(patterns: readonly RegExp[], { path, text }: TextFile): string[] {
  return text
    .split('\n')
    .flatMap((line, i) =>
      patterns.some((p) => p.test(line)) ? [`${path}:${i + 1} ${line.trim().slice(0, 120)}`] : [],
    );
}

function isTooLong({ text }: TextFile): boolean {
  const lines = text.split('\n');
  return lines.length - 1 > LONG && !/long because/i.test(lines.slice(0, FIRST_LINES).join('\n'));
}

describe('what we keep', () => {
  test('all of it was looked at', () => {
    for (const folder of ['src/', 'test/', 'scripts/', 'bin/', 'bench/'])
      expect(files.filter(({ path }) => path.startsWith(folder)).length, folder).toBeGreaterThan(0);
    expect(files.map(({ path }) => path)).toEqual(
      expect.arrayContaining([
        'package.json',
        'package-lock.json',
        '.npmrc',
        '.ci/run',
        'test/house/words.test.ts',
      ]),
    );
    expect(core.length).toBeGreaterThan(20);
  });

  test('no place of a machine', () => {
    expect(files.flatMap((file) => linesWith(MACHINE, file))).toEqual([]);
  });

  test('no address of a package registry', () => {
    expect(files.flatMap((file) => linesWith(REGISTRY, file))).toEqual([]);
  });

  test('nothing marked as undone', () => {
    expect(files.flatMap((file) => linesWith([UNDONE], file))).toEqual([]);
  });

  test('no file or folder named after nothing in particular', () => {
    expect(files.map(({ path }) => path).filter((path) => NAMES.test(path))).toEqual([]);
  });

  test('a file of more than 500 lines says why', () => {
    expect(sources.filter(isTooLong).map(({ path }) => path)).toEqual([]);
  });
});

describe('the core', () => {
  test('knows no clock, chance, locale, console, process, page or network, and exports by name', () => {
    expect(core.flatMap(({ path, text }) => outsideWords(path, text))).toEqual([]);
  });

  test('every room has an index.ts, and it is a table of contents', () => {
    const rooms = [...new Set(core.map(({ path }) => roomOf(path)))].filter(isRoom);
    const indexes = core.filter(({ path }) => /^src\/[^/]+\/index\.ts$/.test(path));
    expect(indexes.map(({ path }) => roomOf(path))).toEqual(rooms.sort());
    expect(indexes.flatMap(({ path, text }) => notContents(path, text))).toEqual([]);
  });
});

describe('the check itself', () => {
  const at = (...parts: string[]) => ({ path: 'a.ts', text: parts.join('') });

  test('finds places of a machine, not addresses or divisions', () => {
    for (const [start, end] of [
      ['"/', 'home/ada/x"'],
      ['(/', 'tmp/x)'],
      ['C:', '\\Users'],
    ] as const)
      expect(linesWith(MACHINE, at(start, end))).toHaveLength(1);
    for (const fine of ['https://example.org/home/x', './work/x', 'a / work / 2', 'test/tmp/x'])
      expect(linesWith(MACHINE, at(fine))).toEqual([]);
  });

  test('finds registries and marks of the undone', () => {
    expect(linesWith(REGISTRY, at('https://', 'registry', '.npmjs.org/x'))).toHaveLength(1);
    expect(linesWith([UNDONE], at('// TO', 'DO later'))).toHaveLength(1);
    expect(linesWith([UNDONE], at('a todo list'))).toEqual([]);
  });

  test('finds names after nothing, not names of things', () => {
    for (const name of ['src/job/utils.ts', 'src/helpers/x.ts', 'src/misc/a.ts', 'test/common.ts'])
      expect(NAMES.test(name), name).toBe(true);
    for (const name of ['src/job/uncommon.ts', 'src/build/common-cause.ts'])
      expect(NAMES.test(name), name).toBe(name.includes('/common'));
  });

  test('a long file passes with its reason', () => {
    const lines = Array(LONG + 1).fill('x\n');
    expect(isTooLong(at(...lines))).toBe(true);
    expect(isTooLong(at(...lines.slice(1)))).toBe(false);
    expect(isTooLong(at('/* Long because it is a table. */\n', ...lines))).toBe(false);
  });

  test.each([
    ['const t = Date.now();', 'Date'],
    ['export const r = () => Math.random();', 'Math.random'],
    ['const s = (1).toLocaleString();', 'toLocaleString'],
    ["['a'].sort((a, b) => a.localeCompare(b));", 'localeCompare'],
    ['console.log(1);', 'console'],
    ['const d = document.body;', 'document'],
    ['const o = { process };', 'process'],
    ['export default 1;', 'export default'],
  ])('finds %s', (text, word) => {
    expect(outsideWords('a.ts', text)).toEqual([`a.ts:1 ${word}`]);
  });

  test.each([
    ['// the Date of the process\nconst a = "console";'],
    ['const a = job.document.process;'],
    ['const a = { document: 1 };'],
    ['function f(document: number) { return document + 1; }'],
    ['const f = (document: number) => ({ document });'],
    ["import { process } from './glue.ts';\nprocess();"],
    ['interface A { document(): void }'],
  ])('lets pass %s', (text) => {
    expect(outsideWords('a.ts', text)).toEqual([]);
  });

  test('tells contents from code', () => {
    expect(notContents('index.ts', "export { a } from './a.ts';\nexport type { B } from './b.ts';")).toEqual(
      [],
    );
    for (const text of ["export * from './a.ts';", 'export const a = 1;', "import './a.ts';"])
      expect(notContents('index.ts', text)).toEqual([`index.ts: ${text}`]);
  });
});
