import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { called, DEMO, ROOT } from './called.ts';

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

describe('cut JOB --ticked', () => {
  test('the new job goes on from what the ticked cards have cut, also when the parts were measured before it was noted', async () => {
    const boots = `${ROOT}examples/boot-bench.json`;
    const { operations } = JSON.parse((await called('steps', boots, '--json')).out);
    const upTo = operations.findIndex((o: { id: string }) => o.id === 'S1.3/rip-S1.6');
    const job = JSON.parse(readFileSync(boots, 'utf8'));
    job.work = {
      done: operations
        .slice(0, upTo + 1)
        .map(({ id, does }: { id: string; does: { at_mm?: number } }) =>
          does.at_mm === undefined ? { id } : { id, at: `${does.at_mm} mm` },
        ),
      measured: {
        'A1.length': '451.2 mm',
        'A2.length': '451.2 mm',
        'D1.length': '353 mm',
        'D2.length': '353 mm',
      },
    };
    const file = join(folder, 'ticked.json');
    writeFileSync(file, JSON.stringify(job));
    const told = await called('check', file);
    expect([told.code, told.out]).toEqual([1, expect.stringContaining('--ticked')]);
    const next = join(folder, 'noted.json');
    expect((await called('cut', file, '--ticked', '--out', next)).code).toBe(0);
    const noted = JSON.parse(readFileSync(next, 'utf8'));
    expect(noted.work.measured).toEqual(job.work.measured);
    expect(noted.work.made).toHaveLength(4);
    expect((await called('check', next)).code).toBe(0);
    expect((await called('dry-fit', next)).out).toMatch(
      /^(\d+) of \1 operations run\. The piece is as drawn\./,
    );
    const cards = (await called('steps', next)).out;
    expect(cards).toContain('“S1.6, cut so far”');
    expect(cards).not.toContain('Crosscut A1 off');
  });

  test('goes by itself, and needs a tick', async () => {
    expect((await called('cut', DEMO, '--ticked')).err).toBe(
      'No card is ticked that cuts a sheet or a strip.\n',
    );
    expect((await called('cut', DEMO, '--ticked', '--sawn', 'S1')).code).toBe(2);
  });
});
