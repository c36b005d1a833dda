import { fromInches, fromMm, type LengthRow, type Ticks } from '../measure/index.ts';

const PRACTICE = 'common practice';

function row(id: string, value: Ticks, says: string): LengthRow {
  return { id, value, says, source: PRACTICE };
}

/** A pocket hole leans this much from the face it is bored into. */
export const POCKET_DEGREES = 15;

/** What a pocket hole measures. Its axis leaves the joint face at half the thickness. */
export const POCKET_HOLE = {
  bore: row('pocket.bore', fromMm(9.5), 'the bore of a pocket hole, room for the head, is 9.5 mm wide'),
  shank: row('pocket.shank', fromMm(4), 'the shank goes through a hole of 4 mm at the end of the pocket'),
  thinnest: row('pocket.thinnest', fromMm(12), 'boards thinner than 12 mm are not pocketed'),
} as const;

/** Stock from this thickness (mm) up takes a pocket screw of this length (inches). */
const LENGTHS: readonly (readonly [fromMm: number, screwIn: number, stock: string])[] = [
  [12, 1, '1/2 in'],
  [14.5, 1, '5/8 in'],
  [17, 1.25, '3/4 in (18 mm)'],
  [20.6, 1.5, '7/8 in'],
  [23.8, 1.5, '1 in'],
  [28.5, 2, '1-1/4 in'],
  [33.3, 2, '1-3/8 in'],
  [36.5, 2.5, '1-1/2 in'],
];
const THICKEST_MM = 40;

/**
 * The length of pocket screw that goes with a board of a thickness when both boards are as thick; undefined when
 * the board is too thin (under 12 mm) or too thick (over 40 mm) for pockets. Into a thinner mate the reach decides.
 */
export function pocketScrewLength(stock: Ticks): LengthRow | undefined {
  if (stock > fromMm(THICKEST_MM)) return undefined;
  const found = LENGTHS.findLast(([from]) => fromMm(from) <= stock);
  if (found === undefined) return undefined;
  const [from, screwIn, name] = found;
  return row(
    `pocket.screw.${from}`,
    fromInches(screwIn),
    `boards of ${name} take pocket screws of ${screwIn} in`,
  );
}

/** How far a pocket screw reaches into the mate, and how far it has wandered toward a face, mm. */
export interface PocketReach {
  readonly deepMm: number;
  readonly driftMm: number;
}

/**
 * Geometry of a pocket screw of length L with `inside` of it in the pocketed board: it enters the mate
 * (L - inside) cos 15 deep, square to the joint, and (L - inside) sin 15 aside. To a thousandth of a millimetre.
 */
export function pocketReach(lengthMm: number, insideMm: number): PocketReach {
  const angle = (POCKET_DEGREES * Math.PI) / 180;
  const thousandths = (x: number) => Math.round(x * 1000) / 1000;
  const out = lengthMm - insideMm;
  return { deepMm: thousandths(out * Math.cos(angle)), driftMm: thousandths(out * Math.sin(angle)) };
}

/** Which thread a pocket screw has: coarse in softwood, plywood and fibreboard, fine in hardwood. */
export function pocketThread(material: 'hardwood' | 'softwood' | 'panel'): 'coarse' | 'fine' {
  return material === 'hardwood' ? 'fine' : 'coarse';
}
