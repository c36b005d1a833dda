import type { Breakdown } from '../breakdown/index.ts';
import type { FinishPlan } from '../build/index.ts';
import type { JobDocument } from '../job/index.ts';
import {
  fixingsUsed,
  hingesUsed,
  pinsUsed,
  pullsUsed,
  runnersUsed,
  type SetOut,
  screwsUsed,
  staysUsed,
} from '../setting-out/index.ts';

/** One thing that costs money, and how the amount comes about. */
export interface CostRow {
  readonly what: string;
  readonly count: number;
  /** Price of one. */
  readonly each: number;
  readonly amount: number;
  readonly from: string;
}

/** What the piece costs, in the shop's currency. */
export interface Costs {
  readonly currency: string;
  /** Sheets, strips, screws, hinges, runners and pins that must be bought. */
  readonly bought: readonly CostRow[];
  readonly material: number;
  readonly labour: CostRow | undefined;
  readonly total: number;
}

/** Adds up what must be bought and what the hours are reckoned at. Rack stock counts as paid. */
export function costsOf(
  job: JobDocument,
  setOut: SetOut,
  breakdown: Breakdown,
  activeMinutes: number,
  finishing?: FinishPlan,
): Costs {
  const bought: CostRow[] = breakdown.purchases.map((p) => {
    const lot = job.shop.rack.lots.find((l) => l.id === p.lot)!;
    const stock = lot.stock.find((s) => s.id === p.stock)!;
    return row(
      `${lot.name}, ${stock.name ?? stock.id}`,
      p.count,
      p.price,
      'cutting plan, price on the rack list',
    );
  });
  for (const [id, count] of screwsUsed(setOut)) {
    const screw = job.shop.rack.screws.find((s) => s.id === id)!;
    const lacking = count - (screw.have ?? 0);
    if (lacking > 0)
      bought.push(
        row(screw.name ?? id, lacking, screw.price ?? 0, `${count} needed, ${screw.have ?? 0} on the rack`),
      );
  }
  for (const [id, count] of fixingsUsed(setOut)) {
    const fixing = job.shop.rack.fixings?.find((f) => f.id === id);
    const have = fixing?.have ?? 0;
    if (count > have)
      bought.push(
        row(fixing?.name ?? id, count - have, fixing?.price ?? 0, `${count} needed, ${have} on the rack`),
      );
  }
  for (const [id, count] of hingesUsed(setOut)) {
    const hinge = job.shop.rack.hinges?.find((h) => h.id === id);
    const lacking = count - (hinge?.have ?? 0);
    if (lacking > 0)
      bought.push(
        row(
          hinge?.name ?? id,
          lacking,
          hinge?.price ?? 0,
          `${count} needed, ${hinge?.have ?? 0} on the rack`,
        ),
      );
  }
  for (const [used, rack] of [
    [staysUsed(setOut), job.shop.rack.stays],
    [pullsUsed(setOut), job.shop.rack.pulls],
  ] as const)
    for (const [id, count] of used) {
      const one = rack?.find((x) => x.id === id);
      const have = one?.have ?? 0;
      if (count > have)
        bought.push(
          row(one?.name ?? id, count - have, one?.price ?? 0, `${count} needed, ${have} on the rack`),
        );
    }
  for (const [id, count] of runnersUsed(setOut)) {
    const runner = job.shop.rack.runners?.find((r) => r.id === id);
    const lacking = count - (runner?.have ?? 0);
    if (lacking > 0)
      bought.push(
        row(
          runner?.name ?? id,
          lacking,
          runner?.price ?? 0,
          `${count} needed, ${runner?.have ?? 0} on the rack`,
        ),
      );
  }
  for (const [id, count] of pinsUsed(setOut)) {
    const pin = job.shop.rack.pins?.find((p) => p.id === id);
    const lacking = count - (pin?.have ?? 0);
    if (lacking > 0)
      bought.push(
        row(pin?.name ?? id, lacking, pin?.price ?? 0, `${count} needed, ${pin?.have ?? 0} on the rack`),
      );
  }
  bought.push(...finishCost(finishing, job.shop.rack.finishes[0]?.price));
  const material = cents(bought.reduce((sum, b) => sum + b.amount, 0));
  const hours = Math.round((activeMinutes / 60) * 10) / 10;
  const { hourly } = job.shop;
  const labour =
    hourly === undefined ? undefined : row('Work', hours, hourly, 'hours on the step cards, the shop’s rate');
  return {
    currency: job.shop.currency,
    bought,
    material,
    labour,
    total: cents(material + (labour?.amount ?? 0)),
  };
}

/** The finish that is used up, to the tenth of a litre, where it has a price. */
function finishCost(plan: FinishPlan | undefined, price: number | undefined): readonly CostRow[] {
  if (!plan || price === undefined) return [];
  const litres = Math.ceil(plan.litres * 10) / 10;
  const from = `litres for ${plan.areaM2.toFixed(1)} m², all coats, with waste`;
  return litres > 0 ? [row(plan.lot?.name ?? plan.kind.name, litres, price, from)] : [];
}

function row(what: string, count: number, each: number, from: string): CostRow {
  return { what, count, each, amount: cents(count * each), from };
}

function cents(amount: number): number {
  return Math.round(amount * 100) / 100;
}
