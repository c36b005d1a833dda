import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // No test changes what a module keeps: files of a worker share what they import.
    isolate: false,
    setupFiles: ['./test/seed.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'desk',
          include: ['src/**/*.test.{ts,tsx}', 'test/**/*.test.ts'],
          exclude: ['test/browser/**'],
          sequence: { groupOrder: 0 },
        },
      },
      {
        // One browser at a time, and last: they need both cores.
        extends: true,
        test: {
          name: 'browser',
          include: ['test/browser/**/*.test.ts'],
          maxWorkers: 1,
          // What a page shows follows an edit a moment later, more than one on a busy machine.
          expect: { poll: { timeout: 30_000 } },
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
