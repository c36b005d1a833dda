import { expect, test } from 'vitest';
import { fromMm, Ledger, type Ticks, type Traced } from '../../measure/index.ts';
import { runningClear } from './running-clear.ts';

test('equal spaces are set alike until what was rounded adds up to over a step', () => {
  const l = new Ledger();
  const typed = (mm: number): Traced => l.document(`design/records/a/${mm}`, fromMm(mm), `${mm} mm`);
  const clear = typed(300.2);
  let further: Traced | undefined;
  const set: Ticks[] = [];
  for (let i = 0; i < 7; i++) {
    const next = runningClear(l, clear, further, typed(0.5));
    set.push(l.ticks(next.printed));
    further = next.further;
    expect(Math.abs(l.ticks(further))).toBeLessThanOrEqual(fromMm(0.5));
  }
  // By hand: 0.2 mm short each; the third would bring it to 0.6, and 300.2 + 0.4 is set at 300.5.
  expect(set).toEqual([300, 300, 300.5, 300, 300, 300.5, 300].map(fromMm));
});
