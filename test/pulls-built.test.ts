import { expect, test } from 'vitest';
import type { Operation } from '../src/build/index.ts';
import { fromMm } from '../src/measure/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { hallCupboard } from './doors/door-job.ts';
import { changedChest } from './drawers/chest-job.ts';

const BAR = { id: 'bar', name: 'Bar pull', holes: '128 mm', thread: '4 mm', deep: '8 mm', length: '160 mm' };
const KNOB = { id: 'knob', thread: '4 mm', deep: '8 mm', length: '25 mm' };
const machine = (mm: number) => ({
  id: `m4x${mm}`,
  kind: 'machine',
  length: `${mm} mm`,
  diameter: '4 mm',
  head: '8 mm',
});

interface Plain {
  readonly design: { readonly records: Record<string, unknown>[] };
  readonly shop: { readonly rack: { readonly screws: Record<string, unknown>[] } };
}

/** A document with pulls on one of its records. */
function withPulls(document: Plain, parent: string, pull: object, more: object = {}): unknown {
  document.design.records.push({ id: 'pulls', kind: 'pull', parent, ...more });
  Object.assign(document.shop.rack, { pulls: [pull] });
  document.shop.rack.screws.push(...[18, 22, 25, 30, 35, 40].map(machine));
  return document;
}

test('a bar pull on a pair of doors: 17.8 mm of wood and a thread 8 mm deep take M4 x 25, not 30 nor 22 of less hold', async () => {
  const of = built(withPulls(hallCupboard(), 'bag-doors', BAR));
  expect(of.drawn.snags).toEqual([]);
  // 22 mm would stand 4.2 mm in the thread, 25 mm 7.2: the longest that stays clear of its end.
  expect(of.drawn.pulls.map((p) => [p.screw, p.count])).toEqual([
    ['m4x25', 2],
    ['m4x25', 2],
  ]);
  expect(await dryFaults(of)).toEqual([]);
});

test('the dry fit notices other holes, a longer screw, and none at all', async () => {
  const of = built(withPulls(hallCupboard(), 'coat-door', BAR));
  const card = of.build.operations.find((o) => o.does.act === 'pull')!;
  const another = (mm: number) =>
    of.drawn.ledger.row({ id: `test.${mm}`, value: fromMm(mm), says: 'another length', source: 'this test' });
  const swap = (fields: object) => (o: Operation) =>
    o === card ? { ...o, does: { ...o.does, ...fields } as never } : o;
  const codes = async (fields: object) => (await dryFaults(of, swap(fields))).map((f) => f.code);
  expect(await codes({ holes: another(96) })).toEqual(['no-hole']);
  const longer = another(30);
  expect(await codes({ screw: 'm4x30', length: longer })).toEqual(['screw-comes-through']);
  expect(await codes({ act: 'other', on: ['case'] })).toEqual(['no-screw']);
});

test('knobs on drawers go through the box’s front as well, whose holes leave room to set the front', async () => {
  const of = built(withPulls(changedChest({}) as never, 'small', KNOB));
  expect(of.drawn.snags).toEqual([]);
  const mm = (t: (typeof of.drawn.parts)[0]['length']) => of.drawn.ledger.ticks(t) / 3200;
  for (const pull of of.drawn.pulls) {
    const [front, behind] = [pull.part, pull.behind].map((id) => of.drawn.parts.find((p) => p.id === id)!);
    expect(mm(pull.reach)).toBeCloseTo(
      mm(pull.screwLength) - mm(front!.thickness) - mm(behind!.thickness),
      6,
    );
    const wide = [front!, behind!].map((p) =>
      p.features.flatMap((f) => (f.kind === 'hole' && f.id.includes('#pulls:') ? [mm(f.diameter)] : [])),
    );
    expect(wide[1]![0]! - wide[0]![0]!).toBeGreaterThan(1);
  }
  expect(await dryFaults(of)).toEqual([]);
});

test('no screw of the list: it is said how long one must be', () => {
  const { drawn } = built(withPulls(hallCupboard(), 'coat-door', { ...BAR, deep: '4 mm' }));
  expect(drawn.snags[0]).toMatchObject({ code: 'pulls.no-screw', where: { record: 'pulls' } });
});
