import { type Panel, panel } from './panels.ts';
import type { Sourced } from './sourced.ts';
import { type Species, species } from './species.ts';

/** A material of either kind: solid wood, or a sheet. */
export type Material =
  | { readonly kind: 'solid'; readonly id: string; readonly name: string; readonly wood: Species }
  | { readonly kind: 'sheet'; readonly id: string; readonly name: string; readonly sheet: Panel };

/** A material by its id (`ash-white`, `birch-plywood`); undefined when it is in no table. */
export function material(id: string): Material | undefined {
  const wood = species(id);
  if (wood !== undefined) return { kind: 'solid', id, name: wood.name, wood };
  const sheet = panel(id);
  return sheet && { kind: 'sheet', id, name: sheet.name, sheet };
}

/** Of a material in no table: about as much as birch plywood, kg/m3, from memory. */
const USUAL = 680;

/** Mass over volume by which a material is reckoned, kg/m3, whether it is in a table or not. */
export function reckonedDensity(id: string | undefined): number {
  return (id === undefined ? undefined : density(id)?.kgM3) ?? USUAL;
}

/** Mass over volume, kg/m3, and where it was taken from; undefined for an unknown material. */
export function density(id: string): ({ readonly kgM3: number } & Sourced) | undefined {
  const m = material(id);
  if (m === undefined) return undefined;
  return m.kind === 'solid'
    ? { kgM3: m.wood.densityKgM3, source: m.wood.source, confirmed: m.wood.confirmed }
    : {
        kgM3: m.sheet.densityKgM3,
        source: m.sheet.densitySource,
        confirmed: !m.sheet.densitySource.includes('from memory'),
      };
}
