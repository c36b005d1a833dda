import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exact } from './exact.ts';
import { justify } from './justify.ts';
import { lengthOf, type Network, networkOf, type Timetable } from './network.ts';
import { PRIORITY_RULES } from './priority-rules.ts';
import { serialGeneration } from './serial-generation.ts';
import { shortestSchedule } from './shortest-schedule.ts';
import type { Task } from './task.ts';
import { ROUND_THE_CLOCK, type WorkingTime, weekly } from './working-time.ts';

/** Resources there; then, job by job from 1 on: duration, needs, what follows. The published least duration. */
interface Published {
  readonly there: readonly number[];
  readonly least: number;
  readonly jobs: readonly string[];
}

/** From the set of Patterson (1984), Management Science 30: problems with their published optima. */
const PATTERSON: Readonly<Record<string, Published>> = {
  pat1: {
    there: [2, 1, 2],
    least: 19,
    jobs: [
      '0 | 0 0 0 | 2 3 4',
      '6 | 1 0 0 | 9 10',
      '4 | 0 0 0 | 5 6 7',
      '3 | 0 0 0 | 8 11',
      '1 | 0 0 0 | 10',
      '6 | 1 0 1 | 12',
      '2 | 1 0 0 | 8 11',
      '1 | 0 0 0 | 13',
      '4 | 0 1 1 | 14',
      '3 | 0 0 1 | 12',
      '2 | 0 0 1 | 12',
      '3 | 0 1 0 | 13',
      '5 | 0 0 0 | 14',
      '0 | 0 0 0 | ',
    ],
  },
  pat2: {
    there: [5, 5, 3],
    least: 7,
    jobs: [
      '0 | 0 0 0 | 2 3',
      '1 | 2 2 1 | 4 5',
      '2 | 0 2 1 | 6',
      '2 | 3 3 3 | 7',
      '3 | 2 1 3 | 6',
      '2 | 1 1 0 | 7',
      '0 | 0 0 0 | ',
    ],
  },
  pat3: {
    there: [6, 7, 6],
    least: 20,
    jobs: [
      '0 | 0 0 0 | 2 3',
      '3 | 3 2 1 | 4 5',
      '5 | 2 4 2 | 8',
      '6 | 3 1 2 | 10',
      '2 | 4 3 1 | 6 7',
      '3 | 2 0 3 | 11',
      '3 | 1 1 1 | ',
      '4 | 3 1 1 | 9',
      '5 | 2 2 2 | 13',
      '4 | 3 2 3 | 11',
      '2 | 4 1 0 | 12',
      '3 | 5 4 2 | 13',
      '0 | 0 0 0 | ',
    ],
  },
  pat6: {
    there: [13, 13, 13],
    least: 8,
    jobs: [
      '0 | 0 0 0 | 2 3 4',
      '1 | 3 5 2 | 5 6',
      '1 | 5 4 3 | 5 6 7',
      '1 | 5 2 2 | 5 8',
      '1 | 4 1 4 | 9 10',
      '1 | 5 5 4 | 10 12',
      '1 | 3 5 2 | 11 12',
      '1 | 2 4 4 | 10 12',
      '1 | 3 2 2 | 13 14',
      '1 | 3 2 4 | 13',
      '1 | 3 3 2 | 13',
      '1 | 4 1 4 | 13 15 16',
      '1 | 1 4 4 | 17 18',
      '1 | 2 2 2 | 18',
      '1 | 5 5 4 | 18',
      '1 | 1 5 4 | 19',
      '1 | 4 5 4 | 21',
      '1 | 3 2 3 | 20',
      '1 | 5 3 3 | 21',
      '1 | 2 4 6 | 22',
      '1 | 1 6 2 | 22',
      '0 | 0 0 0 | ',
    ],
  },
  pat8: {
    there: [4],
    least: 11,
    jobs: [
      '0 | 0 | 2 3 8',
      '3 | 2 | 5',
      '3 | 3 | 4 6',
      '1 | 2 | 5',
      '2 | 3 | 9',
      '2 | 4 | 7',
      '3 | 2 | 9',
      '3 | 1 | 9',
      '0 | 0 | ',
    ],
  },
  pat11: {
    there: [3, 3],
    least: 18,
    jobs: [
      '0 | 0 0 | 2',
      '2 | 0 3 | 3 5 6',
      '4 | 1 2 | 4 6',
      '2 | 2 0 | 6 7',
      '8 | 1 0 | 7',
      '4 | 3 0 | 8',
      '4 | 1 2 | 8',
      '0 | 0 0 | ',
    ],
  },
  pat14: {
    there: [10],
    least: 43,
    jobs: [
      '0 | 0 | 2 3 4',
      '5 | 5 | 7 8',
      '6 | 1 | 5 6 7',
      '7 | 1 | 5',
      '3 | 3 | 10 11 12',
      '1 | 1 | 11',
      '1 | 2 | 9',
      '3 | 1 | 9',
      '2 | 1 | 15 16',
      '2 | 1 | 13',
      '3 | 1 | 16',
      '6 | 3 | 13 14',
      '9 | 1 | 20',
      '3 | 1 | 19',
      '1 | 3 | 17 18',
      '6 | 5 | 19',
      '9 | 2 | 21 23 24',
      '3 | 3 | 22 23',
      '5 | 3 | 23 24',
      '2 | 1 | 21 24',
      '2 | 4 | 26 27 28',
      '5 | 2 | 25 28',
      '5 | 5 | 26 28',
      '7 | 3 | 25 26',
      '2 | 3 | 29',
      '5 | 5 | 31',
      '3 | 3 | 32',
      '4 | 1 | 30',
      '2 | 3 | 33',
      '3 | 5 | 34',
      '1 | 6 | 34',
      '2 | 2 | 33 34',
      '2 | 3 | 35',
      '1 | 4 | 35',
      '0 | 0 | ',
    ],
  },
};

