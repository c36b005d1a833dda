import type { Sourced } from './sourced.ts';

/** A solid wood, at 12% moisture content. Averages of small clear specimens: no design values. */
export interface Species extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly hardwood: boolean;
  /** Ovendry mass over volume at 12%. */
  readonly specificGravity: number;
  /** 1000 G (1 + 12/100): mass over volume, both at 12%. */
  readonly densityKgM3: number;
  /** Modulus of elasticity along the grain, from centre-loaded beams of span/depth 14: shear is already in it. */
  readonly moeMpa: number;
  /** Modulus of rupture and side hardness, where tabulated. */
  readonly morMpa?: number;
  readonly hardnessN?: number;
  /** Change of width per width and point of moisture content, 6 to 14%, radial and tangential. */
  readonly movement?: { readonly radial: number; readonly tangential: number } & Sourced;
}

type Row = readonly [
  id: string,
  name: string,
  specificGravity: number,
  moeMpa: number,
  morMpa: number,
  hardnessN: number,
  radial: number,
  tangential: number,
  movementConfirmed: boolean,
];

const WOOD_HANDBOOK = 'Wood Handbook, FPL-GTR-190 (2010) and FPL-GTR-282 (2021), ch. 5, Table 5-3a, 12% rows';
const MOVEMENT = 'Wood Handbook, FPL-GTR-190 (2010), ch. 13, Table 13-5';

// Where the movement is unconfirmed it is from memory of the same table.
const HARDWOODS: readonly Row[] = [
  ['alder-red', 'red alder', 0.41, 9500, 68, 2600, 0.00151, 0.00256, true],
  ['ash-black', 'black ash', 0.49, 11000, 87, 3800, 0.00172, 0.00274, true],
  ['ash-white', 'white ash', 0.6, 12000, 103, 5900, 0.00169, 0.00274, true],
  ['ash-green', 'green ash', 0.56, 11400, 97, 5300, 0.00169, 0.00274, true],
  ['aspen-quaking', 'quaking aspen', 0.38, 8100, 58, 1600, 0.00119, 0.00234, true],
  ['basswood-american', 'basswood', 0.37, 10100, 60, 1800, 0.0023, 0.0033, true],
  ['beech-american', 'American beech', 0.64, 11900, 103, 5800, 0.0019, 0.00431, true],
  ['birch-paper', 'paper birch', 0.55, 11000, 85, 4000, 0.00219, 0.00304, true],
  ['birch-sweet', 'sweet birch', 0.65, 15000, 117, 6500, 0.00256, 0.00338, true],
  ['birch-yellow', 'yellow birch', 0.62, 13900, 114, 5600, 0.00256, 0.00338, true],
  ['butternut', 'butternut', 0.38, 8100, 56, 2200, 0.00116, 0.00223, true],
  ['cherry-black', 'black cherry', 0.5, 10300, 85, 4200, 0.00126, 0.00248, true],
  ['chestnut-american', 'American chestnut', 0.43, 8500, 59, 2400, 0.00116, 0.00234, true],
  ['elm-american', 'American elm', 0.5, 9200, 81, 3700, 0.00144, 0.00338, true],
  ['hackberry', 'hackberry', 0.53, 8200, 76, 3900, 0.00165, 0.00315, true],
  ['hickory-pecan', 'pecan hickory', 0.66, 11900, 94, 8100, 0.00169, 0.00315, true],
  ['hickory-shagbark', 'shagbark hickory', 0.72, 14900, 139, 8400, 0.00259, 0.00411, false],
  ['maple-red', 'red maple', 0.54, 11300, 92, 4200, 0.00137, 0.00289, true],
  ['maple-bigleaf', 'bigleaf maple', 0.48, 10000, 74, 3800, 0.00126, 0.00248, true],
  ['maple-silver', 'silver maple', 0.47, 7900, 61, 3100, 0.00102, 0.00252, true],
  ['maple-sugar', 'sugar maple', 0.63, 12600, 109, 6400, 0.00165, 0.00353, true],
  ['oak-northern-red', 'northern red oak', 0.63, 12500, 99, 5700, 0.00158, 0.00369, true],
  ['oak-southern-red', 'southern red oak', 0.59, 10300, 75, 4700, 0.00158, 0.00369, true],
  ['oak-white', 'white oak', 0.68, 12300, 105, 6000, 0.0018, 0.00365, true],
  ['sweetgum', 'sweetgum', 0.52, 11300, 86, 3800, 0.00183, 0.00365, true],
  ['sycamore-american', 'American sycamore', 0.49, 9800, 69, 3400, 0.00172, 0.00296, true],
  ['tupelo-black', 'black tupelo', 0.5, 8300, 66, 3600, 0.00176, 0.00308, true],
  ['walnut-black', 'black walnut', 0.55, 11600, 101, 4500, 0.0019, 0.00274, true],
  ['yellow-poplar', 'yellow poplar', 0.42, 10900, 70, 2400, 0.00158, 0.00289, false],
];

