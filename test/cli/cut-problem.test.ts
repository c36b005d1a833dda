import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { judgeCuts, readCutPlan, readCutProblem } from '../../src/breakdown/index.ts';
import { called, cutCase, DEMO } from './called.ts';

/** The plan of a problem file, judged from what was printed. */
async function planned(name: string, ...options: readonly string[]) {
  const { code, out, err } = await called('cut', '--problem', cutCase(name), '--json', ...options);
  const plan = JSON.parse(out);
  const problem = readCutProblem(JSON.parse(readFileSync(cutCase(name), 'utf8')));
  if (!problem.ok) throw new Error('refused');
  const read = readCutPlan(problem.problem, plan);
  expect(read.findings).toEqual([]);
  expect(judgeCuts(problem.problem, read.plan!)).toMatchObject({ holds: true });
  return { code, plan, err };
}

describe('cut --problem', () => {
  test('four pieces that fill a sheet exactly, kerf included, are proven to need one', async () => {
    const { code, plan } = await planned('two-by-two');
    expect(code).toBe(0);
    expect(plan).toMatchObject({
      bought: [{ stock: 'sheet', count: 1, cost: 61.35 }],
      cost: 61.35,
      bound: { sheets: 1, cost: 61.35 },
      proven: true,
      unplaced: [],
    });
    expect(plan.sheets[0].placed).toHaveLength(4);
    expect(plan.sheets[0].cuts).toMatchObject({ x_mm: 0, y_mm: 0, length_mm: 2440, width_mm: 1220 });
    expect(plan.sheets[0].left).toEqual([]);
  });

  test('what the rack has is used before anything is bought', async () => {
    const { code, plan } = await planned('rack-first');
    expect(code).toBe(0);
    expect(plan.bought.map((b: { stock: string }) => b.stock)).toEqual(['offcut', 'sheet']);
    const offcut = plan.sheets.find((s: { stock: string }) => s.stock === 'offcut');
    expect(offcut.cuts).toMatchObject({ x_mm: 5, y_mm: 5, length_mm: 1240, width_mm: 600 });
  });

  test('without widths it is one-dimensional; an absent cost is the length', async () => {
    // 3 x 993 + 2 x 3 = 2985 and 2 x 1490 + 3 = 2983 each go into 3000 less twice 5 of trim.
    const { code, plan } = await planned('bars', '--seconds', '0.2');
    expect(code).toBe(0);
    expect(plan).toMatchObject({ cost: 6000, proven: true, bought: [{ stock: 'bar', count: 2 }] });
  });

  test('what fits no stock is unplaced with its reason, the rest is planned, and the exit code is 1', async () => {
    const { code, plan } = await planned('one-too-long', '--seconds', '0.1');
    expect(code).toBe(1);
    expect(plan.unplaced).toEqual([
      { piece: 'rail', count: 1, why: expect.stringContaining('used up') },
      { piece: 'beam', count: 1, why: expect.stringContaining('larger than every') },
    ]);
    expect(plan.sheets[0].placed).toHaveLength(3);
    const told = await called('cut', '--problem', cutCase('one-too-long'), '--seconds', '0.1');
    expect(told.code).toBe(1);
    expect(told.out).toContain('1 × beam: larger than all stock.');
  });

  test('the same problem gives the same bytes; without seconds no clock ends it', async () => {
    const [a, b] = [await planned('rack-first'), await planned('rack-first')];
    expect(JSON.stringify(a.plan)).toBe(JSON.stringify(b.plan));
    expect((await planned('one-too-long')).plan.ended_by_clock).toBe(false);
  });

  test('a problem with five faults is refused with all five', async () => {
    const { code, out, err } = await called('cut', '--problem', cutCase('five-faults'), '--json');
    expect([code, out]).toEqual([2, '']);
    for (const path of [
      'kerf_mm:',
      'stock[0].length_mm:',
      'stock[0].colour:',
      'pieces[0].count:',
      'pieces[1].id:',
    ])
      expect(err).toContain(path);
  });

  test.each(['0', 'soon', '-1'])('--seconds %s is refused', async (seconds) => {
    const { code, err } = await called('cut', '--problem', cutCase('bars'), `--seconds=${seconds}`);
    expect(code).toBe(2);
    expect(err).toContain('--seconds takes a number above 0');
  });

  test('a job and a problem together are refused, and so is neither', async () => {
    expect(await called('cut', DEMO, '--problem', cutCase('bars'))).toMatchObject({ code: 2, out: '' });
    expect(await called('cut', '--problem', cutCase('bars'), '--shop', DEMO)).toMatchObject({ code: 2 });
    expect(await called('cut')).toMatchObject({ code: 2, err: expect.stringContaining('Name a job') });
  });
});
