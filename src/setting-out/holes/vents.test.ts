import { expect, test } from 'vitest';
import { smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { setOut } from '../index.ts';

function setOutWith(vent: Record<string, unknown>, bits: readonly Record<string, unknown>[] = []) {
  const job = smallJob();
  job.design.records.push({
    id: 'air',
    kind: 'vent',
    parent: 'back',
    in: 'left',
    fromBelow: '110 mm',
    ...vent,
  });
  job.shop.rack.bits.push(...bits);
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const piece = setOut(read.job);
  const back = piece.parts.find((p) => p.name === 'back')!;
  return { piece, features: back.features.filter((f) => f.id.startsWith(`${back.id}#air:`)) };
}

const STRAIGHT = [{ id: 'straight-10', kind: 'straight', diameter: '10 mm' }];

test('slots enough for the heat: 10 W at 0.3 m want 41 cm² (ASHRAE Fundamentals 1997, eq. 37), and a slot of 10 x 80 mm has 7.79', () => {
  const metres = 0.3 / 2;
  const speed = 0.65 * Math.sqrt((2 * 9.81 * metres * 10) / 303.15);
  const needed = (10 / (1.2 * 1005 * 10) / speed) * 1e4;
  expect(needed).toBeCloseTo(41, 0);
  const { piece, features } = setOutWith({ form: 'slots', heat: '10 W', apart: '300 mm' }, STRAIGHT);
  expect(piece.snags).toEqual([]);
  expect(features).toHaveLength(Math.ceil(needed / 7.785));
  for (const f of features) {
    expect(f).toMatchObject({ kind: 'slot', run: 'length' });
    expect(f.kind === 'slot' && piece.ledger.ticks(f.width) / 3200).toBe(10);
  }
});

test('they stand about the place they were given, wood between them', () => {
  const { piece, features } = setOutWith({ form: 'holes', count: 9, rows: 3, opening: '20 mm' });
  const at = features.map((f) => (f.kind === 'hole' ? f.at.map((t) => piece.ledger.ticks(t) / 3200) : []));
  // The grain of the back stands upright, so its length counts from below; the lower end of the back is the case's foot.
  const left = piece.openings.find((o) => o.id === 'left')!;
  const foot = piece.ledger.ticks(left.box.min[2]) / 3200 - 80;
  expect([...new Set(at.map((a) => a[0]))]).toEqual([70, 110, 150].map((up) => foot + up));
  const across = [...new Set(at.map((a) => a[1]!))];
  expect(across.map((a) => Math.round(Math.abs(a - across[0]!)))).toEqual([0, 40, 80]);
});

test.each([
  ['vents.no-room', { form: 'slots', heat: '400 W' }],
  ['vents.no-room', { form: 'slots', count: 4, rows: 1, opening: '900 mm' }],
  ['holes.meets-part', { form: 'slots', count: 4, fromBelow: '230 mm' }],
  ['holes.wrong-way', { form: 'holes', count: 4, fromBack: '50 mm' }],
])('%s: a vent that can’t be is a stop at its record', (code, vent) => {
  const { piece, features } = setOutWith(vent);
  expect(piece.snags.map((s) => [s.code, s.where.record])).toEqual([[code, 'air']]);
  expect(features).toEqual([]);
});

test('a vent without heat or count is told before anything is set out', () => {
  const job = smallJob();
  job.design.records.push({ id: 'air', kind: 'vent', parent: 'back', form: 'slots' });
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toEqual(['design.vent-size']);
});

test('a vent in a bottom rises through the clear height over it, not through the bottom’s own thickness', () => {
  const job = smallJob();
  job.design.records.push({
    id: 'low',
    kind: 'vent',
    parent: 'case',
    panel: 'bottom',
    form: 'holes',
    heat: '5 W',
    opening: '20 mm',
    fromLeft: '200 mm',
  });
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const piece = setOut(read.job);
  expect(piece.snags).toEqual([]);
  const inside = piece.openings.find((o) => o.id === 'inside')!;
  const metres = piece.ledger.ticks(inside.height) / 3200 / 2000;
  const speed = 0.65 * Math.sqrt((2 * 9.81 * (metres / 2) * 10) / 303.15);
  const needed = (5 / (1.2 * 1005 * 10) / speed) * 1e6;
  const bottom = piece.parts.find((p) => p.role === 'bottom')!;
  const holes = bottom.features.filter((f) => f.kind === 'hole' && f.use === 'vent');
  const full = Math.ceil(needed / (Math.PI * 100));
  // In as many equal rows as it takes, none of them with one hole fewer.
  expect(holes.length).toBeGreaterThanOrEqual(full);
  expect(holes.length).toBeLessThan(full + 3);
});
