import { runCommand } from './run-command.ts';

/** What `npm start` does: plans the example, writes its book, sums up, and opens the app with it. */
const EXAMPLE = 'examples/glaze-cabinet.json';
const output = {
  out: (text: string) => process.stdout.write(text),
  err: (text: string) => process.stderr.write(text),
};

const code = await runCommand(['plan', EXAMPLE, '--out', 'out/glaze-cabinet'], output);
const once = process.argv.includes('--once');
process.exitCode =
  code > 1 || once ? code : await runCommand(['app', EXAMPLE, ...process.argv.slice(2)], output);
