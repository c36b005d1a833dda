#!/usr/bin/env node
// The command line: src/cli/main.ts.
try {
  const { runProgram } = await import('../scripts/command.mjs');
  await runProgram('main');
} catch (error) {
  if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
  console.error('The packages are missing: run `npm ci` in the checkout first.');
  process.exit(2);
}