function networkFrom({ there, jobs }: Published): Network {
  const read = jobs.map((job) =>
    job.split('|').map((f) =>
      f
        .trim()
        .split(' ')
        .filter((w) => w !== '')
        .map(Number),
    ),
  );
  const tasks = read.map(
    ([first, needs], i): Task => ({
      id: `${i + 1}`,
      work: first![0]!,
      wait: 0,
      unbroken: true,
      after: read.flatMap(([, , next], n) => (next!.includes(i + 1) ? [`${n + 1}`] : [])),
      needs: needs!.map((amount, r) => ({ resource: `${r}`, amount, until: 'ready' })),
    }),
  );
  return networkOf(
    tasks,
    there.map((n, i) => ({ id: `${i}`, there: n })),
    ROUND_THE_CLOCK,
  );
}

/** Looks at a timetable minute by minute, without the code that made it. */
function holds(network: Network, timetable: Timetable, workingTime: WorkingTime): void {
  network.tasks.forEach((task, i) => {
    const { start, end, ready } = timetable[i]!;
    expect(ready - end).toBe(task.wait);
    expect(workingTime.fit(start, task.work, task.unbroken)).toEqual([start, end]);
    for (const n of network.before[i]!) expect(timetable[n]!.ready).toBeLessThanOrEqual(start);
  });
  for (const moment of timetable.map((s) => s.start))
    network.there.forEach((there, r) => {
      const used = network.needs.flatMap((needs, i) =>
        needs.map(({ resource, amount, until }) => {
          const { start, end, ready } = timetable[i]!;
          return resource === r && start <= moment && moment < (until === 'ready' ? ready : end) ? amount : 0;
        }),
      );
      expect(used.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(there);
    });
}

for (const [name, published] of Object.entries(PATTERSON))
  test(`the least duration of Patterson’s ${name} is found and proven`, () => {
    const network = networkFrom(published);
    const limits = { enough: Math.max(...network.tail), exactTasks: 40, nodes: 20_000 };
    const { timetable, proven } = shortestSchedule(network, limits);
    expect(lengthOf(timetable)).toBe(published.least);
    expect(proven).toBe(true);
    holds(network, timetable, ROUND_THE_CLOCK);
  });

/** Mornings and afternoons of Monday to Wednesday. */
const SHORT_WEEK = weekly(
  [0, 1, 2].flatMap((day) => [
    { from: day * 1440 + 480, to: day * 1440 + 600 },
    { from: day * 1440 + 660, to: day * 1440 + 780 },
  ]),
  1,
);

const anyTasks = fc.array(
  fc.record({
    work: fc.integer({ min: 0, max: 130 }),
    wait: fc.integer({ min: 0, max: 200 }),
    unbroken: fc.boolean(),
    after: fc.array(fc.nat(6), { maxLength: 2 }),
    hands: fc.integer({ min: 0, max: 2 }),
    clamps: fc.integer({ min: 0, max: 3 }),
  }),
  { minLength: 1, maxLength: 7 },
);

function anyNetwork(drawn: typeof anyTasks extends fc.Arbitrary<infer T> ? T : never): Network {
  const tasks = drawn.map(
    (t, i): Task => ({
      id: `${i}`,
      work: t.work,
      wait: t.wait,
      unbroken: t.unbroken,
      after: [...new Set(t.after.filter((n) => n < i))].map((n) => `${n}`),
      needs: [
        { resource: 'hands', amount: t.hands, until: 'worked' },
        { resource: 'clamps', amount: t.clamps, until: 'ready' },
      ],
    }),
  );
  const there = [
    { id: 'hands', there: 2 },
    { id: 'clamps', there: 3 },
  ];
  return networkOf(tasks, there, SHORT_WEEK);
}

/** Every order there is: what the searches may come to at best. */
function leastOfAllOrders(network: Network): number {
  let least = Infinity;
  const ranks = new Array<number>(network.tasks.length).fill(0);
  const order = (left: readonly number[], next: number): void => {
    if (left.length === 0) least = Math.min(least, lengthOf(serialGeneration(network, ranks)));
    for (const task of left) {
      ranks[task] = next;
      order(
        left.filter((t) => t !== task),
        next + 1,
      );
    }
  };
  order(
    network.tasks.map((_, i) => i),
    0,
  );
  return least;
}

test('every way of scheduling keeps order, hands, clamps and working hours', () => {
  fc.assert(
    fc.property(anyTasks, (drawn) => {
      const network = anyNetwork(drawn);
      for (const rule of PRIORITY_RULES) {
        const first = serialGeneration(network, rule.rank(network));
        const better = justify(network, first);
        holds(network, first, SHORT_WEEK);
        holds(network, better, SHORT_WEEK);
        expect(lengthOf(better)).toBeLessThanOrEqual(lengthOf(first));
      }
    }),
    { numRuns: 60 },
  );
});

test('the exact search finds what trying every order finds, nights and waiting included', () => {
  fc.assert(
    fc.property(
      anyTasks.filter((t) => t.length <= 6),
      (drawn) => {
        const network = anyNetwork(drawn);
        const known = serialGeneration(network, PRIORITY_RULES[0]!.rank(network));
        const found = exact(network, known, 100_000);
        expect(found.proven).toBe(true);
        expect(lengthOf(found.timetable)).toBe(leastOfAllOrders(network));
        holds(network, found.timetable, SHORT_WEEK);
      },
    ),
    { numRuns: 60 },
  );
});

test('a task that needs more than there is, or what comes later, is our mistake', () => {
  const task: Task = { id: 'a', work: 1, wait: 0, unbroken: false, after: [], needs: [] };
  const needs = [{ resource: 'hands', amount: 2, until: 'worked' }] as const;
  expect(() => networkOf([{ ...task, needs }], [{ id: 'hands', there: 1 }], ROUND_THE_CLOCK)).toThrow(
    'so much',
  );
  expect(() => networkOf([{ ...task, after: ['b'] }], [], ROUND_THE_CLOCK)).toThrow('nobody');
  expect(() =>
    networkOf(
      [
        { ...task, after: ['b'] },
        { ...task, id: 'b' },
      ],
      [],
      ROUND_THE_CLOCK,
    ),
  ).toThrow('stands before');
});
