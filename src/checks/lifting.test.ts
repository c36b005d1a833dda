import { expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { checkInput, codes } from '../../test/checks/checked-job.ts';
import { lifting } from './lifting.ts';

const BOARD = {
  thickness: '18 mm',
  stock: [{ id: 'sheet', length: '2500 mm', width: '1250 mm', price: 90 }],
};
const by = (...lifts: string[]) =>
  bookcase({
    width: '800 mm',
    load: '10 kg',
    board: BOARD,
    people: lifts.map((lift, i) => ({ id: `p${i}`, lift })),
  });

test('a birch sheet of 2.5 x 1.25 m, 18 mm, 680 kg/m3 weighs 38.25 kg (3000 x 1500: 55.08)', () => {
  const snag = lifting(checkInput(by('20 kg', '20 kg'))).find((s) => s.code === 'lifting.sheet')!;
  expect(snag.level).toBe('mind');
  // The sides come from a sheet of 3000 x 1500, the heavier of the two.
  expect(snag.figures).toEqual({ value: 55.08, limit: 40, margin: -15.08, unit: 'kg' });
  expect(snag.sentence).toContain('the 2 people of the shop together lift 40 kg');
});

test('two who can lift it have nothing to mind', () => {
  expect(lifting(checkInput(by('28 kg', '28 kg')))).toEqual([]);
});

test('the finished piece counts as well, and one person alone is spoken of as one', () => {
  const snag = lifting(checkInput(by('15 kg'))).find((s) => s.code === 'lifting.piece')!;
  expect(snag.sentence).toContain('the one person of the shop lifts 15 kg');
  expect(snag.where.record).toBe('bookcase');
});

test('a shop that names nobody is not told what nobody can lift', () => {
  expect(codes(lifting(checkInput(by())))).toEqual([]);
});
