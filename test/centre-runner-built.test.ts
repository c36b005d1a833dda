import { describe, expect, test } from 'vitest';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { changedChest } from './drawers/chest-job.ts';
import { drawerFaults } from './generate/judge-drawers.ts';

/** The tool chest, its lowest drawer on a centre runner of strips so thick. */
function chest(thickness: string, fields: object = {}) {
  const job = changedChest({ planes: { carriedBy: 'centre-runner', runnerStrip: 'beech', ...fields } });
  job.shop.rack.lots!.push({
    id: 'beech',
    name: 'Beech strip',
    material: 'beech-european',
    form: 'strip',
    nominal: '6 mm',
    thickness,
    width: '18 mm',
    stock: [{ id: 'beech-length', length: '2000 mm', price: 2 }],
  });
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
