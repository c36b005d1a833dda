import { execFile, spawn } from 'node:child_process';
import { expect, test } from 'vitest';
import { called, cutCase, DEMO, ROOT } from './called.ts';

function started(
  program: string,
  args: readonly string[],
): Promise<{ code: number; out: string; err: string }> {
  return new Promise((resolve) => {
    execFile(program, args, { cwd: ROOT, maxBuffer: 2 ** 26 }, (error, out, err) =>
      resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
  });
}

const node = (...args: readonly string[]) => started(process.execPath, ['bin/casewright.mjs', ...args]);

test('a process prints JSON alone, the same as the command does here', async () => {
  const problem = ['cut', '--problem', cutCase('rack-first'), '--json'];
  const job = ['parts', DEMO, '--json'];
  expect(await Promise.all([node(...job), node(...problem)])).toEqual([
    await called(...job),
    await called(...problem),
  ]);
});

test('npx casewright runs from the checkout, and bad input ends with 2', async () => {
  expect(await started('npx', ['casewright', 'parts', 'nothing-here.json'])).toEqual({
    code: 2,
    out: '',
    err: 'There is no file “nothing-here.json”.\n',
  });
});

test('a reader that stops early, as head does, is no fault', async () => {
  const child = spawn(process.execPath, ['bin/casewright.mjs', 'steps', DEMO, '--json'], { cwd: ROOT });
  let err = '';
  child.stderr.on('data', (text) => {
    err += text;
  });
  child.stdout.once('data', () => child.stdout.destroy());
  const code = await new Promise((resolve) => child.once('close', resolve));
  expect([code, err]).toEqual([0, '']);
});
