import { expect, test } from 'vitest';
import { built, demoDocument } from '../../test/build/built.ts';
import { fromMm } from '../measure/index.ts';
import { Bench } from './bench.ts';
import { isTooSmall } from './too-small.ts';

const { job, drawn } = built(demoDocument());
const bench = new Bench(job, drawn);
const mm = (n: number) => drawn.ledger.document(`test/${n}`, fromMm(n), `${n} mm`);
const isSmall = (saw: 'circular-saw' | 'mitre-saw', length: number, width: number, at: number) =>
  isTooSmall(bench, saw, { of: { length: mm(length), width: mm(width) }, across: 'length', at: mm(at) });

test('on a mitre saw the kerf is no part of what can be held', () => {
  // 290 mm cut at 140: the blade leaves less than 150 on either side.
  expect(isSmall('mitre-saw', 290, 40, 140)).toBe(true);
  expect(isSmall('mitre-saw', 294, 40, 140)).toBe(false);
  expect(isSmall('mitre-saw', 190, 40, 150)).toBe(false);
});

test('under a portable saw the longer side counts', () => {
  expect(isSmall('circular-saw', 199, 180, 90)).toBe(true);
  expect(isSmall('circular-saw', 120, 200, 60)).toBe(false);
});
