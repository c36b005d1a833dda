import { panel } from './panels.ts';
import type { Sourced } from './sourced.ts';
import { species } from './species.ts';

/** The specific gravity that fastener rules go by. */
export interface FasteningGravity extends Sourced {
  readonly specificGravity: number;
  /** The group of woods it was tabulated for, or the material itself. */
  readonly group: string;
}

const NDS = 'NDS 2018 Table 12.3.3A (ovendry volume)';

const GROUPS: Readonly<Record<string, readonly [group: string, gravity: number]>> = {
  'oak-northern-red': ['northern red oak', 0.68],
  'oak-southern-red': ['red oak', 0.67],
  'oak-white': ['mixed oak', 0.68],
  'maple-red': ['red maple', 0.58],
  'maple-sugar': ['mixed maple', 0.55],
  'maple-silver': ['mixed maple', 0.55],
  'maple-bigleaf': ['mixed maple', 0.55],
  'beech-american': ['beech, birch, hickory', 0.71],
  'birch-yellow': ['beech, birch, hickory', 0.71],
  'birch-sweet': ['beech, birch, hickory', 0.71],
  'hickory-pecan': ['beech, birch, hickory', 0.71],
  'hickory-shagbark': ['beech, birch, hickory', 0.71],
  'pine-loblolly': ['southern pine', 0.55],
  'pine-longleaf': ['southern pine', 0.55],
  'douglas-fir-coast': ['Douglas-fir, larch', 0.5],
  'hemlock-western': ['hem-fir', 0.43],
  'fir-white': ['hem-fir', 0.43],
  'pine-lodgepole': ['spruce, pine, fir', 0.42],
  'pine-ponderosa': ['ponderosa pine', 0.43],
  'pine-eastern-white': ['eastern white pine', 0.36],
  'redwood-old-growth': ['redwood', 0.37],
  'cedar-western-red': ['western cedars', 0.36],
  'aspen-quaking': ['aspen', 0.39],
};

/**
 * The specific gravity of a material for fasteners: the tabulated one of its group, else a species' own at 12%,
 * else a panel's density over 1120 (its thread holds less in the edge; a check must say so).
 */
export function fasteningGravity(materialId: string): FasteningGravity | undefined {
  const group = GROUPS[materialId];
  if (group !== undefined)
    return { group: group[0], specificGravity: group[1], source: NDS, confirmed: true };
  const wood = species(materialId);
  if (wood !== undefined)
    return {
      group: wood.name,
      specificGravity: wood.specificGravity,
      source: wood.source,
      confirmed: wood.confirmed,
    };
  const sheet = panel(materialId);
  if (sheet === undefined) return undefined;
  return {
    group: sheet.name,
    specificGravity: Math.round((sheet.densityKgM3 / 1120) * 100) / 100,
    source: `density over 1120; ${sheet.densitySource}`,
    confirmed: false,
  };
}
