import type { Traced } from '../measure/index.ts';
import type { Draft } from './draft.ts';
import type { SetOut } from './set-out.ts';

/**
 * What can be asked for by name: `overall.width`, `left side.length` (or by mark, `A1.length`), `bay1.width`,
 * and every field of the document by its path.
 */
export function nameDimensions(draft: Draft, overall: SetOut['overall']): void {
  const names = draft.dimensions;
  const add = (name: string, t: Traced) => {
    if (!names.has(name)) names.set(name, t);
  };
  for (const key of ['width', 'height', 'depth'] as const) add(`overall.${key}`, overall[key]);
  for (const r of draft.job.design.records)
    if (r.kind === 'size') add(`${r.id}.value`, draft.field(r, 'value'));
  for (const vent of draft.tree.all('vent'))
    if (vent.apart !== undefined) add(`${vent.id}.apart`, draft.field(vent, 'apart'));
  for (const part of draft.parts)
    for (const name of [part.name, part.mark, part.id]) {
      add(`${name}.length`, part.length);
      add(`${name}.width`, part.width);
      add(`${name}.thickness`, part.thickness);
      if (part.rough) {
        add(`${name}.rough length`, part.rough.length);
        add(`${name}.rough width`, part.rough.width);
      }
    }
  for (const d of draft.doors) {
    const { name } = draft.part(d.part);
    add(`${name}.gap`, d.gap);
    d.hinges.forEach((at, i) => {
      add(`${name}.hinge ${i + 1}`, at);
    });
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
}
