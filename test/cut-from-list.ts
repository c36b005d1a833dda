import { readList } from '../src/breakdown/index.ts';
import { checkShop } from '../src/job/index.ts';
import type { Traced } from '../src/measure/index.ts';
import { type ListPlan, planList } from '../src/plan/index.ts';
import { demoDocument } from './build/built.ts';

/** The wood of a workpiece: where it lay in its sheet, as the sheet lies, and how large it is. */
export interface Wood {
  readonly sheet: string;
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** A list cut from lots of its own, in the shop of the glaze cabinet. */
export function cutFrom(lots: readonly object[], list: string, more: object = {}): ListPlan {
  const { shop } = demoDocument();
  const checked = checkShop({ ...shop, ...more, rack: { ...(shop.rack as object), lots } });
  if (!checked.ok) throw new Error(checked.snags.map((s) => s.sentence).join('\n'));
  const read = readList(list, checked.shop);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const planning = planList(checked.shop, read.rows);
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

export function mmOf(plan: ListPlan, t: Traced): number {
  return plan.setOut.ledger.ticks(t) / 3200;
}

/** Follows the cards with a saw and nothing else: what wood every name stands for at the end, and how long and wide it is. */
export function sawnByCards(plan: ListPlan, kerf: number) {
  const wood = new Map<string, Wood>(
    plan.build.stock.map((s) => [
      s.name,
      { sheet: s.name, x: 0, y: 0, length: mmOf(plan, s.length), width: mmOf(plan, s.width) },
    ]),
  );
  const turned = new Set<string>();
  for (const { does } of plan.build.operations) {
    if (does.act === 'name') {
      wood.set(does.as.name, wood.get(does.workpiece)!);
      if (does.as.turned) turned.add(does.as.name);
    }
    if (does.act !== 'saw') continue;
    const from = wood.get(does.workpiece)!;
    wood.delete(does.workpiece);
    // Once it goes by its own length, a part that lies across the sheet is measured the other way.
    const along = (does.across === 'length') !== turned.has(does.workpiece);
    const at = mmOf(plan, does.at);
    const [ends, begins] = does.keep === 'before' ? [at, at + kerf] : [at - kerf, at];
    const halves = along
      ? [
          { ...from, length: ends },
          { ...from, x: from.x + begins, length: from.length - begins },
        ]
      : [
          { ...from, width: ends },
          { ...from, y: from.y + begins, width: from.width - begins },
        ];
    does.yields.forEach((y, i) => {
      if (!y) return;
      wood.set(y.name, halves[i]!);
      if (y.turned) turned.add(y.name);
    });
  }
  return {
    wood,
    sizeOf: (name: string) => {
      const w = wood.get(name)!;
      return turned.has(name) ? [w.width, w.length] : [w.length, w.width];
    },
  };
}
