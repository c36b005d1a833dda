import { fromMm, type LengthRow } from '../measure/index.ts';

const PRACTICE = 'common practice';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: PRACTICE };
}

/** The lengths by which vents are set out. Each stands in a trace as a leaf. */
export const VENTS = {
  slotLength: length('vent.slot-length', 80, 'a slot of a vent is about this long'),
  slotBit: length('vent.slot-bit', 8, 'a slot of a vent is as wide as a straight bit of about this'),
  slotWidest: length('vent.slot-widest', 12, 'wider slots let small fingers in'),
  wall: length('vent.wall', 8, 'between the openings of a vent at least this much wood is left'),
  hole: length('vent.hole', 20, 'a vent of holes has holes of about this'),
  holeWidest: length('vent.hole-widest', 26, 'holes of a vent are no wider than this'),
} as const;

/** Air at room temperature, 1.2 kg/m3 and 1005 J/(kg K): J to warm a cubic metre by a kelvin. */
const AIR = 1.2 * 1005;
const GRAVITY = 9.81;
/** Room temperature, K. */
const ROOM = 293.15;
/** Air through two openings, one way through each (ASHRAE Fundamentals, from memory). */
const DISCHARGE = 0.65;

/** How much warmer than the room the air in a cabinet may get, K (common practice). */
export const WARMER_BY = 10;

/** The air that carries some watts away when it warms by so many kelvin: cubic metres a second. Heat balance Q = P / (rho c dT). */
export function airFlow(watts: number, kelvin: number): number {
  return watts / (AIR * kelvin);
}

/**
 * The free area (mm2) that a low and a high vent must each have, so far apart (mm, middle to middle), for warm air to
 * rise by itself. Stack flow, Q = C A sqrt(2 g h dT / T), with the neutral level half way (ASHRAE Fundamentals 1997,
 * chapter 25, equation 37).
 */
export function freeArea(watts: number, kelvin: number, apartMm: number): number {
  const h = apartMm / 2000;
  const speed = DISCHARGE * Math.sqrt((2 * GRAVITY * h * kelvin) / (ROOM + kelvin));
  return Math.round((airFlow(watts, kelvin) / speed) * 1e6);
}
