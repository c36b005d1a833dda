import { describe, expect, test } from 'vitest';
import { checkJob } from '../src/job/index.ts';
import { built } from './build/built.ts';
import { dryFaults } from './build/dry-faults.ts';
import { equipped } from './generate/equipped.ts';
import { type PlainJob, smallJob } from './generate/small-job.ts';

/** The small cupboard with a flap before its right half, without edging; a butt hinge and a stay on its rack. */
function withFlap(flap: object, change: (job: PlainJob) => void = () => {}): PlainJob {
  const job = smallJob();
  job.design.records = job.design.records.filter((r) => r.id !== 'shelf');
  job.design.records.push({
    id: 'flap',
    kind: 'door',
    parent: 'case',
    board: 'birch18',
    over: ['right'],
    hang: 'inset',
    ...flap,
  });
  job.shop.rack.screws.push({
    id: 'hinge-screw',
    kind: 'countersunk',
    length: '12 mm',
    diameter: '3.5 mm',
    head: '7 mm',
  });
  job.shop.rack.hinges = [
    {
      id: 'butt',
      kind: 'butt',
      screw: 'hinge-screw',
      length: '50 mm',
      width: '16 mm',
      leaf: '1.5 mm',
      screws: 3,
    },
  ];
  job.shop.rack.stays = [{ id: 'stay', holds: '10 N m' }];
  change(job);
  return job;
}

describe.each([
  ['above', 'C'],
  ['below', 'B'],
] as const)('a door that hangs on what is %s', (hand, mark) => {
  const of = built(equipped(withFlap({ hand })));
  const t = (x: (typeof of.drawn.parts)[0]['length']) => of.drawn.ledger.ticks(x) / 3200;
  const [leaf] = of.drawn.doors;
  const part = of.drawn.parts.find((p) => p.id === leaf!.part)!;

  test('is inset, 2 mm from what is round it, its hinges along that edge', () => {
    expect(of.drawn.snags).toEqual([]);
    expect(of.drawn.parts.find((p) => p.id === leaf!.post)!.mark).toMatch(mark);
    expect(t(part.width)).toBe(t(leaf!.opening.width) - 4);
    expect(t(part.length)).toBe(t(leaf!.opening.height) - 4);
    // A flap about 440 mm wide hangs on two, each 100 mm from its end.
    expect(leaf!.hinges.map(t)).toEqual([100, Math.round((t(part.width) - 100) * 2) / 2]);
  });

  test('is held by as many stays as its weight at half its height asks for', () => {
    const kg = (t(part.length) * t(part.width) * t(part.thickness) * 680) / 1e9;
    expect(leaf!.held!.momentNm).toBeCloseTo((kg * 9.81 * t(part.length)) / 2000, 1);
    // 3.7 kg and 0.69 m high: 12 N m, more than one stay holds.
    expect(leaf!.held!.stays).toEqual({ id: 'stay', count: 2, holdNm: 20 });
    const card = of.build.operations.find((o) => o.id === `${part.mark}/stays`)!;
    expect(card.lines[1]).toContain('Together they hold 20 N m');
  });

  test('is built', async () => {
    expect(await dryFaults(of)).toEqual([]);
  });
});

test('under a lid it hangs on that', async () => {
  const of = built(
    equipped(
      withFlap({ hand: 'above' }, (j) => {
        j.design.records = j.design.records.filter((r) => r.id !== 'top');
      }),
    ),
  );
  expect(of.drawn.snags).toEqual([]);
  expect(of.drawn.doors[0]!.post).toBe('case/lid');
  expect(await dryFaults(of)).toEqual([]);
});

test('a handle stands at the edge that opens, and lies across', () => {
  const handle = (hand: string) => {
    const add = (j: PlainJob) => {
      j.design.records.push({ id: 'pull', kind: 'pull', parent: 'flap' });
      Object.assign(j.shop.rack, {
        pulls: [{ id: 'bar', holes: '64 mm', thread: '4 mm', deep: '12 mm', length: '80 mm' }],
      });
      j.shop.rack.screws.push({ id: 'm4', kind: 'machine', length: '25 mm', diameter: '4 mm', head: '8 mm' });
    };
    const { drawn } = built(equipped(withFlap({ hand }, add)));
    expect(drawn.snags).toEqual([]);
    const flap = drawn.parts.find((p) => p.record === 'flap')!;
    return flap.features.flatMap((f) => (f.kind === 'hole' ? [drawn.ledger.ticks(f.at[0]) / 3200] : []));
  };
  expect(handle('above')).toEqual([40, 40]);
  const [low] = handle('below');
  expect(low).toBeGreaterThan(500);
});

test.each([
  ['doors.flap', { hand: 'above', hang: 'overlay' }],
  ['doors.flap', { hand: 'below', count: 2 }],
  ['doors.flap', { stay: 'stay' }],
  ['document.no-such-stay', { hand: 'below', stay: 'nothing' }],
])('%s is told before anything is set out', (code, flap) => {
  const read = checkJob(withFlap(flap));
  expect(read.ok ? [] : read.snags.map((s) => s.code)).toContain(code);
});

test.each([
  ['hinges.none-suits', (j: PlainJob) => Object.assign(j.shop.rack, { hinges: [] })],
  [
    'lids.stay-weak',
    (j: PlainJob) => Object.assign(j.shop.rack, { stays: [{ id: 'stay', holds: '3 N m' }] }),
  ],
])('%s', (code, change) => {
  const { drawn } = built(equipped(withFlap({ hand: 'below' }, change)));
  expect(drawn.snags.filter((s) => s.level === 'stop').map((s) => s.code)).toEqual([code]);
});
