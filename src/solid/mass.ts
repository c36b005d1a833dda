import type { Point } from './shape.ts';
import type { Body } from './solids.ts';

/** A body and how heavy its material is, in kilograms a cubic metre. */
export interface HeavyBody {
  readonly body: Pick<Body, 'volume' | 'centre'>;
  readonly density: number;
}

/** What a thing weighs and the point it would balance on. */
export interface Mass {
  readonly kg: number;
  /** Centre of mass in millimetres; of a thing without mass the origin. */
  readonly centre: Point;
}

const CUBIC_MM_PER_CUBIC_METRE = 1e9;

/** Mass of one body: volume times density. Throws on a density that is negative or not a number. */
export function massOf({ body, density }: HeavyBody): Mass {
  if (!(density >= 0 && density < Infinity)) throw new RangeError(`not a density: ${density}`);
  return { kg: (body.volume() / CUBIC_MM_PER_CUBIC_METRE) * density, centre: body.centre() };
}

/** Several masses as one: their sum, and the mean of their centres weighed by mass. */
export function massTogether(of: readonly Mass[]): Mass {
  let kg = 0;
  let x = 0;
  let y = 0;
  let z = 0;
  for (const mass of of) {
    kg += mass.kg;
    x += mass.kg * mass.centre[0];
    y += mass.kg * mass.centre[1];
    z += mass.kg * mass.centre[2];
  }
  return { kg, centre: kg === 0 ? [0, 0, 0] : [x / kg, y / kg, z / kg] };
}
