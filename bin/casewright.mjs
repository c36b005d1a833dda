#!/usr/bin/env node
// The command line: src/cli/main.ts, read as TypeScript.
try {
  await import('@oxc-node/core/register');
} catch (error) {
  if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
  console.error('The packages are missing: run `npm ci` in the checkout first.');
  process.exit(2);
}
await import('../src/cli/main.ts');
