import { beforeAll, describe, expect, test } from 'vitest';
import { built } from '../../test/build/built.ts';
import { radioStation } from '../../test/doors/sliding-job.ts';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Act, Operation } from '../build/index.ts';
import { fromMm, type Traced } from '../measure/index.ts';
import { dryFitInput } from '../plan/dry-fit-input.ts';
import type { Solids } from '../solid/index.ts';
import { dryFit } from './index.ts';

let solids: Solids;

beforeAll(async () => {
  solids = await openSolids();
});

const station = built(radioStation());
const mm = (n: number): Traced => station.drawn.ledger.document(`test ${n}`, fromMm(n), `${n} mm`);

/** What goes wrong when the station's cards are changed, as `code on`. */
function faults(change: (o: Operation) => Operation | undefined): string[] {
  const { job, drawn, breakdown, build } = station;
  const operations = build.operations.flatMap((o) => change(o) ?? []);
  const run = dryFit(dryFitInput(job, drawn, breakdown, { ...build, operations }, solids));
  let step = run.next();
  while (!step.done) step = run.next();
  return [...new Set(step.value.faults.map((f) => `${f.code} ${f.on}`))];
}

const as = (o: Operation, act: Partial<Act>): Operation => ({ ...o, does: { ...o.does, ...act } as Act });
const grooves = (panel: string, act: object) => (o: Operation) =>
  o.does.act === 'groove' && o.does.workpieces.includes(panel) ? as(o, act) : o;
const lift = (act: object) => (o: Operation) =>
  o.does.act === 'lift-in' && o.does.workpiece === 'K1' ? as(o, act) : o;

describe('a sliding door', () => {
  test('goes in, is held and slides by the cards as they are', () => {
    expect(faults((o) => o)).toEqual([]);
  });

  test('jams when the upper groove is no deeper than what stays in it', () => {
    expect(faults(grooves('C1', { depth: mm(5) }))).toContain('door-jams K1');
  });

  test('drops out when the lower groove is hardly there, and when the upper one is too far away', () => {
    expect(faults(grooves('B1', { depth: mm(0.5) }))).toContain('door-drops-out K1');
    expect(faults(grooves('B1', { depth: mm(7) }))).toContain('door-drops-out K1');
  });

  test('does not pass the lower edge when it is lifted too little', () => {
    expect(faults(lift({ lift: mm(3) }))).toContain('door-jams K1');
  });

  test('finds no third groove, nor one in the back', () => {
    expect(faults(lift({ groove: 3 }))).toContain('no-hole K1');
    expect(faults(lift({ above: 'F1' }))).toContain('no-hole K1');
  });

  test('slides into a shelf or an upright that stands in its way', () => {
    const forward = faults((o) =>
      o.id === 'D1/set' && o.does.act === 'set'
        ? as(o, {
            touches: o.does.touches.map((t) => (t.face.endsWith('y') ? { ...t, gap: mm(-15) } : t)) as never,
          })
        : o,
    );
    expect(forward).toContain('in-the-way K2');
  });

  test('does not fit its ends when it is set beyond them', () => {
    expect(faults(lift({ beside: mm(1000) }))).toContain('door-jams K1');
  });

  test('jams in grooves no wider than itself', () => {
    const tight = (o: Operation) =>
      o.does.act === 'groove' && ['B1', 'C1'].includes(o.does.workpieces[0]!)
        ? as(o, { channels: o.does.channels.map((c) => c.slice(0, 1)) })
        : o;
    expect(faults(tight)).toContain('door-jams K1');
  });
});
