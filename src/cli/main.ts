import { runCommand } from './run-command.ts';

// Whoever reads may stop early, as `head` does: then there is no one left to write to.
process.stdout.on('error', (e: NodeJS.ErrnoException) => {
  if (e.code !== 'EPIPE') throw e;
  process.exit();
});

process.exitCode = await runCommand(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
});
