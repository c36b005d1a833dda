import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { called, ROOT } from './called.ts';

const page = readFileSync(`${ROOT}docs/command-line.md`, 'utf8');
/** The samples of the page: a command line, and the lines it prints first; `...` stands for more. */
const samples = [...page.matchAll(/```\n\$ npx casewright (.+)\n([\s\S]*?)```/g)].map(
  ([, command, printed]) => ({
    command: command!,
    lines: printed!.trimEnd().split('\n'),
  }),
);

function split(command: string): string[] {
  return [...command.matchAll(/"([^"]*)"|(\S+)/g)].map((m) =>
    (m[1] ?? m[2]!).replace(/^(examples|test)\//, `${ROOT}$1/`),
  );
}

describe('docs/command-line.md', () => {
  test('has a sample of each command, and a heading for every line of the help', async () => {
    const help = (await called('help')).out;
    const named = [...help.matchAll(/^ {2}casewright ([a-z-]+)/gm)].map((m) => m[1]!);
    expect(new Set(samples.map((s) => s.command.split(' ')[0]))).toEqual(
      new Set(named.filter((n) => n !== 'app')),
    );
    const headings = [...page.matchAll(/^## ([a-z-]+)/gm)].map((m) => m[1]!);
    expect([...headings].sort()).toEqual([...named].sort());
  });

  test.each(samples)('prints what it shows: $command', async ({ command, lines }) => {
    const { code, out } = await called(...split(command));
    expect(code).toBe(0);
    const shown = lines.at(-1) === '...' ? lines.slice(0, -1) : [...lines, ''];
    const printed = out.split('\n');
    // How many operations there are is no promise.
    const counted = (line: string) => line.replace(/^\d+ of \d+ operations/, 'N of N operations');
    expect(printed.slice(0, shown.length).map(counted)).toEqual(shown.map(counted));
    if (lines.at(-1) !== '...') expect(printed).toHaveLength(shown.length);
  });
});

describe('docs/json.md', () => {
  test('names every field that plan --json has', async () => {
    const told = readFileSync(`${ROOT}docs/json.md`, 'utf8');
    const contract = readFileSync(`${ROOT}docs/cutting-contract.md`, 'utf8');
    const { out } = await called('plan', `${ROOT}examples/glaze-cabinet.json`, '--json');
    const fields = new Set<string>();
    JSON.parse(out, (key, value) => {
      if (!/^\d*$/.test(key)) fields.add(key);
      return value;
    });
    expect(fields.size).toBeGreaterThan(80);
    const named = (told + contract).match(/`[^`\n]+`/g)!.join(' ');
    expect([...fields].filter((f) => !new RegExp(`\\b${f}\\b`).test(named))).toEqual([]);
  });
});
