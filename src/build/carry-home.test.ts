import { expect, test } from 'vitest';
import { built, builtExample, demoDocument, mm } from '../../test/build/built.ts';
import { markWords } from './mark-words.ts';

const kitchen = builtExample('hall-kitchen');
const card = (id: string) => kitchen.build.operations.find((o) => o.id === id)!;

test('the heaviest case of a run is told, and as many people as can carry it', () => {
  const { lines, cautions } = card('home/carry');
  // 74 kg without doors; the three of this shop lift 30, 30 and 25 kg.
  expect(lines.join(' ')).toMatch(/The heaviest weighs about 7\d kg without what goes on its own/);
  expect(cautions.join(' ')).toContain('Lift with three people');
});

test('doors that are known of are told with what goes through them lying', () => {
  const { lines, lengths } = card('home/carry');
  expect(lines[0]).toContain('what is higher goes through lying');
  expect(lengths.map((t) => mm(kitchen, t))).toEqual(expect.arrayContaining([900, 2000, 2100]));
});

test('a case with its base on is tipped over a beam as high as the base', () => {
  const turns = kitchen.build.operations.filter((o) => o.title.endsWith('upright'));
  expect(turns.length).toBe(9);
  for (const { lines, lengths } of turns) {
    expect(lines.join(' ')).toContain('over a beam {0} high');
    expect(mm(kitchen, lengths[0]!)).toBe(100);
    // The base stands back 50 mm from the edging, which is 5 mm thick: the beam fits under the sides themselves.
    expect(mm(kitchen, lengths[1]!)).toBe(45);
  }
});

test('two bumpers a door are stuck on when the doors go back for good', () => {
  const words = card('home/put-back').lines.join(' ');
  const doors = kitchen.drawn.doors.filter((d) => d.hang === 'overlay');
  expect(words).toContain('two bumpers');
  const marks = doors.map((d) => kitchen.drawn.parts.find((p) => p.id === d.part)!.mark);
  expect(words).toContain(`on the inside of ${markWords(marks)} each`);
});

test('of tops of several heights those within reach get one coat more', () => {
  const { title, lines } = card('finish/top-coat');
  expect(title).toContain('on the tops, which wear most');
  const tops = kitchen.drawn.parts.filter(
    (p) => p.mark.startsWith('C') && mm(kitchen, p.place.origin[2]) < 1500,
  );
  expect(tops.length).toBe(7);
  expect(lines[0]).toContain(`The upper face of ${markWords(tops.map((p) => p.mark))} alone`);
});

test('when the piece may be used and loaded is told by the labels of its finish and its glue', () => {
  const resting = (rack: object) => {
    const demo = demoDocument();
    const shop = { ...demo.shop, rack: { ...(demo.shop.rack as object), ...rack } };
    const carry = built({ ...demo, shop }).build.operations.find((o) => o.id === 'home/carry')!;
    return carry.lines.find((l) => l.startsWith('It may be used'));
  };
  expect(resting({})).toBe(
    'It may be used with care 24 h to 7 days after the last coat. Nothing heavy on its glued joints sooner than 24 h after they were clamped.',
  );
  const adhesives = [{ id: 'pot', name: 'Pot glue', material: 'pva', label: { cureHours: 12 } }];
  const finishes = [{ id: 'tin', name: 'Tin oil', material: 'hardwax-oil', label: { readyHours: 72 } }];
  expect(resting({ adhesives, finishes })).toBe(
    'It may be used with care 3 days after the last coat, as the label of Tin oil says. Nothing heavy on its glued joints sooner than 12 h after they were clamped, as the label of Pot glue says.',
  );
});
