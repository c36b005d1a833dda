import type { Shop } from '../../job/index.ts';
import { WAITS } from '../minutes.ts';
import type { Operation } from '../operation.ts';
import type { Need, Resource, Task } from './task.ts';

const HANDS = 'hands';
const CLAMPS = 'clamps';
const FINISHING_PLACE = 'finishing place';

/** Clamps that a joint takes, where its card doesn’t say. */
const USUAL_CLAMPS = 2;

/** Who works on the piece throughout; the others come when two are needed. */
export function workers(shop: Shop): readonly string[] {
  return shop.people.flatMap((p, i) =>
    p.works === 'throughout' || (i === 0 && p.works === undefined) ? [p.id] : [],
  );
}

/** What there is only so much of: hands, each tool once, clamps, one place where coats dry. */
export function resourcesOf(shop: Shop): readonly Resource[] {
  return [
    { id: HANDS, there: Math.max(1, workers(shop).length) },
    { id: CLAMPS, there: clampsOf(shop) },
    { id: FINISHING_PLACE, there: 1 },
    ...shop.tools.filter((t) => t.kind !== 'clamp').map((t) => ({ id: `tool ${t.id}`, there: 1 })),
  ];
}

/** An operation as a task. Clamps stay on until glue has set, a coated piece stays where it dries. */
export function taskOf(shop: Shop, o: Operation): Task {
  const waits = WAITS[o.kind];
  const tool = shop.tools.find((t) => t.id === o.tool);
  const needs: Need[] = o.minutes.active > 0 ? [{ resource: HANDS, amount: 1, until: 'worked' }] : [];
  if (tool?.kind === 'clamp' || waits === 'glue')
    needs.push({
      resource: CLAMPS,
      amount: Math.min(o.clamps ?? USUAL_CLAMPS, clampsOf(shop)),
      until: waits === 'glue' ? 'ready' : 'worked',
    });
  else if (tool) needs.push({ resource: `tool ${tool.id}`, amount: 1, until: 'worked' });
  if (waits === 'coat') needs.push({ resource: FINISHING_PLACE, amount: 1, until: 'ready' });
  return {
    id: o.id,
    work: o.minutes.active,
    wait: o.minutes.waiting,
    unbroken: waits !== undefined || o.together !== undefined,
    after: o.after,
    needs,
  };
}

function clampsOf(shop: Shop): number {
  return shop.tools.reduce((sum, t) => sum + (t.kind === 'clamp' ? t.count : 0), 0);
}
