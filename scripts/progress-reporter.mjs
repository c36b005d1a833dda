import { appendFileSync } from 'node:fs';
import { relative } from 'node:path';

/**
 * A vitest reporter that notes, a line of JSON each, every test file that starts and how it ended, into the file named
 * by TEST_PROGRESS. Unlike a report at the end it is there too when a run had to be stopped.
 */
export default class ProgressReporter {
  onTestModuleStart(module) {
    note({ started: nameOf(module) });
  }

  onTestModuleEnd(module) {
    const counts = { passed: 0, failed: 0, skipped: 0 };
    for (const test of module.children.allTests()) {
      const { state } = test.result();
      counts[state in counts ? state : 'failed']++;
    }
    // A file that failed before or beside its tests (a faulty import, a hook) is one failure.
    if (!module.ok() && counts.failed === 0) counts.failed++;
    note({ ended: nameOf(module), ...counts });
  }
}

function nameOf(module) {
  return relative(process.cwd(), module.moduleId).replaceAll('\\', '/');
}

function note(entry) {
  appendFileSync(process.env.TEST_PROGRESS, `${JSON.stringify(entry)}\n`);
}
