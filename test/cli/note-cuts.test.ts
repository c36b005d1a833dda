import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { called, DEMO } from './called.ts';

const folder = mkdtempSync(join(tmpdir(), 'casewright-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface LotOfPlan {
  readonly plan: { readonly sheets: readonly { readonly placed: readonly { readonly piece: string }[] }[] };
}

describe('cut JOB --sawn', () => {
  test('the new job has the parts made, and plans the rest', async () => {
    const file = join(folder, 'next.json');
    const { code } = await called('cut', DEMO, '--sawn', 'S1, S2', '--spoiled', 'A1', '--out', file);
    expect(code).toBe(0);
    const job = JSON.parse(readFileSync(file, 'utf8'));
    const made: string[] = job.work.made.map((m: { part: string }) => m.part);
    expect(made.length).toBeGreaterThan(0);
    expect(made).not.toContain('case/left-side');
    const again = await called('cut', file, '--json');
    expect(again.code).toBe(0);
    const { lots }: { lots: LotOfPlan[] } = JSON.parse(again.out);
    const placed = lots.flatMap((l) => l.plan.sheets.flatMap((s) => s.placed.map((p) => p.piece)));
    expect(placed.filter((p) => made.includes(p))).toEqual([]);
  });

  test('what isn’t there is told with the nearest', async () => {
    const wrong = await called('cut', DEMO, '--sawn', 'S77');
    expect([wrong.code, wrong.out]).toEqual([2, '']);
    expect(wrong.err).toContain('Nearest: “');
    expect((await called('cut', DEMO, '--spoiled', 'A1')).code).toBe(2);
    expect((await called('cut', '--sawn', 'S1')).code).toBe(2);
  });
});
