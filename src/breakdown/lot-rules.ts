import type { Lot, Shop } from '../job/index.ts';
import { reckonedDensity } from '../materials/index.ts';
import { type Ledger, parseLength, parseMass, type Ticks, toMm } from '../measure/index.ts';
import type { CutProblem } from './cut-problem.ts';
import type { YardWork } from './yard-work.ts';

/** What the shop asks of the cutting of a lot, as rules and objectives of its cut problem. */
export function lotRules(
  shop: Shop,
  lot: Lot,
  thickness: Ticks,
  ledger: Ledger,
  yard: YardWork | undefined,
): Pick<CutProblem, 'rules' | 'objectives' | 'wanted'> {
  const asked = shop.cutting;
  if (!asked) return {};
  const length = (text: string): Ticks => {
    const read = parseLength(text, shop.units);
    if (!read.ok) throw new Error(`unchecked length: ${text}`);
    return read.value;
  };
  const told = asked.objectives ? { objectives: asked.objectives } : {};
  const wanted = asked.wanted
    ? { wanted: asked.wanted.map((w) => ({ length: length(w.length), width: length(w.width) })) }
    : {};
  if (lot.form === 'strip') return { ...told, ...wanted };
  const carry = asked.carryAfter === undefined ? undefined : carried(shop, lot, thickness);
  const rules = {
    ...(asked.stages === undefined ? {} : { stages: asked.stages }),
    ...(asked.first === undefined
      ? {}
      : { first: asked.first === 'rip' ? ('width' as const) : ('length' as const) }),
    ...(asked.hold === undefined ? {} : { hold: length(asked.hold) }),
    ...(carry === undefined ? {} : { carry: { area: carry, cuts: asked.carryAfter! } }),
    ...(yard === undefined
      ? {}
      : {
          yard: {
            cuts: yard.cuts,
            over: ledger.ticks(yard.over),
            length: ledger.ticks(yard.room[0]),
            width: ledger.ticks(yard.room[1]),
          },
        }),
  };
  return { ...told, ...wanted, ...(Object.keys(rules).length > 0 ? { rules } : {}) };
}

/** The area of a board of this lot, in mm², that the strongest person of the shop carries alone. */
function carried(shop: Shop, lot: Lot, thickness: Ticks): number | undefined {
  const kg = shop.people.map((p) => {
    const read = parseMass(p.lift);
    if (!read.ok) throw new Error(`unchecked mass: ${p.lift}`);
    return read.value;
  });
  if (kg.length === 0) return undefined;
  const kgM3 = reckonedDensity(lot.material);
  return Math.round((Math.max(...kg) * 1e9) / (kgM3 * toMm(thickness)));
}
