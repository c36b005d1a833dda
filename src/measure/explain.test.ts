import fc from 'fast-check';
import { expect, test } from 'vitest';
import { explain } from './explain.ts';
import { Ledger, type Traced } from './ledger.ts';
import type { LengthFormat } from './print.ts';
import { fromMm, ticks } from './ticks.ts';

const mm: LengthFormat = { unit: 'mm', step: 0.1 };
const inches: LengthFormat = { unit: 'in', denominator: 32 };

function bookcase() {
  const l = new Ledger();
  const width = l.document('case/width', fromMm(1580), '1580');
  const side = l.measured('lot/birch/thickness', fromMm(17.6));
  const clear = l.less('clear width between the sides', width, side, side);
  const shared = l.less('what four bays share', clear, l.times('three dividers', side, 3));
  const bay = l.share('width of bay 2', shared, [1, 1, 1, 1], 1);
  const gap = l.row({
    id: 'loose-shelf',
    value: fromMm(1),
    says: 'a loose shelf is 1 mm short at each end',
    source: 'common practice',
  });
  const step = l.document('shop/rail/step', fromMm(0.5), '0.5 mm');
  const shelf = l.round('shelf of bay 2', l.less('shelf before rounding', bay, gap, gap), step, 'down');
  const half = {
    id: 'rabbet',
    of: [1, 2] as const,
    says: 'half the thickness deep',
    source: 'common practice',
  };
  const rabbet = l.ratio('depth of the rabbet', side, half);
  return { l, width, side, shelf, bay, gap, rabbet };
}

test('a shelf is explained down to what was typed, what was measured and the rules', () => {
  const { l, shelf } = bookcase();
  expect(explain(l, shelf, mm)).toEqual([
    '371 mm  shelf of bay 2',
    '  = 371 mm  shelf before rounding',
    '    = 373 mm  width of bay 2',
    '      = share 2 out of 4 equal shares of 1492 mm  what four bays share',
    '        = 1544.8 mm  clear width between the sides',
    '          = 1580 mm  typed as 1580 at case/width',
    '          - 2 x 17.6 mm  measured: lot/birch/thickness',
    '        - 3 x 17.6 mm  three dividers; measured: lot/birch/thickness (as above)',
    '    - 2 x 1 mm  rule: a loose shelf is 1 mm short at each end (common practice)',
    '  down to steps of 0.5 mm  typed as 0.5 mm at shop/rail/step',
  ]);
});

test('a proportion names its rule, and a print that is not the value says about', () => {
  const { l, rabbet } = bookcase();
  expect(explain(l, rabbet, inches)).toEqual([
    'about 11/32"  depth of the rabbet',
    '  = 1/2 of about 11/16"  measured: lot/birch/thickness',
    '  rule: half the thickness deep (common practice)',
  ]);
});

test('sums, counts, greatest, least and unequal shares read plainly', () => {
  const { l, side, gap, width } = bookcase();
  expect(explain(l, l.sum('three layers', side, gap, side), mm)).toEqual([
    '36.2 mm  three layers',
    '  = 2 x 17.6 mm  measured: lot/birch/thickness',
    '  + 1 mm  rule: a loose shelf is 1 mm short at each end (common practice)',
  ]);
  expect(explain(l, l.times('two sides', side, 2), mm)).toEqual([
    '35.2 mm  two sides',
    '  = 2 x 17.6 mm  measured: lot/birch/thickness',
  ]);
  expect(explain(l, l.greatest('the deeper', side, gap), mm).slice(1)).toEqual([
    '  = the greatest of 17.6 mm  measured: lot/birch/thickness',
    '  and 1 mm  rule: a loose shelf is 1 mm short at each end (common practice)',
  ]);
  expect(explain(l, l.least('the shallower', side, gap), mm)[1]).toContain('= the least of 17.6 mm');
  expect(explain(l, l.share('middle', width, [1, 2, 1], 1), mm)).toEqual([
    '790 mm  middle',
    '  = share 2 out of shares 1 : 2 : 1 of 1580 mm  typed as 1580 at case/width',
  ]);
  // Shares are kept in hundredths, and told as they were typed.
  expect(explain(l, l.share('half a share', width, [50, 100], 0), mm)[1]).toMatch(
    /^ {2}= share 1 out of shares 1 : 2 of/,
  );
});

test('a leaf explains itself in one line', () => {
  const { l, width, side } = bookcase();
  expect(explain(l, width, mm)).toEqual(['1580 mm  typed as 1580 at case/width']);
  expect(explain(l, side, inches)).toEqual(['about 11/16"  measured: lot/birch/thickness']);
});

test('a long chain stops and names what it rests on', () => {
  const l = new Ledger();
  let t = l.document('start', fromMm(100), '100 mm');
  for (let i = 0; i < 6; i++) t = l.sum(`early ${i}`, t, l.measured(`m${i}`, fromMm(1)));
  for (let i = 0; i < 12; i++) t = l.sum(`late ${i}`, t, l.measured(`n${i}`, fromMm(1)));
  const lines = explain(l, t, mm);
  expect(lines.length).toBeLessThan(25);
  expect(lines.find((w) => w.includes('... from'))?.trim()).toBe(
    '= ... from 100 mm typed at start, 1 mm measured: m0, 1 mm measured: m1, 1 mm measured: m2 and 7 more',
  );
});

test('any ledger is explained in a bounded number of lines, the value first', () => {
  const op = fc.record({ kind: fc.nat(5), picks: fc.array(fc.nat(), { minLength: 1, maxLength: 4 }) });
  fc.assert(
    fc.property(fc.array(op, { maxLength: 30 }), (ops) => {
      const l = new Ledger();
      const all: Traced[] = [l.document('a', ticks(32000), '10 mm'), l.measured('b', ticks(3200))];
      for (const [i, { kind, picks }] of ops.entries()) {
        const some = picks.map((p) => all[p % all.length]!);
        if (some.some((t) => Math.abs(l.ticks(t)) > 1e8)) continue;
        if (kind === 0) all.push(l.sum(`s${i}`, ...some));
        else if (kind === 1) all.push(l.less(`l${i}`, some[0]!, ...some.slice(1)));
        else if (kind === 2) all.push(l.times(`t${i}`, some[0]!, 2));
        else if (kind === 3) all.push(l.share(`h${i}`, some[0]!, [1, 1], 0));
        else if (kind === 4) all.push(l.greatest(`g${i}`, ...some));
        else all.push(l.measured(`m${i}`, ticks(i)));
      }
      for (const t of all) {
        const lines = explain(l, t, mm);
        expect(lines.length).toBeLessThanOrEqual(5 * l.size + 2);
        expect(lines[0]).toMatch(/^(about )?-?[\d.]+ mm {2}\S/);
        expect(explain(l, t, mm)).toEqual(lines);
      }
    }),
  );
});
