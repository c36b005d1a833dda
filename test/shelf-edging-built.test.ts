import { describe, expect, test } from 'vitest';
import { type Built, built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { changed } from './pins/pantry-job.ts';

/** The pantry shelf, its loose shelves for jars edged with strips of a lot. */
function edged(lot: object): Built {
  const job = changed({});
  job.design.records.push({ id: 'lip', kind: 'edging', parent: 'jar-shelves', strip: 'lip' });
  job.shop.rack.lots!.push({
    id: 'lip',
    name: 'lipping',
    material: 'ash-white',
    form: 'strip',
    width: '22 mm',
    stock: [{ id: 'lip-length', length: '2400 mm', price: 4 }],
    ...lot,
  });
  return built(job);
}

describe.each([
  ['strips of 6 mm', { nominal: '6 mm', thickness: '6 mm' }, 6],
  ['tape of 0.6 mm', { nominal: '0.6 mm', thickness: '0.6 mm', tape: 'iron-on' }, 0.6],
])('loose shelves edged in front with %s', (_, lot, thick) => {
  const of = edged(lot);
  const t = (x: (typeof of.drawn.parts)[0]['length']) => of.drawn.ledger.ticks(x) / 3200;

  test('are as deep as before with it, and the strip as long as they are', () => {
    expect(of.drawn.snags).toEqual([]);
    const bare = built(changed({})).drawn;
    const was = bare.parts.find((p) => p.record === 'jar-shelves')!;
    const shelves = of.drawn.parts.filter((p) => p.record === 'jar-shelves');
    const strips = of.drawn.parts.filter((p) => p.record === 'lip');
    expect([shelves.length, strips.length]).toEqual([3, 3]);
    for (const [i, strip] of strips.entries()) {
      expect(t(shelves[i]!.width)).toBeCloseTo(bare.ledger.ticks(was.width) / 3200 - thick, 5);
      expect(t(strip.length)).toBe(t(shelves[i]!.length));
    }
    // Those for tins stay bare.
    expect(of.drawn.joints.filter((j) => j.duty === 'edging')).toHaveLength(3);
  });

  test('are built', async () => {
    expect(await dryFaults(of)).toEqual([]);
  });
});

test('strips narrower than the shelves are thick are told once', () => {
  const { drawn } = edged({ nominal: '6 mm', thickness: '6 mm', width: '12 mm' });
  expect(drawn.snags.map((s) => [s.code, s.where.record])).toEqual([['edging.too-narrow', 'lip']]);
});
