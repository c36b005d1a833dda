import { expect, test } from 'vitest';
import { toolChest } from '../../test/drawers/chest-job.ts';
import { type PlainJob, smallJob } from '../../test/generate/small-job.ts';
import { checkJob } from '../job/index.ts';
import { toMm } from '../measure/index.ts';
import { setOut } from '../setting-out/index.ts';
import { stackOfFit } from './fit-errors.ts';
import { fits } from './fits.ts';

function shop(change: (job: PlainJob) => void) {
  const plain = smallJob();
  // A saw and a rule good to half a millimetre and to a third of one, set as finely as the sizes are.
  plain.shop.tools = [
    { id: 'saw', kind: 'circular-saw', accuracy: '0.5 mm', kerf: '2 mm', step: '0.5 mm', reach: '55 mm' },
    { id: 'rule', kind: 'marking', accuracy: '0.3 mm', step: '0.5 mm' },
    { id: 'pockets', kind: 'pocket-jig', accuracy: '0.5 mm', step: '1 mm' },
  ];
  for (const lot of plain.shop.rack.lots) if (lot.form === 'sheet') lot.thickness = lot.nominal;
  change(plain);
  const read = checkJob(plain);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('; '));
  const drawn = setOut(read.job);
  expect(drawn.snags.filter((s) => s.level === 'stop')).toEqual([]);
  const stack = (id: string) => {
    const { worst, likely, rss } = stackOfFit(read.job, drawn.ledger, drawn.fits.find((f) => f.id === id)!);
    return {
      least: toMm(worst.least),
      greatest: toMm(worst.greatest),
      likely: toMm(likely.least),
      rss: toMm(rss),
    };
  };
  return { stack, snags: fits({ job: read.job, setOut: drawn }) };
}

test('a shelf in a bay that a rule sets: worst 0.8 mm too long, likely the root of 0.09 and 0.25', () => {
  const { stack } = shop(() => {});
  const s = stack('shelves/shelf:1/length');
  expect(s.least).toBeCloseTo(-0.8, 9);
  expect(s.greatest).toBeCloseTo(0.8, 9);
  expect(s.rss).toBeCloseTo(Math.sqrt(0.34), 6);
});

test('two thicknesses of one unmeasured lot err together, as far as EN 315 lets sanded plywood', () => {
  // No top: the divider stands between bottom and lid, 800 - 80 - 2 x 18 high.
  const { stack } = shop((job) => {
    job.design.records = job.design.records.filter((r) => r.kind !== 'top');
    for (const lot of job.shop.rack.lots) delete lot.thickness;
  });
  const s = stack('upright/divider/length');
  // EN 315:2000, t = 18: +0.74 and -0.94 mm. Twice that, and half a millimetre for the side and for the divider.
  expect(s.least).toBeCloseTo(-(2 * 0.74 + 0.5 + 0.5), 9);
  expect(s.greatest).toBeCloseTo(2 * 0.94 + 0.5 + 0.5, 9);
  // The lot is one term of the root: twice its half-width of 0.84.
  expect(s.rss).toBeCloseTo(Math.sqrt((2 * 0.84) ** 2 + 0.5 ** 2 + 0.5 ** 2), 6);
});

test('what a dado is tried on is the stock that goes in: its error is shared and cancels', () => {
  const { stack, snags } = shop((job) => {
    Object.assign(job.design.records.find((r) => r.id === 'case')!, { joints: 'dado' });
    job.shop.tools.push({
      id: 'router',
      kind: 'router',
      accuracy: '0.3 mm',
      step: '0.1 mm',
      edgeGuide: true,
    });
  });
  expect(stack('shelf/shelf>upright/divider/thickness')).toMatchObject({ rss: 0 });
  expect(snags.filter((s) => /dado/.test(s.sentence))).toEqual([]);
});

test('what may stray is told together, by the one that is furthest off, with the advice to cut it last', () => {
  const { snags } = shop((job) => {
    job.design.records = job.design.records.filter((r) => r.kind !== 'base' && r.kind !== 'back');
  });
  expect(snags).toHaveLength(1);
  const [snag] = snags;
  expect(snag).toMatchObject({ level: 'mind', code: 'fits.tight' });
  expect(snag!.cures[0]!.says).toContain('last, each to what you then measure');
  // The last bay has the bottom's error, the rule's and the shelf's: likely the root of 0.25, 0.09, 0.01 and 0.25.
  expect(snag!.figures!.value).toBeCloseTo(-Math.sqrt(0.6), 3);
  expect(snag!.figures!.margin).toBeCloseTo(0.5 - Math.sqrt(0.6), 3);
});

test('with tools that err less than a fit may lose nothing is said', () => {
  const { snags } = shop((job) => {
    for (const tool of job.shop.tools) tool.accuracy = '0.1 mm';
  });
  expect(snags).toEqual([]);
});

test('a drawer is drawn in the middle of what its runners put up with: with tools that hold a tenth it is likely to run', () => {
  const job = toolChest();
  const levels = (accuracy: string) => {
    const tools = job.shop.tools.map((t) => ({ ...t, accuracy }));
    const of = { ...job, shop: { ...job.shop, tools } };
    const told = fits({ job: of, setOut: setOut(of) }).filter((s) => s.sentence.includes('on its runners'));
    return new Set(told.map((s) => s.level));
  };
  expect(levels('0.1 mm')).not.toContain('mind');
  expect(levels('1 mm')).toContain('mind');
});
