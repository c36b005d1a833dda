import type { Traced } from '../measure/index.ts';
import type { Draft } from './draft.ts';
import type { PrintedFit } from './fits/fit.ts';
import type { Part, UncutPart } from './part.ts';
import { partsAndBoards } from './parts-to-cut.ts';
import type { SetOut } from './set-out.ts';
import { doorwaySize } from './spaces/doorways.ts';
import { roomSize } from './spaces/room.ts';

/**
 * What can be asked for by name: `overall.width`, `left side.length` (or by mark, `A1.length`), `bay1.width`,
 * and every field of the document by its path.
 */
export function nameDimensions(draft: Draft, overall: SetOut['overall']): void {
  const { dimensions } = draft;
  const add = (name: string, of: Traced) => dimensions.add(name, of);
  for (const key of ['width', 'height', 'depth'] as const) add(`overall.${key}`, overall[key]);
  for (const r of draft.job.design.records)
    if (r.kind === 'thing')
      for (const key of ['width', 'height', 'depth'] as const) add(`${r.id}.${key}`, draft.field(r, key));
    else if (r.kind === 'room') {
      for (const key of ['width', 'widest', 'height', 'depth'] as const) {
        const size = roomSize(draft, r, key);
        if (size !== undefined) add(`${r.id}.${key}`, size);
      }
    } else if (r.kind === 'size') add(`${r.id}.value`, draft.field(r, 'value'));
  for (const vent of draft.tree.all('vent'))
    if (vent.apart !== undefined) add(`${vent.id}.apart`, draft.field(vent, 'apart'));
  const all = partsAndBoards(draft);
  const lots = new Set(all.map((p) => p.lot));
  callParts(draft, all);
  for (const part of all) {
    dimensions.addOf(part.id, 'length', part.length);
    dimensions.addOf(part.id, 'width', part.width);
    dimensions.addOf(part.id, 'thickness', part.thickness);
    if (!part.rough) continue;
    dimensions.addOf(part.id, 'rough length', part.rough.length);
    dimensions.addOf(part.id, 'rough width', part.rough.width);
  }
  for (const lot of draft.job.shop.rack.lots)
    if (lots.has(lot.id)) add(`${lot.id}.thickness`, draft.thickness(lot));
  for (const d of draft.doors) {
    dimensions.addOf(d.part, 'gap', d.gap);
    d.hinges.forEach((at, i) => {
      dimensions.addOf(d.part, `hinge ${i + 1}`, at);
    });
  }
  for (const d of draft.drawers) {
    add(`${d.name}.gap`, d.gap);
    if (d.runner) add(`${d.name}.runner`, d.runner.height);
    if (d.wooden) add(`${d.name}.groove`, d.wooden.up);
    if (d.centre) add(`${d.name}.play`, d.centre.play);
    add(`${d.name}.travel`, d.travel);
  }
  for (const s of draft.pinned) add(`${draft.part(s.part).name}.height`, s.height);
  for (const s of draft.sliding) {
    add(`${s.record}.upper groove`, s.groove.upper);
    add(`${s.record}.lower groove`, s.groove.lower);
    add(`${s.record}.groove width`, s.groove.width);
    add(`${s.record}.engagement`, s.engagement);
    add(`${s.record}.gap`, s.gap);
    add(`${s.record}.overlap`, s.overlap);
    add(`${s.record}.opens`, s.opens);
  }
  for (const o of draft.openings) {
    add(`${o.id}.width`, o.width);
    add(`${o.id}.height`, o.height);
    add(`${o.id}.depth`, o.depth);
  }
  nameDoorways(draft, add);
}

/** What parts are cut to, and the gaps of what is cut to fit: `left door.cut width`, `left door.width gap`. */
export function namePrinted(
  { dimensions }: Draft,
  parts: readonly Part[],
  fits: readonly PrintedFit[],
): void {
  for (const { id, cut, fitted } of parts) {
    dimensions.addOf(id, 'cut length', cut.length);
    dimensions.addOf(id, 'cut width', cut.width);
    if (!fitted) continue;
    dimensions.addOf(id, 'fitted length', fitted.length);
    dimensions.addOf(id, 'fitted width', fitted.width);
  }
  for (const { id, toFit, gap, printed } of fits) {
    dimensions.add(`${id} gap`, gap);
    dimensions.add(`${id} gap as printed`, printed);
    if (toFit === undefined) continue;
    const along = id.slice(id.lastIndexOf('/') + 1);
    dimensions.addOf(toFit, `${along} gap`, gap);
    dimensions.addOf(toFit, `${along} gap as printed`, printed);
  }
}

/** The doorways on the way home, each alone and the least of all. */
function nameDoorways(draft: Draft, add: (name: string, t: Traced) => void): void {
  const doors = (draft.job.shop.wayHome?.doors ?? []).map((d) => d.id);
  for (const [name, of] of [...doors.map((id) => [id, [id]] as const), ['doorway', doors] as const])
    if (of.length > 0)
      for (const size of ['width', 'height', 'through'] as const)
        add(`${name}.${size}`, doorwaySize(draft, of, size));
}

/** Calls each part by name, mark and id, and by its name without its place where no other has the same: `left door`. */
function callParts({ dimensions, shortNames }: Draft, parts: readonly UncutPart[]): void {
  const often = new Map<string, number>();
  const short = parts.map(shortName);
  for (const name of short) often.set(name, (often.get(name) ?? 0) + 1);
  parts.forEach(({ name, mark, id }, i) => {
    const own = short[i]!;
    const alone = own !== name && often.get(own) === 1;
    if (alone) shortNames.set(id, own);
    dimensions.call(id, alone ? [name, mark, id, own] : [name, mark, id]);
  });
}

function shortName(part: UncutPart): string {
  return part.name.replace(/ (in|of) [^ ]+$/, '');
}
