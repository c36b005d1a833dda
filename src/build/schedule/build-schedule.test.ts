import { expect, test } from 'vitest';
import { built, demoDocument } from '../../../test/build/built.ts';
import { writtenMoment } from './moment.ts';

type Shop = Record<string, unknown>;

/** The glaze cabinet in a shop with changes, begun on a day. */
function cabinet(changes: Shop = {}, work: Record<string, unknown> = {}) {
  const demo = demoDocument();
  return built({ ...demo, shop: { ...demo.shop, ...changes }, work });
}

test('cards are numbered in the order in which they are begun, and no card begins before what it needs is ready', () => {
  const { operations, schedule } = cabinet().build;
  const at = new Map(schedule.operations.map((s) => [s.operation, s]));
  operations.forEach((o, i) => {
    const mine = schedule.operations[i]!;
    expect(mine.operation).toBe(o.id);
    expect(mine.ready - mine.end).toBe(o.minutes.waiting);
    for (const before of o.after) expect(at.get(before)!.ready).toBeLessThanOrEqual(mine.start);
    if (i > 0) expect(schedule.operations[i - 1]!.start).toBeLessThanOrEqual(mine.start);
  });
});

test('one pair of hands does one thing at a time; two do the same work in no more days', () => {
  const alone = cabinet().build;
  let free = 0;
  for (const s of alone.schedule.operations) {
    expect(s.who).toEqual(['maker']);
    expect(s.start).toBeGreaterThanOrEqual(free);
    free = s.end;
  }
  const people = ['maker', 'helper'].map((id) => ({ id, lift: '30 kg', works: 'throughout' }));
  const both = cabinet({ people }).build.schedule;
  expect(new Set(both.operations.flatMap((o) => o.who))).toEqual(new Set(['maker', 'helper']));
  expect(both.days).toBeLessThanOrEqual(alone.schedule.days);
  for (const id of ['maker', 'helper']) {
    const mine = both.operations.filter((o) => o.who.includes(id));
    mine.forEach((s, i) => {
      if (i > 0) expect(s.start).toBeGreaterThanOrEqual(mine[i - 1]!.end);
    });
  }
});

test('work is done in the shop’s hours: Saturdays from nine to one, so a piece takes weeks', () => {
  const hours = [{ days: ['sat'], from: '09:00', to: '13:00' }];
  // 28 February 2026 is a Saturday.
  const { schedule } = cabinet({ hours }, { start: '2026-02-26' }).build;
  for (const s of schedule.operations) {
    const { weekday, time } = writtenMoment(schedule, s.start);
    expect(weekday).toBe('Sat');
    expect(time >= '09:00' && time < '13:00').toBe(true);
  }
  expect(writtenMoment(schedule, schedule.operations[0]!.start)).toEqual({
    day: 3,
    date: '2026-02-28',
    weekday: 'Sat',
    time: '09:00',
  });
  expect(schedule.days).toBeGreaterThan(28);
});

test('what the label says counts instead of the table, and the card says which', () => {
  const rack = demoDocument().shop.rack as Shop;
  const glue = { id: 'white-glue', name: 'the white glue', material: 'pva' };
  const setting = (label: Shop | undefined) => {
    const { operations } = cabinet({
      rack: { ...rack, adhesives: [{ ...glue, ...(label && { label }) }] },
    }).build;
    return operations.find((o) => o.id === 'base/cure')!;
  };
  const ours = setting(undefined);
  expect(ours.minutes.waiting).toBe(60);
  expect(ours.lines.join(' ')).toContain('the label on the bottle comes first');
  const theirs = setting({ clampMinutes: 25 });
  expect(theirs.minutes.waiting).toBe(25);
  expect(theirs.lines.join(' ')).toContain('25 min, as the label of the white glue says');
});

test('a card tells how long to wait by the maker’s own minutes, too, and not where the work goes on at once', () => {
  const { build } = cabinet({
    timings: {
      edge: { active: 9, waiting: 95 },
      cure: { active: 1, waiting: 120 },
      finish: { active: 30, waiting: 600 },
    },
  });
  const told = new Map(
    build.operations.flatMap((o) => {
      const line = o.lines.find((l) => /^(Leave it in clamps|Let it dry) for/.test(l));
      return line === undefined ? [] : [[o.id, `${o.minutes.waiting} ${line}`] as const];
    }),
  );
  expect(told.get('J1/edge')).toBe(
    '95 Leave it in clamps for 1 h 35 min, the time you entered for this work.',
  );
  expect(told.get('base/cure')).toBe('120 Leave it in clamps for 2 h, the time you entered for this work.');
  expect(told.get('finish/coat-1')).toBe('600 Let it dry for 10 h, the time you entered for this work.');
  for (const o of build.operations)
    if (o.lines.some((l) => l.startsWith('The next strip goes on at once')))
      expect(o.minutes.waiting).toBe(0);
});

test('the maker’s own minutes replace the usual ones; a kind that there isn’t is told', () => {
  const usual = cabinet().build.operations.filter((o) => o.kind === 'rip');
  const { build } = cabinet({ timings: { rip: { active: 11 }, ripp: { active: 1 } } });
  const own = build.operations.filter((o) => o.kind === 'rip');
  expect(usual.every((o) => o.minutes.active === 4)).toBe(true);
  expect(own.length).toBe(usual.length);
  expect(own.every((o) => o.minutes.active === 11)).toBe(true);
  expect(build.snags.map((s) => `${s.code} ${s.where.path}`)).toContain(
    'timings.no-such-kind shop/timings/ripp',
  );
});
