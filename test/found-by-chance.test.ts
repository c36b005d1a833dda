import { expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { pinFaults } from './generate/judge-pins.ts';
import { shop } from './generate/shop.ts';

// Faults that generated designs once showed, each as small as it could be made.

const document = (units: 'mm' | 'in', thick: string, records: readonly object[]) => ({
  version: 1,
  design: { records },
  shop: shop(
    units,
    {
      board: thick,
      other: thick,
      thin: '3 mm',
      strip: '5 mm',
      lip: '8 mm',
      taped: false,
      wood: 'birch-plywood',
    },
    undefined,
  ),
  work: {},
});

test('cases that share sides, glued one on to the other: each is checked for square behind its own glue-up', async () => {
  const box = { kind: 'case', parent: 'row', board: 'board', joints: 'face-screws' };
  const of = built(
    equipped(
      document('in', '10/16"', [
        {
          id: 'piece',
          kind: 'piece',
          name: 'A piece',
          width: '43 3/4"',
          height: '34 4/16"',
          depth: '19 11/16"',
        },
        { id: 'row', kind: 'group', parent: 'piece', lay: 'across' },
        { ...box, id: 'first' },
        { ...box, id: 'middle', leftSide: 'shared', rightSide: 'shared' },
        { ...box, id: 'last' },
      ]),
    ),
  );
  const at = (id: string) => of.build.operations.findIndex((o) => o.id === id);
  expect(at('case/check-square')).toBeLessThan(at('case/check-square-2'));
  expect(await dryFaults(of)).toEqual([]);
});

test('rows of pins that are moved inward, clear of others, still stand on both sides of a shelf’s middle', () => {
  const read = checkJob(
    document('mm', '18 mm', [
      { id: 'piece', kind: 'piece', name: 'A piece', width: '2223 mm', height: '1403.6 mm', depth: '180 mm' },
      { id: 'case', kind: 'case', parent: 'piece', board: 'board', lid: 'between' },
      { id: 'gap', kind: 'size', value: '3 mm' },
      { id: 'inside', kind: 'opening', parent: 'case', split: 'across' },
      { id: 'inside.1', kind: 'opening', parent: 'inside' },
      {
        id: 'inside.1.drawers',
        kind: 'drawers',
        parent: 'inside.1',
        board: 'board',
        bottomBoard: 'thin',
        frontBoard: 'board',
        hang: 'overlay',
        count: 1,
      },
      { id: 'inside.2', kind: 'opening', parent: 'inside', size: '299 mm' },
      { id: 'inside.2.pins', kind: 'pins', parent: 'inside.2' },
      { id: 'inside.3', kind: 'opening', parent: 'inside' },
      { id: 'inside.3.pins', kind: 'pins', parent: 'inside.3', back: '56 mm', setback: '18 mm' },
      { id: 'inside.3.lip', kind: 'edging', parent: 'inside.3.pins', strip: 'lip' },
      { id: 'inside.4', kind: 'opening', parent: 'inside', size: '299 mm' },
      { id: 'lipping', kind: 'edging', parent: 'case', strip: 'lip' },
    ]),
  );
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const drawn = setOut(read.job);
  expect(pinFaults(drawn)).toEqual([]);
});

test('a panel before a hidden space stands behind the lid that is pocket-screwed over it', async () => {
  const of = built(
    equipped(
      document('mm', '18 mm', [
        { id: 'piece', kind: 'piece', name: 'A piece', width: '900 mm', height: '700 mm', depth: '400 mm' },
        { id: 'case', kind: 'case', parent: 'piece', board: 'board', joints: 'pocket-screws' },
        { id: 'inside', kind: 'opening', parent: 'case', split: 'back' },
        { id: 'front', kind: 'opening', parent: 'inside' },
        { id: 'hidden', kind: 'opening', parent: 'inside', size: '45 mm' },
        { id: 'back', kind: 'back', parent: 'case', board: 'thin', fitting: 'groove' },
      ]),
    ),
  );
  const at = (id: string) => of.build.operations.findIndex((o) => o.id === id);
  expect(at('D1/set')).toBeGreaterThan(at('C1/set'));
  expect(await dryFaults(of)).toEqual([]);
});
