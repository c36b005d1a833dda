import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import type { Plan } from '../src/plan/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import { planned } from './build/planned.ts';
import { box, type Fields, group, piece } from './build/row-of-cases.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, smallJob } from './generate/small-job.ts';

const under = { id: 'under', kind: 'base', parent: 'g', board: 'birch18', height: '80 mm', setback: '40 mm' };

function jobOf(...records: readonly Fields[]): PlainJob {
  const plain = smallJob();
  const [sheet] = plain.shop.rack.lots;
  plain.shop.rack.lots.push({
    ...sheet!,
    id: 'thinner',
    nominal: '15 mm',
    stock: [{ ...sheet!.stock[0]!, id: 'thinner-sheet' }],
  });
  const job = equipped(plain) as PlainJob;
  job.design.records = [...records];
  for (const [length, diameter] of [
    [30, 4],
    [50, 4.5],
    [60, 4],
  ])
    job.shop.rack.screws.push({
      id: `flat-${length}`,
      kind: 'countersunk',
      length: `${length} mm`,
      diameter: `${diameter} mm`,
      head: '8 mm',
      have: 200,
    });
  return job;
}

function planOf(...records: readonly Fields[]): Plan {
  return planned(jobOf(...records));
}

const refused = (...records: readonly Fields[]) => {
  const read = checkJob(jobOf(...records));
  return read.ok ? [] : read.snags.map((s) => s.code);
};

describe('one base under several cases', () => {
  test.each([
    ['of two cases', [box('a'), box('b', { size: '2 shares' })]],
    ['of three cases', [box('a'), box('b'), box('c')]],
    ['of cases that share a side', [box('a', { rightSide: 'shared' }), box('b')]],
    ['of cases joined by dados', [box('a', { joints: 'dado' }), box('b', { joints: 'dado' })]],
    ['of bottoms under their sides', [box('a', { bottom: 'under' }), box('b', { bottom: 'under' })]],
  ] as const)('%s is set back under all of them, and built', (_, boxes) => {
    const plan = planOf(piece, group, ...boxes, under);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    const { ledger, parts, overall, joints } = plan.setOut;
    const t = (x: (typeof parts)[0]['length']) => ledger.ticks(x) / 3200;
    const strips = parts.filter((p) => p.record === 'under');
    expect(strips.map((p) => t(p.length)).sort((a, b) => b - a)).toEqual([1420, 1420, 320, 320]);
    expect([t(overall.width), t(overall.height)]).toEqual([1500, 800]);
    const sides = parts.filter((p) => p.role.endsWith('-side'));
    for (const side of sides) expect(t(side.length)).toBeGreaterThan(680);
    const down = joints.filter((j) => j.duty === 'base');
    expect(new Set(down.flatMap((j) => [j.part, j.mate]).filter((id) => id.endsWith('/bottom'))).size).toBe(
      boxes.length,
    );
    expect(plan.dryFit.faults).toEqual([]);
    expect(plan.dryFit).toMatchObject({ fits: true, unused: [] });
  });

  test('goes under the cases before their top is laid, and is lifted by as many hands as they ask for', () => {
    const top = { id: 'over', kind: 'top', parent: 'g', board: 'birch18' };
    const plan = planOf(piece, group, box('a'), box('b'), under, top);
    const ids = plan.build.operations.map((o) => o.id);
    const mark = plan.setOut.parts.find((p) => p.id === 'over/top')!.mark;
    const base = ids.indexOf('base:g/set');
    expect(base).toBeGreaterThan(0);
    expect(ids.indexOf(`${mark}/set`)).toBeGreaterThan(base);
    const card = plan.build.operations[base]!;
    expect(card.lines.join(' ')).not.toContain('one after the other');
    expect(card.cautions.join(' ')).toContain('two people and straight backs');
    expect(plan.dryFit.faults).toEqual([]);
  });

  test('carries cases of boards of two thicknesses: pilots of two depths in one strip', () => {
    const plan = planOf(piece, group, box('a'), box('b', { board: 'thinner' }), under);
    const depths = plan.setOut.parts
      .find((p) => p.role === 'base-front')!
      .features.flatMap((f) => (f.kind === 'hole' ? [plan.setOut.ledger.ticks(f.depth!)] : []));
    expect(new Set(depths).size).toBe(2);
    expect(plan.dryFit.faults).toEqual([]);
  });

  test('carries a row with a top over it', () => {
    const top = {
      id: 'top',
      kind: 'top',
      parent: 'g',
      board: 'birch18',
      overhangFront: '20 mm',
      overhangSides: '15 mm',
    };
    const plan = planOf(piece, group, box('a'), box('b'), under, top);
    expect(plan.snags.filter((s) => s.level === 'stop').map((s) => s.sentence)).toEqual([]);
    expect(plan.dryFit.faults).toEqual([]);
  });

  test('is a frame under a row, and the only base of its cases', () => {
    const own = { ...under, id: 'own', parent: 'a' };
    const rails = { id: 'rails', kind: 'hanging', parent: 'b', board: 'birch18' };
    expect(refused(piece, group, box('a'), box('b'), under, own)).toEqual(['design.base-under-cases']);
    expect(refused(piece, group, box('a'), box('b'), under, rails)).toEqual(['design.base-under-cases']);
    const legs = { ...under, form: 'toe-kick' };
    expect(refused(piece, group, box('a'), box('b'), legs)).toContain('design.base-under-cases');
    expect(refused(piece, { ...group, lay: 'up' }, box('a'), box('b'), under)).toContain(
      'design.base-under-cases',
    );
  });
});

test('a shelf low over a bottom keeps the driver from it: that is told, and both cures help', () => {
  const low = (at: string) => [
    { id: 'in', kind: 'opening', parent: 'a' },
    { id: 'plank', kind: 'shelf', parent: 'in', at },
  ];
  const told = (...records: readonly Fields[]) => {
    const read = checkJob(jobOf(piece, group, box('a'), box('b'), ...records));
    if (!read.ok) throw new Error(read.snags[0]!.sentence);
    return setOut(read.job).snags.map((s) => `${s.sentence} ${s.cures[0]!.says}`);
  };
  expect(told(under, ...low('60 mm'))).toEqual([
    'No driver gets to the bottom of “a” to screw it down on the base: what lies above it is too near. Leave 100 mm clear above that bottom, or give each case a base of its own.',
  ]);
  expect(told(under, ...low('110 mm'))).toEqual([]);
  const own = ['a', 'b'].map((parent) => ({ ...under, id: `under-${parent}`, parent }));
  expect(told(...own, ...low('60 mm'))).toEqual([]);
});
