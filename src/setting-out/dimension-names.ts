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
  const add = adding(draft);
  const namesOf = naming(draft);
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
  for (const part of all)
    for (const name of namesOf(part)) {
      add(`${name}.length`, part.length);
      add(`${name}.width`, part.width);
      add(`${name}.thickness`, part.thickness);
      if (part.rough) {
        add(`${name}.rough length`, part.rough.length);
        add(`${name}.rough width`, part.rough.width);
      }
    }
  for (const lot of draft.job.shop.rack.lots)
    if (lots.has(lot.id)) add(`${lot.id}.thickness`, draft.thickness(lot));
  for (const d of draft.doors) {
    for (const name of namesOf(draft.part(d.part))) {
      add(`${name}.gap`, d.gap);
      d.hinges.forEach((at, i) => {
        add(`${name}.hinge ${i + 1}`, at);
      });
    }
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
export function namePrinted(draft: Draft, parts: readonly Part[], fits: readonly PrintedFit[]): void {
  const add = adding(draft);
  const namesOf = naming(draft);
  for (const part of parts)
    for (const name of namesOf(part)) {
      add(`${name}.cut length`, part.cut.length);
      add(`${name}.cut width`, part.cut.width);
      if (part.fitted) {
        add(`${name}.fitted length`, part.fitted.length);
        add(`${name}.fitted width`, part.fitted.width);
      }
    }
  for (const fit of fits) {
    const along = fit.id.slice(fit.id.lastIndexOf('/') + 1);
    const names = fit.toFit === undefined ? [] : namesOf(draft.part(fit.toFit));
    for (const name of [fit.id, ...names.map((n) => `${n}.${along}`)]) {
      add(`${name} gap`, fit.gap);
      add(`${name} gap as printed`, fit.printed);
    }
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

/** Name, mark and id of a part, and its name without its place where no other has the same: `left door`. */
function naming(draft: Draft): (part: UncutPart) => readonly string[] {
  const often = new Map<string, number>();
  const short = new Map<string, string>();
  for (const part of partsAndBoards(draft)) {
    const name = shortName(part);
    short.set(part.id, name);
    often.set(name, (often.get(name) ?? 0) + 1);
  }
  return (part) => {
    const { name, mark, id } = part;
    const own = short.get(id)!;
    return own !== name && often.get(own) === 1 ? [name, mark, id, own] : [name, mark, id];
  };
}

function shortName(part: UncutPart): string {
  return part.name.replace(/ (in|of) [^ ]+$/, '');
}

function adding(draft: Draft) {
  return (name: string, t: Traced) => {
    if (!draft.dimensions.has(name)) draft.dimensions.set(name, t);
  };
}
