import { expect, test } from 'vitest';
import { built, builtExample, demoDocument } from '../../test/build/built.ts';

const first = ({ build }: ReturnType<typeof built>) =>
  build.operations.find((o) => o.id === 'gather/stock')!.lines.join('\n');

test('glue goes by the area of the joints, finish by its coats', () => {
  const of = builtExample('hall-console');
  const told = first(of);
  expect(told).toMatch(/, about \d+0 g: it is spread over [\d.]+ m² of joints/);
  const litres = Math.ceil(of.build.finishing!.litres * 10) / 10;
  expect(told).toContain(`, ${litres} l: ${of.build.finishing!.coats} coats on`);
});

test('a piece of screws alone asks for no glue; what is not on the rack is to be had', () => {
  const demo = demoDocument();
  const records = [
    { id: 'piece', kind: 'piece', name: 'Box', width: '600 mm', height: '500 mm', depth: '300 mm' },
    { id: 'case', kind: 'case', parent: 'piece', board: 'birch18', joints: 'pocket-screws' },
  ];
  const plain = { ...demo, design: { records } };
  expect(first(built(plain))).not.toContain('of joints');
  const bare = { ...demo.shop, rack: { ...(demo.shop.rack as object), finishes: [] } };
  expect(first(built({ ...plain, shop: bare }))).toContain('there is none on the rack');
});

test('doors before the case have two bumpers each; what hangs has anchors, what stands a bracket', () => {
  const cupboard = first(builtExample('hall-cupboard'));
  expect(cupboard).toContain('6 × bumper');
  expect(cupboard).toContain('An angle bracket');
  const console = first(builtExample('hall-console'));
  expect(console).toContain('two at least for X1');
  expect(console).not.toContain('bumper');
});

test('small things that cards ask for are gathered too, and no others', () => {
  const things = (name: string) =>
    first(builtExample(name))
      .split('\n')
      .filter((line) => /tape\b.*\.$|wax|compasses/i.test(line) && !/reckoned|hardwax/i.test(line));
  expect(things('glaze-cabinet')).toEqual([
    'A scrap of board for the test cut, masking tape, sandpaper from 120 to 320, double-sided tape for the fronts of drawers and candle wax or paraffin for what slides.',
  ]);
  expect(things('linen-cupboard')).toEqual([
    'A scrap of board for the test cut, masking tape, an iron and a block of hardwood for the tape, sandpaper from 120 to 320 and compasses to scribe with.',
  ]);
  expect(things('step-stool')).toEqual([]);
});

test('of every lot the first card counts what is taken, and what is to be bought; each case has its bracket', () => {
  const kitchen = builtExample('hall-kitchen');
  expect(first(kitchen)).toMatch(/14 sheets \{\d+\} × \{\d+\}: S1–S14 \(on the rack: 0, so 14 to buy\)/);
  expect(first(kitchen)).toMatch(/23 strips \{\d+\} long: L1–L23/);
  expect(first(kitchen)).toContain('9 angle brackets, one for each case');
  const fixed = kitchen.build.operations.find((o) => o.id === 'home/set-up')!.lines[0];
  expect(fixed).toContain('the tallest first (case “pantry” and case “brooms”)');
});
