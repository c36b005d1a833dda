import { expect, test } from 'vitest';
// @ts-expect-error: a script without types
import { agrees as untyped } from '../../scripts/install.mjs';

interface Entry {
  readonly version: string;
  readonly integrity?: string;
  readonly optional?: boolean;
}
const agrees = untyped as (there: Record<string, Entry>, wanted: Record<string, Entry>) => boolean;

const root = { '': { version: '0.1.0' } };
const saw = { 'node_modules/saw': { version: '1.0.0', integrity: 'sha512-a' } };
const plane = { 'node_modules/plane': { version: '2.0.0', integrity: 'sha512-b' } };
const foreign = { 'node_modules/saw-for-arm': { version: '1.0.0', integrity: 'sha512-c', optional: true } };

test('what the lock file names is there', () => {
  expect(agrees({ ...saw, ...plane }, { ...root, ...saw, ...plane })).toBe(true);
});

test('a package of another machine may be missing, and may be there', () => {
  expect(agrees(saw, { ...root, ...saw, ...foreign })).toBe(true);
  expect(agrees({ ...saw, ...foreign }, { ...root, ...saw, ...foreign })).toBe(true);
});

test('a missing, a different and a left-over package each ask for an install', () => {
  expect(agrees(saw, { ...root, ...saw, ...plane })).toBe(false);
  const newer = { 'node_modules/saw': { version: '1.1.0', integrity: 'sha512-d' } };
  expect(agrees(newer, { ...root, ...saw })).toBe(false);
  const forged = { 'node_modules/saw': { version: '1.0.0', integrity: 'sha512-e' } };
  expect(agrees(forged, { ...root, ...saw })).toBe(false);
  expect(agrees({ ...saw, ...plane }, { ...root, ...saw })).toBe(false);
});
