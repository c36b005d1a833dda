import fc from 'fast-check';
import { expect, test } from 'vitest';
import { built, demoDocument } from '../../../test/build/built.ts';
import { fromMm } from '../../measure/index.ts';
import { Bench } from '../bench.ts';
import { squareLimit } from './square-limit.ts';

const { job, drawn } = built(demoDocument());
const typed = (bench: Bench, what: string, mm: number) =>
  bench.ledger.document(`test/${what}`, fromMm(mm), `${mm} mm`);

test('a rectangle that leans by a millimetre: 600 by 800 has diagonals of 1000, which then differ by 1.2', () => {
  // Geometry: the right triangle with sides 3, 4 and 5.
  const bench = new Bench(job, drawn);
  const found = squareLimit(bench, typed(bench, 'w', 600), typed(bench, 'h', 800), []);
  expect(bench.ledger.ticks(found.difference)).toBe(fromMm(1));
  expect(found.fit).toBeUndefined();
});

test('the limit is never more than the lean of a millimetre truly gives, and at most a step of the rule and a tenth less', () => {
  fc.assert(
    fc.property(fc.integer({ min: 300, max: 2400 }), fc.integer({ min: 300, max: 2400 }), (w, h) => {
      const bench = new Bench(job, drawn);
      const found = squareLimit(bench, typed(bench, `w${w}`, w), typed(bench, `h${h}`, h), []);
      const truly = Math.hypot(w + 1, h) - Math.hypot(w - 1, h);
      const limit = bench.ledger.ticks(found.difference) / 3200;
      const step = bench.ledger.ticks(bench.finest('marking')) / 3200;
      expect(limit).toBeLessThanOrEqual(Math.max(truly + 0.001, step));
      expect(limit).toBeGreaterThan(truly - step - 0.101);
    }),
  );
});

test('a fit with less to spare than that sets the limit and is named', () => {
  const { ledger, parts } = drawn;
  const part = parts[0]!;
  const size = (what: string, mm: number) => ledger.document(`test/${what}`, fromMm(mm), `${mm} mm`);
  const loop = [
    {
      name: 'its width',
      length: part.width,
      sign: 1,
      printed: part.width,
      made: { by: 'measured' },
      part: part.id,
    },
  ] as const;
  const door = { id: 'door/width', kind: 'door', name: 'the door in its opening', loop } as const;
  const gap = size('gap', 2);
  const fits = [{ ...door, gap, printed: gap, least: size('least', 1.5) }];
  const bench = new Bench(job, { ...drawn, fits });
  const [w, h] = [size('width', 600), size('height', 800)];
  const found = squareLimit(bench, w, h, parts);
  expect(found.fit).toBe('the door in its opening');
  // Half a millimetre of lean gives 0.6 of difference; the rule reads half millimetres.
  expect(ledger.ticks(found.difference)).toBe(fromMm(0.5));
  expect(squareLimit(bench, w, h, parts.slice(1)).fit).toBeUndefined();
  // How a door sits in the width of its groove doesn’t change when the case leans to one side.
  const deep = new Bench(job, { ...drawn, fits: [{ ...fits[0]!, deep: true as const }] });
  expect(squareLimit(deep, w, h, parts).fit).toBeUndefined();
});

test('the boxes of drawers have their limit too, by the play on their runners, and which way to pull is told', () => {
  const demo = built(demoDocument());
  const cured = demo.build.operations.filter((o) => /^Check the box of N\d for square/.test(o.title));
  expect(cured.length).toBe(3);
  for (const { lines, lengths } of cured) {
    expect(lines[0]).toMatch(
      /^Measure both diagonals of the box of N\d .* at most; more would use up all the play of drawer \d of tools on its runners, across\.$/,
    );
    expect(lines[1]).toContain('lay a clamp along the longer one and draw it shorter');
    // Boxes about 320 by 295 mm with 0.7 mm to spare: 2 x 320 x 0.7 / 435 is about 1 mm.
    expect(demo.drawn.ledger.ticks(lengths[0]!)).toBe(fromMm(1));
  }
});
