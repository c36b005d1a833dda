import { expect, test } from 'vitest';
import { bookcase } from '../../test/checks/bookcase.ts';
import { checkInput, codes } from '../../test/checks/checked-job.ts';
import type { JobDocument } from '../job/index.ts';
import { wayHome } from './way-home.ts';

const BOARD = {
  thickness: '18 mm',
  stock: [{ id: 'sheet', length: '2500 mm', width: '1250 mm', price: 90 }],
};
/** A bookcase 800 mm wide, 300 mm deep and 900 mm high. */
const plain = bookcase({ width: '800 mm', load: '10 kg', board: BOARD, people: [] });

function by(way: NonNullable<JobDocument['shop']['wayHome']>) {
  return wayHome(checkInput({ ...plain, shop: { ...plain.shop, wayHome: way } }));
}

test('a ceiling above the diagonal of the side is high enough; between height and diagonal it isn’t stood up', () => {
  // Pythagoras, across the narrower side: 900 and 300 make 948.7.
  expect(codes(by({ ceiling: '949 mm' }))).toEqual([]);
  expect(codes(by({ ceiling: '948 mm' }))).toEqual(['way.not-stood-up']);
  expect(codes(by({ ceiling: '900 mm' }))).toEqual(['way.not-stood-up']);
  expect(codes(by({ ceiling: '899 mm' }))).toEqual(['way.too-tall']);
});

test('it goes through a door with its two least sides, and room for hands', () => {
  const door = (w: number, h: number) => by({ doors: [{ id: 'gate', width: `${w} mm`, height: `${h} mm` }] });
  expect(codes(door(330, 815))).toEqual([]);
  expect(codes(door(328, 814))).toEqual(['way.door-too-narrow']);
  const [snag] = door(280, 3000);
  expect(snag!.where.path).toBe('shop/wayHome/doors/gate');
  expect(snag!.sentence).toContain('“gate”');
});

test('nothing is said of a way that nobody has measured', () => {
  expect(wayHome(checkInput(plain))).toEqual([]);
});
