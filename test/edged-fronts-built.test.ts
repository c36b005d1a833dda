import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { type Built, built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';

const TAPE = { nominal: '0.6 mm', thickness: '0.6 mm', tape: 'iron-on' };
const LIP = { nominal: '3 mm', thickness: '3 mm' };

/** An example whose doors, or the fronts of whose drawers, are edged on these sides, with strips of a lot. */
function plain(name: string, lot: object, sides?: readonly string[]) {
  const job = JSON.parse(readFileSync(new URL(`../examples/${name}.json`, import.meta.url), 'utf8'));
  const edged = job.design.records.filter((r: { kind: string }) => r.kind === 'door' || r.kind === 'drawers');
  for (const { id } of edged)
    job.design.records.push({
      id: `${id}.edge`,
      kind: 'edging',
      parent: id,
      strip: 'lip',
      ...(sides ? { sides } : {}),
    });
  job.shop.rack.lots.push({
    id: 'lip',
    name: 'lipping',
    material: 'ash-white',
    form: 'strip',
    width: '24 mm',
    stock: [{ id: 'lip-length', length: '2400 mm', price: 4 }],
    ...lot,
  });
  return job;
}

const edged = (...of: Parameters<typeof plain>): Built => built(plain(...of));

/** Sizes of a part in mm, from left to right and upward. */
function sizes({ drawn }: Built, id: string): readonly [wide: number, high: number] {
  const part = drawn.parts.find((p) => p.id === id)!;
  const along = (axis: string) =>
    (['length', 'width', 'thickness'] as const).find((run) => part.place[run][1] === axis)!;
  const mm = (axis: string) => drawn.ledger.ticks(part[along(axis)]) / 3200;
  return [mm('x'), mm('z')];
}

const BARE = built(
  JSON.parse(readFileSync(new URL('../examples/hall-cupboard.json', import.meta.url), 'utf8')),
);

describe('doors before the case, with tape all round', () => {
  const of = edged('hall-cupboard', TAPE);

  test('are as large as bare ones: boards smaller by the tape on every side, the tape at the sides over that above and below', () => {
    const [wide, high] = sizes(BARE, 'coat-door/door');
    expect(sizes(of, 'coat-door/door')).toEqual([wide - 1.2, high - 1.2]);
    expect(sizes(of, 'coat-door.edge/upper-on:coat-door/door')).toEqual([wide - 1.2, 0.6]);
    expect(sizes(of, 'coat-door.edge/left-on:coat-door/door')).toEqual([0.6, high]);
  });

  test('have their cups as far from the door’s own edge as before', () => {
    const cup = (b: Built) => {
      const part = b.drawn.parts.find((p) => p.id === 'coat-door/door')!;
      const hole = part.features.find((f) => f.kind === 'hole' && f.use === 'cup');
      if (hole?.kind !== 'hole') throw new Error('no cup');
      return (b.drawn.ledger.ticks(part.width) - b.drawn.ledger.ticks(hole.at[1])) / 3200;
    };
    expect(cup(of)).toBeCloseTo(cup(BARE) - 0.6, 6);
  });

  test('the tape above and below is on and trimmed before that at the sides goes over its ends', () => {
    const ids = of.build.operations.map((o) => o.id);
    const at = (id: string) => ids.indexOf(id);
    const mark = (side: string) =>
      of.drawn.parts.find((p) => p.id === `coat-door.edge/${side}-on:coat-door/door`)!.mark;
    expect(at(`${mark('upper')}/edge`)).toBeGreaterThan(0);
    expect(at('K1/flush')).toBeGreaterThan(at(`${mark('lower')}/edge`));
    expect(at(`${mark('left')}/edge`)).toBeGreaterThan(at('K1/flush'));
    expect(at('K1/flush-sides')).toBeGreaterThan(at(`${mark('right')}/edge`));
  });

  test('are built', async () => {
    expect(await dryFaults(of)).toEqual([]);
  });
});

describe('doors before the case, with solid strips', () => {
  const of = edged('hall-cupboard', LIP);

  test('all round, are mitred at every corner; tip to tip the strips are as long as the door', () => {
    const strips = of.drawn.parts.filter((p) => p.record === 'coat-door.edge');
    expect(strips).toHaveLength(4);
    for (const s of strips) expect(s.features.filter((f) => f.kind === 'bevel')).toHaveLength(2);
    const [wide, high] = sizes(BARE, 'coat-door/door');
    expect(sizes(of, 'coat-door.edge/lower-on:coat-door/door')).toEqual([wide, 3]);
    expect(sizes(of, 'coat-door.edge/right-on:coat-door/door')).toEqual([3, high]);
  });

  test('above alone end square, and nothing is taken off the other edges', () => {
    const one = edged('hall-cupboard', LIP, ['upper']);
    const strips = one.drawn.parts.filter((p) => p.record === 'coat-door.edge');
    expect(strips.map((s) => s.features.length)).toEqual([0]);
    const [wide, high] = sizes(BARE, 'coat-door/door');
    expect(sizes(one, 'coat-door/door')).toEqual([wide, high - 3]);
  });

  test('are built', async () => {
    expect(await dryFaults(of)).toEqual([]);
    expect(await dryFaults(edged('hall-cupboard', LIP, ['left', 'upper']))).toEqual([]);
  });
});

describe('an inset door that is cut to its opening', () => {
  const of = edged('tool-cupboard', LIP);

  test('is cut, then mitred round and edged, then hung', () => {
    const ids = of.build.operations.map((o) => o.id);
    const strip = of.drawn.parts.find((p) => p.role.startsWith('upper-on:'))!.mark;
    const order = [`K1/cut-length`, `${strip}/bevel-end`, `${strip}/edge`, 'K1/flush', 'K1/set'].map((id) =>
      ids.indexOf(id),
    );
    expect(order.every((n) => n >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect(of.build.operations.find((o) => o.id === 'K1/measure')!.lines.join(' ')).toContain(
      'without their edging',
    );
  });

  test('its gap in the opening counts the strips', () => {
    const fit = of.drawn.fits.find((f) => f.id.endsWith('/width') && f.kind === 'door')!;
    // A pair: two strips each.
    expect(fit.loop.filter((m) => m.made.by === 'lot' && m.made.lot === 'lip')).toHaveLength(4);
  });

  test.each([
    ['strips', LIP],
    ['tape', TAPE],
  ])('is built with %s', async (_, lot) => {
    expect(await dryFaults(edged('tool-cupboard', lot))).toEqual([]);
  });
});

test.each([
  ['strips', LIP],
  ['tape', TAPE],
])('drawers’ fronts in their openings are built with %s', async (_, lot) => {
  expect(await dryFaults(edged('tool-chest', lot))).toEqual([]);
});

test('a cup that would break out behind thick edging is told, with what to change', () => {
  const { drawn } = edged('hall-cupboard', { nominal: '6 mm', thickness: '6 mm' });
  const told = drawn.snags.filter((s) => s.level === 'stop');
  expect(new Set(told.map((s) => s.code))).toEqual(new Set(['hinges.cup-in-edging']));
});

test('strips narrower than a door is thick are told once', () => {
  const { drawn } = edged('hall-cupboard', { ...LIP, width: '12 mm' });
  const codes = drawn.snags.filter((s) => s.level === 'stop').map((s) => s.where.record);
  expect(codes).toEqual(['coat-door.edge', 'bag-doors.edge']);
});

test.each([
  ['a side twice', 'hall-cupboard', ['left', 'left'], 'coat-door'],
  ['a side that a case has not', 'hall-cupboard', ['lower'], 'case'],
])('%s is refused', (_, name, sides, parent) => {
  const job = plain(name, TAPE);
  job.design.records = job.design.records.filter((r: { kind: string }) => r.kind !== 'edging');
  job.design.records.push({ id: 'edge', kind: 'edging', parent, strip: 'lip', sides });
  const read = checkJob(job);
  expect(read.ok ? [] : read.snags.map((s) => `${s.code} ${s.where.path}`)).toEqual([
    'edging.sides design/records/edge/sides',
  ]);
});
