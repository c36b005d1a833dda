import { expect, test } from 'vitest';
import { called, ROOT } from './called.ts';

/** Jobs in inches whose shops have nothing that is sold by the millimetre. */
test.each(['lamp-table', 'sewing-stand', 'record-bench', 'binders-press-table'])(
  'the cards of %s speak of inches, pounds and square feet alone',
  async (example) => {
    const { code, out } = await called('steps', `${ROOT}examples/${example}.json`);
    expect(code).toBeLessThan(2);
    expect(out).toMatch(/\d"/);
    expect(out).toContain('sq ft');
    expect(
      out.split('\n').filter((line) => /\d ?mm\b|millimet|m²|\d kg\b|\bkilograms?\b/.test(line)),
    ).toEqual([]);
  },
);
