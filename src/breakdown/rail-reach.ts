import type { Shop } from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import { parseLength, ticks } from '../measure/index.ts';
import type { CutStock } from './cut-problem.ts';
import type { LotProblem } from './lot-problem.ts';

/**
 * The lot with the stock alone that the shop's rail can true and cut; undefined where that is all of it, or nothing. Stock without
 * raw sides may be longer than the rail, if it is cut across first.
 */
export function withinReach(shop: Shop, lot: LotProblem): LotProblem | undefined {
  const rail = shop.tools.find((t) => t.kind === 'guide-rail');
  if (!rail || lot.lot.form === 'strip') return undefined;
  const read = parseLength(rail.length, shop.units);
  if (!read.ok) throw new Error(`unchecked length: ${rail.length}`);
  const longest = ticks(read.value - SETTING_OUT.railBeyond.value);
  const within = (s: CutStock) => s.yard === true || Math.max(s.length, s.width!) <= longest;
  const all = lot.problem.stock;
  if (all.every(within)) return undefined;
  const stock = all.filter((s) => within(s) || (s.trim === 0 && Math.min(s.length, s.width!) <= longest));
  if (stock.length === 0) return undefined;
  const rules = stock.every(within) ? {} : { rules: { ...lot.problem.rules, longest } };
  const beyondRail = all.filter((s) => !stock.includes(s)).map((s) => lot.sources.get(s.id)!.stock.id);
  return { ...lot, beyondRail, problem: { ...lot.problem, stock, ...rules } };
}
