import { fromInches, fromMm, type LengthRow, type RatioRow, type Ticks } from '../measure/index.ts';
import type { Sourced } from './sourced.ts';

/** A countersunk wood screw by its thread. Lengths are the maker's choice; these go with the diameter. */
export interface WoodScrew {
  readonly id: string;
  readonly name: string;
  /** Outside of the thread, and of the shank. */
  readonly major: LengthRow;
  /** Bottom of the thread; a pilot hole is a share of it. */
  readonly root?: LengthRow;
  /** Across the head. */
  readonly head?: LengthRow;
  readonly threadsPerInch?: number;
}

const ASME = 'ASME B18.6.1';
const NDS_ROOT = 'NDS 2018 Appendix L Table L3, from memory';
const MEMORY = 'from memory';

/** Gauge, root and flat head in inches, threads an inch. The major diameter is 0.060 + 0.013 n inch. */
const GAUGES: readonly (readonly [number, number | undefined, number | undefined, number])[] = [
  [2, undefined, 0.172, 26],
  [3, undefined, 0.199, 24],
  [4, undefined, 0.225, 22],
  [5, undefined, 0.252, 20],
  [6, 0.113, 0.279, 18],
  [7, 0.122, 0.305, 16],
  [8, 0.131, 0.332, 15],
  [9, 0.142, 0.358, 14],
  [10, 0.152, 0.385, 13],
  [12, 0.171, 0.438, 11],
  [14, 0.196, 0.491, 10],
  [16, 0.209, undefined, 9],
  [18, 0.232, undefined, 8],
  [20, 0.255, undefined, 8],
  [24, 0.298, undefined, 7],
];

/** Metric screws for wood and panels: diameter, root and head in mm, all from memory. */
const METRIC: readonly (readonly [number, number, number])[] = [
  [3, 1.9, 6],
  [3.5, 2.2, 7],
  [4, 2.5, 8],
  [4.5, 2.8, 8.8],
  [5, 3.1, 9.7],
  [6, 3.8, 11.6],
];

function row(id: string, value: Ticks, says: string, source: string): LengthRow {
  return { id, value, says, source };
}

/** Every screw: numbered ones (`wood-screw-8`), then metric ones (`wood-screw-4mm`). */
export const WOOD_SCREWS: readonly WoodScrew[] = [
  ...GAUGES.map(([n, root, head, threadsPerInch]): WoodScrew => {
    const id = `wood-screw-${n}`;
    const name = `number ${n} wood screw`;
    const major = fromInches((60 + 13 * n) / 1000);
    return {
      id,
      name,
      threadsPerInch,
      major: row(`${id}.major`, major, `a ${name} is ${(60 + 13 * n) / 1000} in thick`, ASME),
      ...(root && { root: row(`${id}.root`, fromInches(root), `its root is ${root} in`, NDS_ROOT) }),
      ...(head && { head: row(`${id}.head`, fromInches(head), `its flat head is ${head} in across`, ASME) }),
    };
  }),
  ...METRIC.map(([d, root, head]): WoodScrew => {
    const id = `wood-screw-${d}mm`;
    const name = `${d} mm wood screw`;
    return {
      id,
      name,
      major: row(`${id}.major`, fromMm(d), `a ${name} is ${d} mm thick`, MEMORY),
      root: row(`${id}.root`, fromMm(root), `its root is ${root} mm`, MEMORY),
      head: row(`${id}.head`, fromMm(head), `its head is ${head} mm across`, MEMORY),
    };
  }),
];

const BY_ID = new Map(WOOD_SCREWS.map((s) => [s.id, s]));

/** A screw by its id; undefined when it isn't in the table. */
export function woodScrew(id: string): WoodScrew | undefined {
  return BY_ID.get(id);
}

/** The screw whose thread is nearest to a diameter, within 0.15 mm; undefined when none is. */
export function woodScrewOf(diameter: Ticks): WoodScrew | undefined {
  const away = (s: WoodScrew) => Math.abs(s.major.value - diameter);
  const nearest = WOOD_SCREWS.reduce((best, s) => (away(s) < away(best) ? s : best));
  return away(nearest) <= fromMm(0.15) ? nearest : undefined;
}

const NDS_LEAD = 'NDS 12.1.5, as restated in a building design handbook';

/** The shares that pilot holes take of a screw’s root. */
export const PILOT_SHARES = {
  lateralDense: ratio(
    'pilot.lateral.dense',
    [1, 1],
    'in wood of G 0.6 and more the pilot is as wide as the root',
  ),
  lateralSoft: ratio('pilot.lateral.soft', [7, 8], 'in wood under G 0.6 the pilot is 7/8 of the root'),
  dense: ratio('pilot.dense', [9, 10], 'in wood denser than G 0.6 the pilot is about 90% of the root'),
  middling: ratio('pilot.middling', [7, 10], 'in wood of G 0.5 to 0.6 the pilot is about 70% of the root'),
} as const;

/** What a pilot hole is for: thread that must not pull out, or a screw that is loaded sideways. */
export type PilotUse = 'withdrawal' | 'lateral';

/**
 * The pilot hole for the thread as a share of the screw's root, by the wood's specific gravity; undefined where
 * none is needed (softer than 0.5, in withdrawal). Screws into a panel's edge are piloted always, by the rule for
 * 0.5 to 0.6 at least.
 */
export function pilotShare(specificGravity: number, use: PilotUse): RatioRow | undefined {
  if (use === 'lateral') return specificGravity >= 0.6 ? PILOT_SHARES.lateralDense : PILOT_SHARES.lateralSoft;
  if (specificGravity > 0.6) return PILOT_SHARES.dense;
  return specificGravity >= 0.5 ? PILOT_SHARES.middling : undefined;
}

/** The same for thread in a panel’s edge or in end grain, where a pilot is bored whatever the wood: it splits easily. */
export function edgePilotShare(specificGravity: number): RatioRow {
  return pilotShare(specificGravity, 'withdrawal') ?? PILOT_SHARES.middling;
}

/** The hole for the smooth shank, as a share of its diameter, for screws loaded sideways. */
export function shankShare(specificGravity: number): RatioRow {
  return specificGravity >= 0.6
    ? ratio('shank.dense', [1, 1], 'in wood of G 0.6 and more the shank hole is as wide as the shank')
    : ratio('shank.soft', [7, 8], 'in wood under G 0.6 the shank hole is 7/8 of the shank');
}

function ratio(id: string, of: readonly [number, number], says: string): RatioRow {
  return { id, of, says, source: NDS_LEAD };
}

/** Rules about a wood screw's length. */
export const SCREW_RULES = {
  threaded: {
    id: 'screw.threaded',
    of: [2, 3],
    says: 'about two thirds of a wood screw are threaded',
    source: 'common practice',
  },
  edgeThickest: {
    id: 'screw.edge-thickest',
    of: [1, 3],
    says: 'a screw in a panel’s edge is at most a third as thick as the edge',
    source: 'common practice',
  },
} as const satisfies Record<string, RatioRow>;

/** Whether the figures of a row of these tables were read in the source it names. */
export function screwFigure(row: LengthRow): Sourced {
  return { source: row.source, confirmed: row.source === ASME };
}
