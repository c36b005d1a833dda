import { expect, test } from 'vitest';
import { builtExample } from '../../test/build/built.ts';
import { dimensionClashes, lengthsOf, numberedCuts, PLEX, sheetLayout } from './index.ts';

test('numbers of cuts cover neither one another nor a word where there is a place beside', () => {
  const { breakdown, build, drawn } = builtExample('hall-kitchen');
  const { ledger } = drawn;
  const lengths = lengthsOf(ledger, { unit: 'mm', step: 0.5 });
  for (const { lot, problem, sheets } of breakdown.lots.filter((l) => l.lot.form === 'sheet'))
    for (const sheet of sheets) {
      const cuts = numberedCuts(sheet, build.operations);
      const layout = sheetLayout(
        { sheet, form: lot.form, kerf: problem.kerf, cuts, ledger, lengths },
        0.066,
        PLEX,
      );
      expect(dimensionClashes(layout, PLEX), sheet.name).toEqual([]);
    }
});
