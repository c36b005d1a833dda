import { readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCommand } from '../../src/cli/run-command.ts';
import { called, DEMO, ROOT } from './called.ts';

let folder: string;
const file = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'casewright-'));
  const job = JSON.parse(readFileSync(DEMO, 'utf8'));
  await writeFile(file('broken.json'), '{ "version": 1, ');
  await writeFile(file('list.json'), '[]');
  await writeFile(file('marked.json'), `\uFEFF${JSON.stringify(job)}`);
  const { records } = job.design;
  const at = (id: string) => records.find((r: { id: string }) => r.id === id);
  at('cabinet').width = 'wide';
  at('case').board = 'walnut';
  at('bay1').parent = 'nowhere';
  at('base').colour = 'red';
  job.shop.tools[0].kerf = '0 mm';
  await writeFile(file('five.json'), JSON.stringify(job));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Refused: exit code 2, nothing on standard output, and no stack trace. */
async function refused(...args: readonly string[]): Promise<string> {
  const { code, out, err } = await called(...args);
  expect([code, out]).toEqual([2, '']);
  expect(err).not.toMatch(/\n {4}at /);
  expect(err).toMatch(/^\S.*\n/);
  return err;
}

describe('help', () => {
  test.each([[[]], [['help']], [['--help']], [['-h']], [['plan', '--help']], [['cut', '-h']]])(
    '%j shows every command, the exit codes and what to begin with',
    async (args) => {
      const { code, out, err } = await called(...args);
      expect([code, err]).toEqual([0, '']);
      for (const command of ['plan', 'check', 'parts', 'steps', 'why', 'cut', 'app', 'dry-fit'])
        expect(out).toContain(`casewright ${command}`);
      expect(out).toContain('examples/glaze-cabinet.json');
      expect(out).toContain('Exit codes: 0 fine, 1');
      for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(120);
    },
  );
});

describe('a call that can’t be', () => {
  test('an unknown command is answered with those there are', async () => {
    expect(await refused('wat')).toBe(
      'There is no command “wat”. The commands are plan, check, parts, steps, why, cut, dry-fit, app.\n',
    );
    await refused('toString');
  });

  test('an unknown option is answered with those the command takes', async () => {
    expect(await refused('plan', DEMO, '--colour')).toBe(
      '“casewright plan” has no option “--colour”; it takes --json, --out, --shop. See “casewright help”.\n',
    );
    await refused('parts', DEMO, '-x');
    expect(await refused('plan', DEMO, '--out')).toContain('--out');
    await refused('plan', DEMO, '--json=yes');
  });

  test('too few or too many arguments are counted', async () => {
    expect(await refused('plan')).toContain('takes 1 argument, not 0');
    expect(await refused('why', DEMO)).toContain('takes 2 arguments, not 1');
    expect(await refused('parts', DEMO, DEMO)).toContain('takes 1 argument, not 2');
  });

  test.each(['70000', '-1', 'x', '80.5'])('app --port %s', async (port) => {
    expect(await refused('app', `--port=${port}`)).toContain('0 to 65535');
  });

  test('app with a shop but no job', async () => {
    expect(await refused('app', '--shop', DEMO)).toContain('goes with a job');
  });
});

describe('a file that can’t be used', () => {
  test('is missing, is a folder, is not JSON, is no job', async () => {
    expect(await refused('plan', file('none.json'))).toContain('There is no file “');
    expect(await refused('parts', ROOT)).toContain('is a folder');
    expect(await refused('check', file('broken.json'))).toMatch(/not JSON: .* position 16/);
    await refused('steps', file('list.json'));
    await refused('steps', file('list.json'), '--shop', DEMO);
    await refused('cut', '--problem', file('none.json'));
    await refused('cut', '--problem', file('broken.json'));
    await refused('parts', DEMO, '--shop', file('broken.json'));
    await refused('parts', DEMO, '--shop', file('none.json'));
    await refused('parts', DEMO, '--shop', file('list.json'));
  });

  test('a job with five faults lists all five, each with its path, in every command', async () => {
    for (const command of ['plan', 'check', 'parts', 'steps', 'dry-fit', 'cut']) {
      const err = await refused(command, file('five.json'), '--json');
      for (const path of [
        'design/records/cabinet/width: ',
        'design/records/case/board: ',
        'design/records/bay1/parent: ',
        'design/records/base/colour: ',
        'shop/tools/saw/kerf: ',
      ])
        expect(err, command).toContain(path);
    }
    await refused('why', file('five.json'), 'left side.length');
  });

  test('a byte order mark in front is read over', async () => {
    expect((await called('parts', file('marked.json'))).code).toBe(0);
  });

  test('a folder for the book that can’t be made', async () => {
    expect(await refused('plan', DEMO, '--out', file('five.json'))).toContain('can’t be written to');
  });
});

test('our own mistake gives exit code 3 and says so', async () => {
  let err = '';
  const code = await runCommand(['parts', DEMO], {
    out: () => {
      throw new Error('the ribbon is worn out');
    },
    err: (text) => {
      err += text;
    },
  });
  expect(code).toBe(3);
  expect(err).toMatch(/^This is our mistake, not yours: Error: the ribbon is worn out/);
});
