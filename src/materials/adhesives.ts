import type { Range, Sourced } from './sourced.ts';

/** A glue, and how much time it leaves. Figures are typical of what makers of such glues print; the label rules. */
export interface Adhesive extends Sourced {
  readonly id: string;
  readonly name: string;
  /** From spreading to closing the joint. */
  readonly openMinutes: Range;
  /** From spreading to full pressure. */
  readonly assemblyMinutes: Range;
  /** In clamps, joint not stressed. */
  readonly clampMinutes: Range;
  /** Until the joint may be loaded. */
  readonly cureHours: number;
  readonly spreadGM2: Range;
  readonly coldestCelsius: number;
  /** What lies ready to wipe off what comes out, and what is done with it. */
  readonly cloth: string;
  readonly squeezedOut: string;
  /** Said where a glued joint is sanded level. */
  readonly sanding?: string;
  readonly cautions: readonly string[];
}

const LABELS = 'typical of published labels; from memory';
const DAMP =
  'Where the days allow, leave glued joints a day or more before you sand over them: sanded sooner they sink later, as the moisture leaves the wood.';
/** Common practice with glues that water thins. */
const WATER = {
  cloth: 'water and a damp cloth',
  squeezedOut: 'Wipe off what came out with the damp cloth, or lift it off when it is like rubber.',
  sanding: DAMP,
} as const;

/** Every adhesive. */
export const ADHESIVES: readonly Adhesive[] = [
  {
    id: 'pva',
    name: 'PVA wood glue (D2)',
    openMinutes: [5, 10],
    assemblyMinutes: [10, 20],
    clampMinutes: [30, 60],
    cureHours: 24,
    spreadGM2: [171, 244],
    coldestCelsius: 13,
    ...WATER,
    cautions: [],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'pva-d3',
    name: 'water-resistant PVA wood glue (D3)',
    openMinutes: [5, 10],
    assemblyMinutes: [8, 15],
    clampMinutes: [30, 60],
    cureHours: 24,
    spreadGM2: [171, 244],
    coldestCelsius: 13,
    ...WATER,
    cautions: [],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'hide',
    name: 'liquid hide glue',
    openMinutes: [10, 15],
    assemblyMinutes: [20, 30],
    clampMinutes: [360, 720],
    cureHours: 24,
    spreadGM2: [200, 300],
    coldestCelsius: 15,
    ...WATER,
    cloth: 'warm water and a cloth',
    squeezedOut: 'Wipe off what came out with a warm wet cloth, now or later.',
    cautions: ['Not for damp places: water softens it again.'],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'polyurethane',
    name: 'polyurethane glue',
    openMinutes: [15, 20],
    assemblyMinutes: [20, 30],
    clampMinutes: [60, 240],
    cureHours: 24,
    spreadGM2: [100, 200],
    coldestCelsius: 10,
    cloth: 'gloves and dry cloths',
    squeezedOut: 'Leave what foams out until it has set, then pare it off; wiped, it only smears.',
    cautions: ['Wear gloves and air the room: it stains skin and its isocyanates can sensitise.'],
    source: LABELS,
    confirmed: false,
  },
  {
    id: 'epoxy',
    name: 'slow epoxy',
    openMinutes: [20, 40],
    assemblyMinutes: [30, 60],
    clampMinutes: [480, 1440],
    cureHours: 72,
    spreadGM2: [200, 300],
    coldestCelsius: 15,
    cloth: 'gloves and cloths with a little alcohol',
    squeezedOut:
      'Wipe off what came out while it is wet, with alcohol on the cloth: once set it can only be scraped.',
    cautions: ['Wear gloves and air the room: uncured epoxy can sensitise the skin for good.'],
    source: LABELS,
    confirmed: false,
  },
];

/** An adhesive by its id (`pva`); undefined when it isn't in the table. */
export function adhesive(id: string): Adhesive | undefined {
  return ADHESIVES.find((a) => a.id === id);
}
