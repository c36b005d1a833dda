import { describe, expect, test } from 'vitest';
import { SNAG_KINDS } from '../../src/snag/index.ts';
import { ourFiles } from './files.ts';
import { snagCodes } from './snag-codes.ts';
import { snagPage } from './snag-pages.ts';

const families = new Set(SNAG_KINDS.map((k) => k.code.split('.')[0]!));
// The tables' rows have ids of the same make.
const LEFT_OUT = /\.test(?:-aid)?\.tsx?$|^src\/(?:materials|measure|snag)\//;
const sources = ourFiles().filter(({ path }) => /^src\/.*\.tsx?$/.test(path) && !LEFT_OUT.test(path));
const made = new Map(sources.map((file) => [file.path, snagCodes(file, families)]));

describe('the catalogue of snags', () => {
  const listed = SNAG_KINDS.map((k) => k.code);

  test('has each code once, with a sentence', () => {
    expect(new Set(listed).size).toBe(listed.length);
    for (const k of SNAG_KINDS) expect(k.means, k.code).toMatch(/^[A-Z].*\.$/);
  });

  test('has every code that a source makes', () => {
    const missing = [...made].flatMap(([path, codes]) =>
      codes.filter((c) => !listed.includes(c)).map((c) => `${path}: ${c}`),
    );
    expect(missing).toEqual([]);
  });

  test('has no code that nobody makes, and names the room that does', () => {
    const unused = SNAG_KINDS.filter(
      (k) => ![...made].some(([path, codes]) => path.startsWith(`src/${k.room}/`) && codes.includes(k.code)),
    );
    expect(unused.map((k) => `${k.room}: ${k.code}`)).toEqual([]);
  });

  test('is the page that can be read', async () => {
    await expect(snagPage(SNAG_KINDS)).toMatchFileSnapshot('../../docs/snags.md');
  });
});

test('codes are found where snags are made', () => {
  const text = `
    snags.push({ code: 'sag.seen' });
    draft.stop('base.no-room', record);
    const code = bad ? 'no.yes' : 'no.no';
    const list = ['sag.listed', 'other.listed'];
    add('path', 'not.first');
  `;
  expect(snagCodes({ path: 'src/checks/x.ts', text }, new Set(['sag']))).toEqual([
    'base.no-room',
    'no.no',
    'no.yes',
    'sag.listed',
    'sag.seen',
  ]);
  const type = `interface Fault { readonly code: 'in-the-way' | 'no-hole'; readonly on: 'not-this' }`;
  expect(snagCodes({ path: 'src/dry-fit/x.ts', text: type }, new Set())).toEqual([
    'dry-fit.in-the-way',
    'dry-fit.no-hole',
  ]);
});
