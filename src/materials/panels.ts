import type { Range, Sourced } from './sourced.ts';

/** How stiff a panel of one nominal thickness is; plywood differs with the way its face grain runs. */
export interface PanelStiffness extends Sourced {
  /** Absent: any thickness. */
  readonly nominalMm?: number;
  readonly plies?: number;
  /** Thickness found in practice. */
  readonly thicknessMm?: Range;
  /** Modulus of elasticity in bending with the face grain along the span. */
  readonly parallelMpa: number;
  /** The same with the face grain across the span; undefined where no figure was found. */
  readonly perpendicularMpa?: number;
}

/** A sheet material. */
export interface Panel extends Sourced {
  readonly id: string;
  readonly name: string;
  readonly kind: 'plywood' | 'particleboard' | 'mdf' | 'osb';
  /** Whether its faces show a grain that cutting must mind. */
  readonly grained: boolean;
  readonly densityKgM3: number;
  readonly densitySource: string;
  readonly stiffness: readonly PanelStiffness[];
}

const FINNISH =
  'Handbook of Finnish Plywood, Finnish Forest Industries Federation (2002, 2007), bending table, 1.4 mm veneers; from memory';
const AWS = 'Architectural Woodwork Standards, 1st ed. (2009), section 10';

/** Thickness, plies, thickness found, MPa along and across the face grain. The two sum to 17,500 in every row. */
const BIRCH: readonly (readonly [number, number, Range, number, number])[] = [
  [6.5, 5, [6.1, 6.9], 12737, 4763],
  [9, 7, [8.8, 9.5], 11395, 6105],
  [12, 9, [11.5, 12.5], 10719, 6781],
  [15, 11, [14.3, 15.3], 10316, 7184],
  [18, 13, [17.1, 18.1], 10048, 7452],
  [21, 15, [20.0, 20.9], 9858, 7642],
  [24, 17, [22.9, 23.7], 9717, 7783],
];

/** Every panel. */
export const PANELS: readonly Panel[] = [
  {
    id: 'birch-plywood',
    name: 'birch plywood',
    kind: 'plywood',
    grained: true,
    densityKgM3: 680,
    densitySource: FINNISH,
    stiffness: BIRCH.map(([nominalMm, plies, thicknessMm, parallelMpa, perpendicularMpa]) => ({
      nominalMm,
      plies,
      thicknessMm,
      parallelMpa,
      perpendicularMpa,
      source: FINNISH,
      confirmed: false,
    })),
    source: FINNISH,
    confirmed: false,
  },
  {
    id: 'fir-plywood',
    name: 'Douglas-fir plywood',
    kind: 'plywood',
    grained: true,
    densityKgM3: 540,
    densitySource: 'from memory',
    // 950,000 psi
    stiffness: [{ parallelMpa: 6550, source: `${AWS}, 4.4.14.10.11`, confirmed: true }],
    source: `${AWS}, 4.4.14.10.11`,
    confirmed: true,
  },
  {
    id: 'fir-core-hardwood-plywood',
    name: 'fir-core plywood faced with hardwood',
    kind: 'plywood',
    grained: true,
    densityKgM3: 560,
    densitySource: 'from memory',
    // 1,800,000 psi
    stiffness: [{ parallelMpa: 12411, source: `${AWS}, 4.4.14.10.12`, confirmed: true }],
    source: `${AWS}, 4.4.14.10.12`,
    confirmed: true,
  },
  {
    id: 'hardwood-plywood',
    name: 'hardwood plywood',
    kind: 'plywood',
    grained: true,
    densityKgM3: 600,
    densitySource: 'from memory',
    stiffness: [
      {
        // The low end of 6.96 to 8.55 GPa.
        parallelMpa: 6960,
        source: 'Wood Handbook, FPL-GTR-190 (2010), ch. 12, Table 12-1; from memory',
        confirmed: false,
      },
    ],
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'mdf',
    name: 'MDF',
    kind: 'mdf',
    grained: false,
    densityKgM3: 740,
    densitySource: 'from memory',
    stiffness: [
      {
        parallelMpa: 2160,
        perpendicularMpa: 2160,
        source: 'ANSI A208.2-2009 Table 2, grade 130; from memory. Mills have been found below the grade',
        confirmed: false,
      },
    ],
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'particleboard',
    name: 'particleboard',
    kind: 'particleboard',
    grained: false,
    // The middle of the medium density band, 640 to 800 kg/m3.
    densityKgM3: 720,
    densitySource: 'ANSI A208.1-2009, medium density band',
    stiffness: [
      {
        parallelMpa: 2000,
        perpendicularMpa: 2000,
        source: 'ANSI A208.1-2009 Table A, grade M-2; from memory',
        confirmed: false,
      },
    ],
    source: 'from memory',
    confirmed: false,
  },
  {
    id: 'osb',
    name: 'oriented strand board',
    kind: 'osb',
    grained: false,
    densityKgM3: 640,
    densitySource: 'from memory',
    stiffness: [
      {
        // The low ends of 4.41 to 6.31 and 1.92 to 3.17 GPa.
        parallelMpa: 4410,
        perpendicularMpa: 1920,
        source: 'Wood Handbook, FPL-GTR-190 (2010), ch. 12, Table 12-3',
        confirmed: true,
      },
    ],
    source: 'Wood Handbook, FPL-GTR-190 (2010), ch. 12, Table 12-3',
    confirmed: true,
  },
];

const BY_ID = new Map(PANELS.map((p) => [p.id, p]));

/** A panel by its id (`birch-plywood`); undefined when it isn't in the table. */
export function panel(id: string): Panel | undefined {
  return BY_ID.get(id);
}

/** How stiff a panel is at a thickness: the row of the nearest nominal thickness, the thinner of two as near. */
export function panelStiffness(id: string, thicknessMm: number): PanelStiffness | undefined {
  const away = (s: PanelStiffness) => Math.abs((s.nominalMm ?? thicknessMm) - thicknessMm);
  return panel(id)?.stiffness.reduce((best, s) => (away(s) < away(best) ? s : best));
}

/** A size that sheets are sold in. */
export interface SheetSize extends Sourced {
  readonly id: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly of: readonly string[];
}

/** Trade sizes of sheets, the longer side first (the grain of a European birch sheet may run either way). */
export const SHEET_SIZES: readonly SheetSize[] = [
  {
    id: '8x4',
    lengthMm: 2440,
    widthMm: 1220,
    of: ['birch-plywood', 'fir-plywood', 'fir-core-hardwood-plywood', 'hardwood-plywood', 'osb'],
    source: 'PS 1 and EN 315 mill tables (48 x 96 in)',
    confirmed: true,
  },
  {
    id: '2500x1250',
    lengthMm: 2500,
    widthMm: 1250,
    of: ['birch-plywood'],
    source: 'EN 315 mill tables',
    confirmed: true,
  },
  {
    id: '5x5',
    lengthMm: 1525,
    widthMm: 1525,
    of: ['birch-plywood'],
    source: 'common practice (60 x 60 in)',
    confirmed: true,
  },
  {
    id: '97x49',
    lengthMm: 2464,
    widthMm: 1245,
    of: ['mdf', 'particleboard'],
    source: 'common practice (49 x 97 in)',
    confirmed: false,
  },
];
