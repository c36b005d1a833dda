import { fromMm, type LengthRow } from '../measure/index.ts';
import type { Range, Sourced } from './sourced.ts';

/** A finish, its coats and its times. Figures are typical of published labels; the label rules. */
export interface Finish extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly coats: Range;
  /** One coat, on sealed wood. */
  readonly coverageM2PerL: number;
  readonly recoatHours: Range;
  /** Until it may be used with care. */
  readonly readyHours: Range;
  readonly fullCureDays: Range;
  readonly solidsByVolume: Range;
  readonly note: string;
  /** What stands on the wood is wiped off again; a film is left as it is brushed. */
  readonly wiped: boolean;
  /** Its vapour may burn. */
  readonly burns: boolean;
  readonly cautions: readonly string[];
}

const LABELS = 'typical of published product labels; from memory';

/** Cloths with drying oil heat themselves. */
export const OILY_CLOTHS =
  'Cloths wet with drying oil can set themselves on fire: lay them flat to dry outdoors, or put them in water in a closed metal can.';
const FUMES = 'Flammable and harmful to breathe: air the room, no flame or sparks, wear a vapour mask.';
const SANDING = 'Wear a dust mask when sanding between coats.';

/** Every finish. */
export const FINISHES: readonly Finish[] = [
  {
    id: 'wiping-varnish',
    name: 'wipe-on oil and varnish',
    coats: [3, 4],
    coverageM2PerL: 12.3,
    recoatHours: [8, 24],
    readyHours: [24, 72],
    fullCureDays: [7, 30],
    solidsByVolume: [0.2, 0.35],
    note: 'Wipe off what has not soaked in after 10 to 15 minutes.',
    wiped: true,
    burns: true,
    cautions: [OILY_CLOTHS, FUMES],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'oil-polyurethane',
    name: 'brushing polyurethane, oil-borne',
    coats: [2, 3],
    coverageM2PerL: 11,
    recoatHours: [4, 24],
    readyHours: [24, 72],
    fullCureDays: [7, 30],
    solidsByVolume: [0.4, 0.5],
    note: 'Rub down with 220 grit between coats.',
    wiped: false,
    burns: true,
    cautions: [FUMES, OILY_CLOTHS, SANDING],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'water-polyurethane',
    name: 'polyurethane, water-borne',
    coats: [3, 4],
    coverageM2PerL: 11,
    recoatHours: [2, 4],
    readyHours: [24, 72],
    fullCureDays: [7, 21],
    solidsByVolume: [0.28, 0.35],
    note: 'It raises the grain: wet the wood, let it dry and sand with 320 grit first.',
    wiped: false,
    burns: false,
    cautions: ['Air the room.', SANDING],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'shellac',
    name: 'shellac, 2 lb cut',
    coats: [2, 4],
    coverageM2PerL: 12.3,
    recoatHours: [0.5, 1],
    readyHours: [4, 24],
    fullCureDays: [1, 7],
    solidsByVolume: [0.18, 0.22],
    note: 'Mixed shellac keeps about six months. Alcohol and heat mark it.',
    wiped: false,
    burns: true,
    cautions: [FUMES],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'lacquer',
    name: 'brushing lacquer',
    coats: [3, 4],
    coverageM2PerL: 6.1,
    recoatHours: [1, 2],
    readyHours: [8, 24],
    fullCureDays: [7, 21],
    solidsByVolume: [0.18, 0.25],
    note: 'Work fast, one stroke to a place.',
    wiped: false,
    burns: true,
    cautions: [FUMES],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'hardwax-oil',
    name: 'hardwax oil',
    coats: [1, 2],
    coverageM2PerL: 28.2,
    recoatHours: [8, 24],
    readyHours: [24, 168],
    fullCureDays: [7, 30],
    solidsByVolume: [0.5, 0.95],
    note: 'Spread it thin and buff it off.',
    wiped: true,
    burns: true,
    cautions: [OILY_CLOTHS],
    source: LABELS,
    confirmed: false,
  },
];

/** A finish by its id (`hardwax-oil`); undefined when it isn't in the table. */
export function finish(id: string): Finish | undefined {
  return FINISHES.find((f) => f.id === id);
}

/**
 * Theoretical coverage, m2 a litre: 1000 x solids by volume / dry film in micrometres x the share that reaches the
 * work. Source: the coating trade's spreading rate (1604 ft2 a US gallon at 1 mil).
 */
export function coverageM2PerL(solidsByVolume: number, dryFilmUm: number, reaching = 1): number {
  return (1000 * solidsByVolume * reaching) / dryFilmUm;
}

/**
 * What one coat adds to a face at most: all the solids of the label's upper figure, spread as far as the label says.
 * Wood that drinks keeps less of it outside.
 */
export function dryFilm({ id, name, solidsByVolume, coverageM2PerL: spread }: Finish): LengthRow {
  return {
    id: `finish.film.${id}`,
    value: fromMm(solidsByVolume[1] / spread),
    says: `one coat of ${name} dries to at most this: solids by volume ${solidsByVolume[1]}, spread over ${spread} m² a litre`,
    source: LABELS,
  };
}

/** What a coat of each finish adds to a face. */
export const FILMS: readonly LengthRow[] = FINISHES.map(dryFilm);

/** Grits to go through, coarse to fine. */
export const SANDING_GRITS: Readonly<
  Record<'hardwood' | 'softwood', { readonly grits: readonly number[] } & Sourced>
> = {
  hardwood: { grits: [120, 150, 180, 220], source: 'finishing guides', confirmed: true },
  softwood: { grits: [120, 180, 220, 320], source: 'finishing guides', confirmed: true },
};