const SOFTWOODS: readonly Row[] = [
  ['baldcypress', 'bald cypress', 0.46, 9900, 73, 2300, 0.0013, 0.00216, false],
  ['cedar-incense', 'incense cedar', 0.37, 7200, 55, 2100, 0.00112, 0.0018, false],
  ['cedar-western-red', 'western red cedar', 0.32, 7700, 51.7, 1600, 0.00111, 0.00234, false],
  ['douglas-fir-coast', 'coast Douglas-fir', 0.48, 13400, 85, 3200, 0.00165, 0.00267, false],
  ['fir-white', 'white fir', 0.39, 10300, 68, 2100, 0.00112, 0.00245, true],
  ['hemlock-western', 'western hemlock', 0.45, 11300, 78, 2400, 0.00144, 0.00274, false],
  ['pine-eastern-white', 'eastern white pine', 0.35, 8500, 59, 1700, 0.00071, 0.00212, false],
  ['pine-loblolly', 'loblolly pine', 0.51, 12300, 88, 3100, 0.00165, 0.00259, false],
  ['pine-lodgepole', 'lodgepole pine', 0.41, 9200, 65, 2100, 0.00148, 0.00234, false],
  ['pine-longleaf', 'longleaf pine', 0.59, 13700, 100, 3900, 0.00176, 0.00263, false],
  ['pine-ponderosa', 'ponderosa pine', 0.4, 8900, 65, 2000, 0.00133, 0.00216, false],
  ['pine-sugar', 'sugar pine', 0.36, 8200, 57, 1700, 0.00099, 0.00194, false],
  ['redwood-old-growth', 'redwood, old growth', 0.4, 9200, 69, 2100, 0.0012, 0.00205, false],
  ['spruce-sitka', 'Sitka spruce', 0.4, 10800, 70, 2300, 0.00148, 0.00263, false],
];

// European woods: mean density at 12% in kg/m3 and modulus of elasticity in MPa, both from memory.
const EUROPEAN: readonly (readonly [string, string, boolean, number, number])[] = [
  ['ash-european', 'European ash', true, 680, 12300],
  ['beech-european', 'European beech', true, 710, 14300],
  ['birch-silver', 'silver birch', true, 640, 14000],
  ['cherry-sweet', 'sweet cherry', true, 600, 10500],
  ['maple-sycamore', 'sycamore maple', true, 615, 9900],
  ['oak-european', 'European oak', true, 675, 10600],
  ['walnut-european', 'European walnut', true, 640, 10800],
  ['larch-european', 'European larch', false, 575, 11800],
  ['pine-scots', 'Scots pine', false, 550, 10100],
  ['spruce-norway', 'Norway spruce', false, 440, 11000],
];

/** Density at 12% moisture content, kg/m3, of a wood of the given specific gravity (ovendry mass, volume at 12%). */
export function densityAt12(specificGravity: number): number {
  return Math.round(1120 * specificGravity);
}

function tabulated(rows: readonly Row[], hardwood: boolean): Species[] {
  return rows.map(([id, name, specificGravity, moeMpa, morMpa, hardnessN, radial, tangential, known]) => ({
    id,
    name,
    hardwood,
    specificGravity,
    densityKgM3: densityAt12(specificGravity),
    moeMpa,
    morMpa,
    hardnessN,
    movement: { radial, tangential, source: known ? MOVEMENT : 'from memory', confirmed: known },
    source: WOOD_HANDBOOK,
    confirmed: true,
  }));
}

/** Every species, in the order of its tables. */
export const SPECIES: readonly Species[] = [
  ...tabulated(HARDWOODS, true),
  ...tabulated(SOFTWOODS, false),
  ...EUROPEAN.map(
    ([id, name, hardwood, densityKgM3, moeMpa]): Species => ({
      id,
      name,
      hardwood,
      specificGravity: Math.round((densityKgM3 / 1120) * 100) / 100,
      densityKgM3,
      moeMpa,
      source: 'from memory',
      confirmed: false,
    }),
  ),
];

const BY_ID = new Map(SPECIES.map((s) => [s.id, s]));

/** A species by its id (`ash-white`); undefined when it isn't in the table. */
export function species(id: string): Species | undefined {
  return BY_ID.get(id);
}
