import { expect, test } from 'vitest';
import { builtExample } from './built.ts';
import { listed } from './listed.ts';

const MM = 3200;

test('pieces too small for a power saw are cut by hand, and only those', () => {
  const { job } = builtExample('glaze-cabinet');
  const list = 'name,length,width,thickness,count\nblock,90,80,15,9\nshelf,600,300,15,2\n';
  const { build, setOut } = listed(list, job.shop);
  const t = (x: Parameters<typeof setOut.ledger.ticks>[0]): number => setOut.ledger.ticks(x) / MM;

  // The size of every workpiece, followed through the cuts as the cards have them.
  const sizes = new Map(build.stock.map((s) => [s.name, [t(s.length), t(s.width)] as [number, number]]));
  let byHand = 0;
  for (const o of build.operations) {
    if (o.does.act !== 'saw') continue;
    const { workpiece, across, at, keep, yields } = o.does;
    const size = sizes.get(workpiece)!;
    const small = Math.max(...size) < 200;
    expect(o.tool === undefined, `${o.id}: ${size}`).toBe(small);
    if (small) {
      byHand++;
      expect(o.lines.join()).toMatch(/handsaw/);
    }
    const axis = across === 'length' ? 0 : 1;
    yields.forEach((y, i) => {
      if (!y) return;
      const half: [number, number] = [...size];
      const kerf = 1.6;
      half[axis] =
        i === 0
          ? keep === 'before'
            ? t(at)
            : t(at) - kerf
          : keep === 'before'
            ? size[axis]! - t(at) - kerf
            : size[axis]! - t(at);
      sizes.set(y.name, y.turned ? [half[1], half[0]] : half);
    });
  }
  expect(byHand).toBeGreaterThan(2);
});
