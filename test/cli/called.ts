import { fileURLToPath } from 'node:url';
import { runCommand } from '../../src/cli/run-command.ts';

/** What came of a command line. */
export interface Called {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** Runs a command line in this process. */
export async function called(...args: readonly string[]): Promise<Called> {
  let out = '';
  let err = '';
  const code = await runCommand(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { code, out, err };
}

export const ROOT = fileURLToPath(new URL('../../', import.meta.url));
export const DEMO = `${ROOT}examples/glaze-cabinet.json`;

/** The path of a cut problem kept for tests. */
export function cutCase(name: string): string {
  return `${ROOT}test/cases/cut/${name}.json`;
}
