import { describe, expect, test } from 'vitest';
import { demoDocument } from '../../../test/build/built.ts';
import { readJob } from '../../job/index.ts';
import { setOut } from '../set-out-job.ts';
import { coatsOn } from '../surfaces/coats.ts';

const VARNISH = { id: 'varnish', material: 'water-polyurethane' };

/** Faces with film in the fit of a piece whose id ends so, by their coats. */
function filmIn(records: readonly object[], finish: object, ends: string): Record<string, number> {
  const demo = demoDocument();
  const rack = { ...(demo.shop.rack as object), finishes: [finish] };
  const read = readJob(JSON.stringify({ ...demo, design: { records }, shop: { ...demo.shop, rack } }));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const { fits } = setOut(read.job);
  const fit = fits.find((f) => f.id.endsWith(ends));
  if (!fit) throw new Error(`none of ${fits.map((f) => f.id).join(', ')}`);
  return Object.fromEntries(
    fit.loop.flatMap((m) => (m.made.by === 'finish' ? [[m.name.split(', ').at(-1)!, m.times!]] : [])),
  );
}

const slid = (height: string): Record<string, unknown>[] => [
  { id: 'piece', kind: 'piece', name: 'Box', width: '900 mm', height, depth: '340 mm' },
  { id: 'case', kind: 'case', parent: 'piece', board: 'birch18', joints: 'pocket-screws' },
  { id: 'inside', kind: 'opening', parent: 'case' },
  { id: 'doors', kind: 'sliding-doors', parent: 'case', over: ['inside'], board: 'birch6' },
];

describe('film in the fits', () => {
  test('of doors that slide: both faces of a door and both walls of its groove, as many coats as the label says', () => {
    expect(filmIn(slid('500 mm'), VARNISH, '/play')).toEqual({ '4 coats': 4 });
    expect(filmIn(slid('500 mm'), { ...VARNISH, label: { coats: 2 } }, '/play')).toEqual({ '2 coats': 4 });
  });

  test('of grooves in panels that are finished before they are put together: these are taped, and get none', () => {
    // Under and over the doors' space lie two of 100 mm: no hand with a cloth gets in.
    const low = ['low', 'high'].map((id) => ({ id, kind: 'opening', parent: 'inside', size: '100 mm' }));
    const parted = slid('700 mm').flatMap((r) =>
      r.id === 'inside'
        ? [{ ...r, split: 'down' }, low[1]!, { id: 'middle', kind: 'opening', parent: 'inside' }, low[0]!]
        : 'over' in r
          ? [{ ...r, over: ['middle'] }]
          : [r],
    );
    expect(filmIn(parted, VARNISH, '/play')).toEqual({ '4 coats': 2 });
    // Over the edge of the lower groove the door passes the panel's own face, which is finished.
    expect(filmIn(parted, VARNISH, '/lift')).toEqual({ '4 coats': 3 });
  });

  test('of a drawer on bought runners: the sides of its box, from which the runners come off; not the uprights', () => {
    const drawer = { id: 'drawer', kind: 'drawers', parent: 'inside', count: 2, hang: 'inset' };
    const boards = { board: 'birch15', bottomBoard: 'birch6', frontBoard: 'birch18' };
    const records = [...slid('400 mm').filter((r) => !('over' in r)), { ...drawer, ...boards }];
    expect(filmIn(records, VARNISH, '/across')).toEqual({ '4 coats': 2 });
    expect(filmIn(records, VARNISH, '/width')).toEqual({ '4 coats': 4 });
  });
});

test('what wears most gets one coat more than all else', () => {
  expect([coatsOn([], 'inside') + 1, coatsOn([], 'hidden') + 1]).toEqual([
    coatsOn([], 'top'),
    coatsOn([], 'top'),
  ]);
});
