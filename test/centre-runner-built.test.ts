import { describe, expect, test } from 'vitest';
import type { Traced } from '../src/measure/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { type Changes, changedChest } from './drawers/chest-job.ts';
import { drawerFaults } from './generate/judge-drawers.ts';
import { boxOf } from './generate/judge-set-out.ts';

function beech(thickness: string, width: string) {
  return {
    ...{ id: 'beech', name: 'Beech strip', material: 'beech-european', form: 'strip' },
    ...{ nominal: '6 mm', thickness, width },
    stock: [{ id: 'beech-length', length: '2000 mm', price: 2 }],
  };
}

/** The tool chest, its lowest drawer on a centre runner of strips so thick and wide. */
function chest(thickness: string, fields: object = {}, width = '18 mm', others: Changes = {}) {
  const job = changedChest({
    ...others,
    planes: { carriedBy: 'centre-runner', runnerStrip: 'beech', ...fields },
  });
  job.shop.rack.lots!.push(beech(thickness, width));
  return built(job);
}

describe('a drawer on a centre runner', () => {
  const of = chest('6 mm');
  const { ledger, drawers, parts, snags } = of.drawn;
  const drawer = drawers.find((d) => d.record === 'planes')!;

  test('stands on what is below, guided by a strip under its middle', () => {
    expect(snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(drawerFaults(of.drawn)).toEqual([]);
    expect([drawer.runner, drawer.wooden]).toEqual([undefined, undefined]);
    expect(parts.filter((p) => p.mark.startsWith('Y'))).toHaveLength(3);
    // Two slips of card, and on to the next mark.
    const play = ledger.ticks(drawer.centre!.play) / 3200;
    expect(play).toBeGreaterThanOrEqual(0.8);
    expect(play).toBeLessThanOrEqual(2);
  });

  test('is built', async () => {
    expect(await dryFaults(of)).toEqual([]);
  });

  test('guides set too far apart are noticed', async () => {
    const off = { id: 'mistake', value: 3 * 3200, says: 'a mistake', source: 'the test' };
    const more = ledger.row(off as never);
    const guide = parts.find((p) => p.id === drawer.centre!.guides[1])!.mark;
    const faults = await dryFaults(of, (o) => {
      const { does } = o;
      if (does.act !== 'edge' || does.pairs[0]!.strip !== guide) return o;
      const [first, second, third] = does.touches;
      const touches = [first, { ...second, gap: ledger.sum('off', second.gap!, more) }, third] as const;
      return { ...o, does: { ...does, touches } };
    });
    expect(faults.map((f) => f.sentence).join(' ')).toContain('is not held from going to the left');
  });
});

test.each([
  ['strips as thick as the room under the bottom', '8 mm', {}],
  ['strips too thin to reach beside one another', '3 mm', {}],
  ['two drawers one above the other', '6 mm', { count: 2 }],
  ['a bottom laid under', '6 mm', { bottomFitting: 'applied' }],
])('%s: it is said', (_, thickness, fields) => {
  const { drawn } = chest(thickness, fields);
  expect(drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code)).toContain('drawers.no-centre');
});

const codes = (of: ReturnType<typeof chest>) => of.drawn.snags.map((s) => s.code);

test('strips that three of them have no room for between the sides are too wide, and no part stands in another', () => {
  const of = chest('6 mm', {}, '165 mm');
  expect(codes(of)).toContain('drawers.no-centre');
  expect(codes(of)).not.toContain('parts.same-space');
});

test('a runner of the rack that is named besides is not used, which a note says', () => {
  const [runner] = changedChest({}).shop.rack.runners!;
  expect(codes(chest('6 mm', { runner: runner!.id }))).toContain('drawers.runner-unused');
  expect(codes(chest('6 mm'))).not.toContain('drawers.runner-unused');
});

test('a box higher than it is deep is told: guided below alone it tips', () => {
  expect(codes(chest('6 mm'))).not.toContain('drawers.centre-tall');
  const tall = { chest: { height: '1000 mm' }, heavy: { size: '420 mm' } };
  expect(codes(chest('6 mm', {}, '18 mm', tall))).toContain('drawers.centre-tall');
});

test('its cards print how far it is drawn out, what still guides it, the gap above and the slips of card', () => {
  const of = chest('6 mm');
  const ticks = (t: Traced) => of.drawn.ledger.ticks(t);
  const drawer = of.drawn.drawers.find((d) => d.record === 'planes')!;
  const card = of.build.operations.find((o) => o.does.act === 'draw-out')!;
  const runner = of.drawn.parts.find((p) => p.id === drawer.centre!.runner)!;
  const [out, guided, above] = card.lengths.map(ticks);
  // As it is marked, in half millimetres.
  const rest = ticks(runner.length) - out! - guided!;
  expect([rest >= 0, rest < 1600]).toEqual([true, true]);
  expect(above).toBeGreaterThanOrEqual(2 * 3200);
  expect(card.cautions.join(' ')).toContain('Nothing stops this drawer');
  const right = of.drawn.parts.find((p) => p.id === drawer.centre!.guides[1])!;
  const glued = of.build.operations.find((o) => o.id === `${right.mark}/edge`)!;
  const n = glued.lines.flatMap((line) => /either side, {(\d+)} thick/.exec(line)?.[1] ?? []);
  expect(n.map((i) => 2 * ticks(glued.lengths[Number(i)]!))).toEqual([ticks(drawer.centre!.play)]);
  expect(glued.lines.join(' ')).toContain('left side is on your right');
});

test('screws that hold its case to one below keep from under the runner', () => {
  const job = changedChest({
    planes: { carriedBy: 'centre-runner', runnerStrip: 'beech' },
    chest: { width: '860 mm', height: '1000 mm' },
    case: { parent: 'stack' },
  });
  const { records } = job.design;
  records.splice(1, 0, { id: 'stack', kind: 'group', parent: 'chest', lay: 'up' });
  records.splice(2, 0, { id: 'low', kind: 'case', parent: 'stack', board: 'ply18', size: '300 mm' });
  const { lots, screws } = job.shop.rack;
  lots!.push(beech('6 mm', '30 mm'));
  screws!.push({ ...screws!.find((s) => s.id === 'flat-4x25')!, id: 'flat-4x30', length: '30 mm' });
  const { drawn } = built(job);
  expect(drawn.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
  const ticks = (t: Traced) => drawn.ledger.ticks(t);
  const drawer = drawn.drawers.find((d) => d.record === 'planes')!;
  const runner = boxOf(drawn, drawn.parts.find((p) => p.id === drawer.centre!.runner)!);
  const down = drawn.fasteners.filter(
    (f) => f.through[0] === drawer.below && ticks(f.head[2]) === runner.min[2],
  );
  expect(down.length).toBeGreaterThan(1);
  for (const f of down) {
    const [x, y] = [ticks(f.head[0]), ticks(f.head[1])];
    const radius = ticks(f.diameter) / 2;
    const beside = x + radius <= runner.min[0] || x - radius >= runner.max[0];
    const before = y + radius <= runner.min[1] || y - radius >= runner.max[1];
    expect([f.id, beside || before]).toEqual([f.id, true]);
  }
});
