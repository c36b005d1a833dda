import { describe, expect, test } from 'vitest';
import { smallJob } from '../../../test/generate/small-job.ts';
import { checkJob } from '../../job/index.ts';
import { type SetOut, setOut } from '../index.ts';

type Fields = Readonly<Record<string, unknown>>;

const radio = {
  id: 'radio',
  kind: 'thing',
  parent: 'inside',
  name: 'Receiver',
  width: '440 mm',
  height: '150 mm',
  depth: '300 mm',
  mass: '9 kg',
  clear: '20 mm',
};

function outOf(inside: Fields, ...records: readonly Fields[]): SetOut {
  const job = smallJob();
  job.design.records = [
    { id: 'box', kind: 'piece', name: 'A box', width: '600 mm', height: '500 mm', depth: '380 mm' },
    { id: 'case', kind: 'case', parent: 'box', board: 'birch18' },
    { id: 'inside', kind: 'opening', parent: 'case', ...inside },
    ...records,
  ];
  const read = checkJob(job);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return setOut(read.job);
}

const codes = (of: SetOut) => of.snags.map((s) => [s.code, s.where.path]);

describe('things to be held', () => {
  test('load what they stand on, all of them', () => {
    const held = outOf({}, { ...radio, width: '200 mm', count: 2 });
    expect(codes(held)).toEqual([]);
    expect(held.surfaces.find((s) => s.part === 'case/bottom')!.loadKg).toBe(18);
  });

  test('that need more than there is are told, with what is lacking', () => {
    const two = outOf({}, { ...radio, count: 2 });
    expect(codes(two)).toEqual([['things.do-not-fit', 'design/records/radio/width']]);
    // Two of 440 mm and three times 20 mm, in 600 mm less two boards of 18 mm.
    expect(two.snags[0]!.sentence).toContain('940 mm of width are needed in “inside”, and there are 564 mm');
    expect(codes(outOf({}, { ...radio, behind: '90 mm' }))).toEqual([
      ['things.do-not-fit', 'design/records/radio/depth'],
    ]);
  });

  test('stand below the lowest shelf of their opening', () => {
    const shelf = { id: 'shelf', kind: 'shelf', parent: 'inside', at: '160 mm' };
    expect(codes(outOf({}, radio, shelf))).toEqual([['things.do-not-fit', 'design/records/radio/height']]);
    expect(codes(outOf({}, radio, { ...shelf, at: '170 mm' }))).toEqual([]);
  });

  test('give their sizes to formulas', () => {
    const bays = [
      { id: 'left', kind: 'opening', parent: 'inside', size: 'radio.width + 2 * radio.clear' },
      { id: 'right', kind: 'opening', parent: 'inside' },
      { ...radio, parent: 'left' },
    ];
    const made = outOf({ split: 'across' }, ...bays);
    expect(codes(made)).toEqual([]);
    expect(made.ledger.ticks(made.dimensions.get('left.width')!) / 3200).toBe(480);
  });

  const door = {
    ...{ id: 'door', kind: 'door', parent: 'case', board: 'birch18' },
    ...{ over: ['inside'], hang: 'inset' },
  };

  test('that get warm behind a door are told', () => {
    const warm = outOf({}, { ...radio, heat: 60 }, door);
    expect(codes(warm)).toContainEqual(['things.warm', 'design/records/radio/heat']);
    expect(codes(outOf({}, { ...radio, heat: 60 }))).toEqual([]);
    const sliding = { id: 'doors', kind: 'sliding-doors', parent: 'case', board: 'birch6', over: ['inside'] };
    expect(codes(outOf({}, { ...radio, heat: 60 }, sliding))).toContainEqual([
      'things.warm',
      'design/records/radio/heat',
    ]);
  });

  test('are not told where vents let their heat out', () => {
    const back = { id: 'back', kind: 'back', parent: 'case', board: 'birch6', fitting: 'applied' };
    const vents = (heat: string) =>
      ['fromBelow', 'fromAbove'].map((at) => ({
        id: `vent-${at}`,
        kind: 'vent',
        parent: 'back',
        in: 'inside',
        form: 'slots',
        heat,
        [at]: '80 mm',
      }));
    const of = (heat: string) => codes(outOf({}, { ...radio, heat: 60 }, back, door, ...vents(heat)));
    expect(of('60 W')).not.toContainEqual(['things.warm', 'design/records/radio/heat']);
    expect(of('20 W')).toContainEqual(['things.warm', 'design/records/radio/heat']);
  });
});
