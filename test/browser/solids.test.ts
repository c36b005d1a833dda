import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSolids } from '../../src/adaptors/solids-manifold.ts';
import { openPage } from './launch.ts';
import { HOLED_BOARD } from './solids-page/holed-board.ts';

const outDir = mkdtempSync(join(tmpdir(), 'casewright-solids-'));
let server: PreviewServer | undefined;

beforeAll(async () => {
  const root = fileURLToPath(new URL('solids-page', import.meta.url));
  const settings = { configFile: false, root, logLevel: 'error' } as const;
  await build({ ...settings, build: { outDir, target: 'es2023' }, worker: { format: 'es' } });
  server = await preview({ ...settings, build: { outDir }, preview: { host: '127.0.0.1', port: 0 } });
});
afterAll(async () => {
  await server?.close();
  rmSync(outDir, { recursive: true, force: true });
});

test('the modeller opens in a worker of a built page, and measures to the bit what it measures in Node', async () => {
  const address = server?.resolvedUrls?.local[0];
  const opened = await openPage(address!, { width: 320, height: 240 });
  try {
    const output = opened.page.locator('output:not(:empty)');
    const solids = await openSolids();
    const here = solids.within(() => solids.make(HOLED_BOARD).volume());
    expect(await output.textContent({ timeout: 20_000 })).toBe(String(here));
    expect(opened.errors).toEqual([]);
  } finally {
    await opened.close();
  }
});
