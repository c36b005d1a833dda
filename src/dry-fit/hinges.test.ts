import { beforeAll, describe, expect, test } from 'vitest';
import { built } from '../../test/build/built.ts';
import { changed } from '../../test/doors/door-job.ts';
import { openSolids } from '../adaptors/solids-manifold.ts';
import type { Act, Operation } from '../build/index.ts';
import { dryFitInput } from '../plan/dry-fit-input.ts';
import type { Solids } from '../solid/index.ts';
import { dryFit } from './index.ts';

let solids: Solids;

beforeAll(async () => {
  solids = await openSolids();
});

const cupboard = built(changed({}));

/** What goes wrong when the cupboard's cards are changed, as `code on`. */
function faults(change: (o: Operation) => Operation | undefined): string[] {
  const { job, drawn, breakdown, build } = cupboard;
  const operations = build.operations.flatMap((o) => change(o) ?? []);
  const run = dryFit(dryFitInput(job, drawn, breakdown, { ...build, operations }, solids));
  let step = run.next();
  while (!step.done) step = run.next();
  return [...new Set(step.value.faults.map((f) => `${f.code} ${f.on}`))];
}

const as = (o: Operation, act: Partial<Act>): Operation => ({ ...o, does: { ...o.does, ...act } as Act });

describe('a door', () => {
  test('hangs by the cards as they are', () => {
    expect(faults((o) => o)).toEqual([]);
  });

  test('finds no plate where the upright was not drilled', () => {
    expect(faults((o) => (o.id === 'A1/drill-under-pilot' ? undefined : o))).toContain('no-hole A1');
  });

  test('finds no cup where none was bored', () => {
    expect(faults((o) => (o.id === 'K1/drill-under-cup' ? undefined : o))).toContain('no-hole K1');
  });

  test('does not hang level when it was set too low', () => {
    const low = faults((o) =>
      o.id === 'K1/set' && o.does.act === 'set'
        ? as(o, { touches: [o.does.touches[0], o.does.touches[1], { side: '-z', of: 'G1', face: '-z' }] })
        : o,
    );
    expect(low).toContain('no-hole A1');
    expect(low).toContain('part-misplaced K1');
  });

  test('runs into the case when it is set against the side instead of before it', () => {
    const inside = faults((o) =>
      o.id === 'K1/set' && o.does.act === 'set'
        ? as(o, { touches: [o.does.touches[0], { side: '-y', of: 'A1', face: '-y' }, o.does.touches[2]] })
        : o,
    );
    expect(inside).toContain('in-the-way K1');
  });

  test('is not held by the other side', () => {
    expect(
      faults((o) => (o.does.act === 'hinge' && o.does.workpiece === 'K1' ? as(o, { post: 'A2' }) : o)),
    ).toContain('no-hole A2');
  });

  test('has no hinge to spare', () => {
    expect(faults((o) => (o.does.act === 'hinge' ? as(o, { count: 3 }) : o))).toContain('no-hole K1');
  });

  test('is pierced by screws as long as its cup is wide; and there are none such', () => {
    const through = faults((o) => (o.does.act === 'hinge' ? as(o, { length: o.does.cup }) : o));
    expect(through).toEqual(
      expect.arrayContaining([
        'screw-comes-through K1',
        'screw-comes-through A1',
        'workpiece-missing hinge-screw',
      ]),
    );
  });
});
