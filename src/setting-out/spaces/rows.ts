import type { RecordOf } from '../../job/index.ts';
import { rowHeld } from '../../materials/index.ts';
import { N_PER_KG, toMm } from '../../measure/index.ts';
import type { MadeCase } from '../case/case-in-full.ts';
import type { Draft } from '../draft.ts';

/**
 * Stands rows of books or records on the shelves that are spaced by them, and on what is below the lowest: what they
 * weigh counts where no load was stated, and a shelf that is less deep than they are is told.
 */
export function standRows(draft: Draft, made: MadeCase): void {
  const onFloor = new Set<string>();
  for (const record of draft.tree.all('shelf')) {
    if (record.rowOf === undefined || draft.tree.caseOf(record.id) !== made.frame.box) continue;
    const shelves = made.partings.filter((p) => !p.upright && p.part.record === record.id);
    const [lowest] = shelves;
    if (!lowest) continue;
    const below = lowest.space.below.id;
    const stands = [...shelves.map((s) => s.part.id), ...(onFloor.has(below) ? [] : [below])];
    onFloor.add(below);
    for (const part of stands) load(draft, part, record, part === below);
    tooDeep(draft, record, lowest.part.id);
  }
}

/** What a row weighs over the free span of a board; on a floor it comes to what stands there besides. */
function load(draft: Draft, part: string, record: RecordOf<'shelf'>, floor: boolean): void {
  const at = draft.surfaces.findIndex((s) => s.part === part);
  const surface = draft.surfaces[at];
  if (!surface || (!floor && surface.loadKg !== undefined)) return;
  const { nPerMm } = rowHeld(record.rowOf!).weighs;
  const kg = Math.round((toMm(draft.ledger.ticks(surface.span)) * nPerMm * 10) / N_PER_KG) / 10;
  draft.surfaces[at] = { ...surface, loadKg: floor ? Math.max(surface.loadKg ?? 0, kg) : kg };
}

function tooDeep(draft: Draft, record: RecordOf<'shelf'>, part: string): void {
  const l = draft.ledger;
  const held = rowHeld(record.rowOf!);
  const surface = draft.surfaces.find((s) => s.part === part);
  const [deep, there] = [l.ticks(l.row(held.depth)), surface ? l.ticks(surface.depth) : 0];
  if (!surface || deep <= there) return;
  draft.snags.push({
    code: 'rows.stand-out',
    level: 'mind',
    where: { path: `design/records/${record.id}/rowOf`, record: record.id, part },
    sentence: `${capital(held.says)} are ${toMm(deep)} mm deep, and “${record.id}” is ${toMm(there)} mm: they stand out in front.`,
    figures: { value: toMm(there), limit: toMm(deep), margin: toMm(there - deep), unit: 'mm' },
    rule: {
      says: 'what stands on a shelf doesn’t stand out over it',
      source: held.depth.source,
      confirmed: false,
    },
    cures: [{ says: `Make the piece at least ${toMm(deep - there)} mm deeper, or set the shelf back less.` }],
  });
}

function capital(s: string): string {
  return s.charAt(0).toUpperCase() + s.slice(1);
}
