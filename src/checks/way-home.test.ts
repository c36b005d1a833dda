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

test('what is as wide as a doorway lets through goes through it, and not a tenth of a millimetre more', () => {
  const asWide = (width: string, hall: string) => {
    const doors = [
      { id: 'hall', width: hall, height: '500 mm' },
      { id: 'stair', width: '900 mm', height: '2000 mm' },
    ];
    const records = plain.design.records.map((r) => (r.kind === 'piece' ? { ...r, width } : r));
    return checkInput({ ...plain, design: { records }, shop: { ...plain.shop, wayHome: { doors } } });
  };
  // The bookcase is 900 mm high, so that only across its width it goes under a lintel at 500 mm.
  const input = asWide('doorway.through', '750 mm');
  expect(input.setOut.ledger.ticks(input.setOut.overall.width)).toBe(720 * 3200);
  expect(wayHome(input)).toEqual([]);
  expect(codes(wayHome(asWide('doorway.through + 0.1 mm', '750 mm')))).toEqual(['way.door-too-narrow']);
  const inches = asWide('doorway.through', '29 1/2 in');
  expect(inches.setOut.ledger.ticks(inches.setOut.overall.width)).toBe(
    Math.round(29.5 * 25.4 * 3200) - 30 * 3200,
  );
  expect(wayHome(inches)).toEqual([]);
});

test('nothing is said of a way that nobody has measured', () => {
  expect(wayHome(checkInput(plain))).toEqual([]);
});
