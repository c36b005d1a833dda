import { type Breakdown, provenWords, spareGroups } from '../breakdown/index.ts';
import { formatOf, type Shop } from '../job/index.ts';
import { type Ledger, printSetting, type Traced } from '../measure/index.ts';
import { joinMarks } from '../setting-out/index.ts';
import { table } from './table.ts';

/** The sheets and strips that are cut up, and what is left of them, as tables. */
export function breakdownLines(breakdown: Breakdown, ledger: Ledger, shop: Shop): string {
  const format = formatOf(shop);
  const size = (t: Traced) => printSetting(ledger.ticks(t), format);
  const sheets = breakdown.lots.flatMap((l) =>
    l.sheets.map((s) => [
      s.name,
      l.lot.name,
      s.source.stock.name ?? s.source.stock.id,
      s.source.onRack ? 'rack' : 'buy',
      size(s.source.length),
      size(s.source.width),
    ]),
  );
  const left = breakdown.leftovers.map((l) => [l.name, l.lot, size(l.length), size(l.width)]);
  return [
    table(['sheet', 'lot', 'stock', 'from', 'length', 'width'], sheets),
    '\n',
    ...breakdown.lots.filter((l) => l.sheets.length > 0).map((l) => `${l.lot.name}: ${provenWords(l)}.\n`),
    '\nLeft over\n',
    table(['piece', 'lot', 'length', 'width'], left),
    '\nIf a part is spoiled, cut it again from\n',
    table(
      ['from', 'parts'],
      spareGroups(breakdown).map((g) => [g.says, joinMarks(g.marks)]),
    ),
  ].join('');
}
