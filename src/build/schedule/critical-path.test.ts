import { expect, test } from 'vitest';
import { criticalPath } from './critical-path.ts';

/** Activity, duration, what it needs; then earliest start and finish, latest start and finish, slack as published. */
type Row = readonly [string, number, string, number, number, number, number, number];

interface Published {
  readonly source: string;
  readonly duration: number;
  readonly critical: string;
  readonly rows: readonly Row[];
}

const TABLES: readonly Published[] = [
  {
    source: 'Heizer and Render, Operations Management, Tables 3.2 and 3.3 (needs and times from memory)',
    duration: 15,
    critical: 'A C E G H',
    rows: [
      ['A', 2, '', 0, 2, 0, 2, 0],
      ['B', 3, '', 0, 3, 1, 4, 1],
      ['C', 2, 'A', 2, 4, 2, 4, 0],
      ['D', 4, 'A B', 3, 7, 4, 8, 1],
      ['E', 4, 'C', 4, 8, 4, 8, 0],
      ['F', 3, 'C', 4, 7, 10, 13, 6],
      ['G', 5, 'D E', 8, 13, 8, 13, 0],
      ['H', 2, 'F G', 13, 15, 13, 15, 0],
    ],
  },
  {
    source: 'Taylor, Introduction to Management Science, ch. 8, seven activities on arrows',
    duration: 20,
    critical: '1-3 3-4 4-5 5-6',
    rows: [
      ['1-2', 7, '', 0, 7, 2, 9, 2],
      ['1-3', 10, '', 0, 10, 0, 10, 0],
      ['2-4', 6, '1-2', 7, 13, 9, 15, 2],
      ['3-4', 5, '1-3', 10, 15, 10, 15, 0],
      ['3-5', 4, '1-3', 10, 14, 14, 18, 4],
      ['4-5', 3, '2-4 3-4', 15, 18, 15, 18, 0],
      ['5-6', 2, '3-5 4-5', 18, 20, 18, 20, 0],
    ],
  },
  {
    source: 'Taylor, Introduction to Management Science, ch. 8, thirteen activities, one of them a dummy',
    duration: 38,
    critical: '1-3 3-5 5-7 7-8 8-9',
    rows: [
      ['1-2', 8, '', 0, 8, 1, 9, 1],
      ['1-3', 10, '', 0, 10, 0, 10, 0],
      ['1-4', 9, '', 0, 9, 6, 15, 6],
      ['2-5', 6, '1-2', 8, 14, 9, 15, 1],
      ['2-6', 4, '1-2', 8, 12, 16, 20, 8],
      ['3-5', 5, '1-3', 10, 15, 10, 15, 0],
      ['4-5', 0, '1-4', 9, 9, 15, 15, 6],
      ['4-7', 7, '1-4', 9, 16, 20, 27, 11],
      ['5-7', 12, '2-5 3-5 4-5', 15, 27, 15, 27, 0],
      ['5-8', 15, '2-5 3-5 4-5', 15, 30, 16, 31, 1],
      ['6-9', 18, '2-6', 12, 30, 20, 38, 8],
      ['7-8', 4, '4-7 5-7', 27, 31, 27, 31, 0],
      ['8-9', 7, '5-8 7-8', 31, 38, 31, 38, 0],
    ],
  },
  {
    source: 'a worked homework table with half weeks (needs inferred from the table)',
    duration: 18.0,
    critical: 'B C E F G',
    rows: [
      ['A', 2, '', 0, 2, 1.5, 3.5, 1.5],
      ['B', 3.5, '', 0, 3.5, 0.0, 3.5, 0.0],
      ['C', 1.5, 'A B', 3.5, 5.0, 3.5, 5.0, 0.0],
      ['D', 4.5, 'A', 2, 6.5, 6.0, 10.5, 4.0],
      ['E', 5.5, 'C', 5.0, 10.5, 5.0, 10.5, 0.0],
      ['F', 0.5, 'D E', 10.5, 11.0, 10.5, 11.0, 0.0],
      ['G', 7, 'F', 11.0, 18.0, 11.0, 18.0, 0.0],
      ['H', 5.5, 'E', 10.5, 16.0, 12.5, 18.0, 2.0],
    ],
  },
];

for (const { source, duration, critical, rows } of TABLES)
  test(`as published: ${source}`, () => {
    const steps = rows.map(([id, long, needs]) => ({
      id,
      duration: long,
      after: needs === '' ? [] : needs.split(' '),
    }));
    const found = criticalPath(steps);
    expect(found.duration).toBe(duration);
    expect(found.critical.join(' ')).toBe(critical);
    for (const [id, , , es, ef, ls, lf, slack] of rows)
      expect(found.times.get(id), id).toEqual({
        earliestStart: es,
        earliestFinish: ef,
        latestStart: ls,
        latestFinish: lf,
        slack,
      });
  });

test('a step that stands before what it needs is our mistake', () => {
  expect(() => criticalPath([{ id: 'glue', duration: 1, after: ['cut'] }])).toThrow('glue stands before cut');
});
