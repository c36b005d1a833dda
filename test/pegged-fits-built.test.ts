import { expect, test } from 'vitest';
import type { PrintedFit } from '../src/setting-out/index.ts';
import { type Built, built, mm } from './build/built.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, recordOf, smallJob } from './generate/small-job.ts';

type Fields = Readonly<Record<string, unknown>>;

/** The small cupboard's case, dowelled, with other records in it; its saw is set by whole millimetres. */
function dowelled(lid: Fields, ...inside: readonly Fields[]): Built {
  const job = equipped(smallJob()) as PlainJob;
  Object.assign(recordOf(job, 'case'), { joints: 'dowels', ...lid });
  for (const tool of job.shop.tools) if (String(tool.kind).endsWith('saw')) tool.step = '1 mm';
  job.design.records = [
    ...job.design.records.filter((r) => r.kind === 'piece' || r.kind === 'case'),
    ...inside,
  ];
  return built(job);
}

type Vec = [number, number, number];

/** Where each part of the case comes by what its card says it touches, mm. */
function standing(of: Built): ReadonlyMap<string, { readonly min: Vec; readonly size: Vec }> {
  const at = new Map<string, { min: Vec; size: Vec }>();
  for (const { does } of of.build.operations) {
    if (does.act !== 'set') continue;
    const part = of.drawn.parts.find((p) => p.mark === does.workpiece)!;
    const size: Vec = [0, 0, 0];
    size['xyz'.indexOf(part.place.length[1]!)] = mm(of, part.cut.length);
    size['xyz'.indexOf(part.place.width[1]!)] = mm(of, part.cut.width);
    size['xyz'.indexOf(part.place.thickness[1]!)] = mm(of, part.thickness);
    const min: Vec = [0, 0, 0];
    for (const touch of does.touches) {
      const k = 'xyz'.indexOf(touch.side[1]!);
      const there = at.get(touch.of);
      const plane = there ? there.min[k]! + (touch.face.startsWith('+') ? there.size[k]! : 0) : 0;
      const gap = touch.gap === undefined ? 0 : mm(of, touch.gap);
      min[k] = touch.side.startsWith('-') ? plane - gap : plane + gap - size[k]!;
    }
    at.set(part.mark, { min, size });
  }
  return at;
}

/** The gap that is left at a part's ends when all stands as the cards say. */
function gapAsBuilt(of: Built, id: string): number {
  const at = standing(of);
  const part = of.drawn.parts.find((p) => p.id === id)!;
  const k = 'xyz'.indexOf(part.place.length[1]!);
  const mates = of.drawn.joints
    .filter((j) => j.part === id && j.duty === 'carries')
    .map((j) => at.get(of.drawn.parts.find((p) => p.id === j.mate)!.mark)!)
    .sort((a, b) => a.min[k]! - b.min[k]!);
  const [low, high] = mates;
  return high!.min[k]! - low!.min[k]! - low!.size[k]! - at.get(part.mark)!.size[k]!;
}

function fitOf(of: Built, id: string): PrintedFit {
  return of.drawn.fits.find((f) => f.id === `${id}/length`)!;
}
const printed = (of: Built, id: string) => mm(of, fitOf(of, id).printed);

const opening = (id: string, parent: string, more: Fields = {}) => ({ id, kind: 'opening', parent, ...more });
const shelf = (id: string, parent: string) => ({ id, kind: 'shelf', parent });

const bays = (...ids: readonly string[]) => [
  opening('inside', 'case', { split: 'across' }),
  opening('a', 'inside', { size: '191.3 mm' }),
  opening('b', 'inside', { size: '187.9 mm' }),
  opening('c', 'inside', { size: '217.7 mm' }),
  opening('d', 'inside', { size: 'equal' }),
  ...ids.map((id) => shelf(`in-${id}`, id)),
];

test('a divider that comes against a dowelled shelf is reckoned there, not at its own mark', () => {
  const of = dowelled({}, ...bays('a', 'b', 'c', 'd'));
  expect(of.drawn.snags).toEqual([]);
  for (const id of ['in-a', 'in-d']) {
    const part = `${id}/shelf`;
    expect(gapAsBuilt(of, part), id).toBeCloseTo(printed(of, part), 2);
  }
  // What counts are the lengths of the shelves that stand before it, and the one mark that these begin at.
  expect(fitOf(of, 'in-d/shelf').loop.map((m) => m.name)).toEqual([
    'length of the bottom',
    'distance of the first divider from the end of the bottom',
    'thickness of the first divider',
    'length of the shelf in b',
    'thickness of the second divider',
    'length of the shelf in c',
    'thickness of the third divider',
    'length of the shelf in d',
  ]);
});

test('a shelf’s own fit is whether it is as long as the dowels of both its dividers are apart', () => {
  const of = dowelled({}, ...bays('b', 'd'));
  expect(fitOf(of, 'in-b/shelf').loop.map((m) => m.name)).toContain(
    'distance of the second divider from the end of the bottom',
  );
  // Nothing stands between the second divider and the third, so that one stands at its mark.
  expect(fitOf(of, 'in-d/shelf').loop.map((m) => m.name)).toContain(
    'distance of the third divider from the end of the bottom',
  );
  expect(gapAsBuilt(of, 'in-d/shelf')).toBeCloseTo(printed(of, 'in-d/shelf'), 2);
});

test('so is a shelf that comes down upon dowelled dividers', () => {
  const level = (id: string, size: string) => [
    opening(id, 'inside', { size, split: 'across' }),
    opening(`${id}.1`, id),
    opening(`${id}.2`, id),
  ];
  const of = dowelled(
    { lid: 'between' },
    opening('inside', 'case', { split: 'down' }),
    ...level('a', '191.3 mm'),
    ...level('b', '187.9 mm'),
    ...level('c', 'equal'),
  );
  expect(of.drawn.snags).toEqual([]);
  const third = of.drawn.parts.find((p) => p.name === 'first divider of c')!;
  expect(gapAsBuilt(of, third.id)).toBeCloseTo(printed(of, third.id), 2);
});
