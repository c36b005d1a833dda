import type { Leftover, PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import { type Edit, formatOf, type JobDocument, type Shop, type Stock } from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import { printSetting, TICKS_PER_INCH, TICKS_PER_MM, type Traced, ticks } from '../measure/index.ts';
import type { Part } from '../setting-out/index.ts';
import type { Plan } from './plan.ts';

type Planned = Pick<Plan, 'job' | 'setOut' | 'breakdown'>;

/**
 * The edit that says that a sheet or strip of a plan is cut: its parts are made, to the sizes of the moment, it is gone from
 * the rack, and what is left over of it is there. Undefined when the plan has no such sheet.
 */
export function sheetIsCut(plan: Planned, name: string): Edit | undefined {
  const { job, setOut, breakdown } = plan;
  const at = breakdown.lots.find((l) => l.sheets.some((s) => s.name === name));
  const sheet = at?.sheets.find((s) => s.name === name);
  if (!at || !sheet) return undefined;
  const size = (t: Traced) => printSetting(setOut.ledger.ticks(t), formatOf(job.shop));
  const strip = at.lot.form === 'strip';
  const made = partsOn(sheet).map((part) => ({
    part: part.id,
    length: size(part.cut.length),
    ...(strip ? {} : { width: size(part.cut.width) }),
    from: name,
  }));
  const nothing = setOut.ledger.row(SETTING_OUT.nothing);
  const ids = new Set(job.shop.rack.lots.flatMap((l) => l.stock.map((s) => s.id)));
  const left = breakdown.leftovers
    .filter((l) => l.sheet === name)
    .map(
      (l): Stock => ({
        id: freeId(l.name, ids),
        name: `${l.name}, left over`,
        length: size(l.length),
        ...(strip ? {} : { width: size(l.width) }),
        have: 1,
        // Its near sides are trued or sawn, and what is raw at the others lies beyond these sizes.
        ...(at.lot.trim === undefined ? {} : { trim: size(nothing) }),
        ...flawsOf(l, strip, job.shop),
      }),
    );
  const { stock, onRack } = sheet.source;
  const path = `shop/rack/lots/${at.lot.id}/stock`;
  // The rack as it is now: of two sheets that are cut the second must not bring the first one back.
  const there = job.shop.rack.lots.find((l) => l.id === at.lot.id)?.stock ?? [];
  const kept = there.map((s) =>
    onRack && s.id === stock.id ? withoutFlaws({ ...s, have: Math.max(0, (s.have ?? 0) - 1) }) : s,
  );
  return {
    edit: 'all',
    of: [
      { edit: 'set', at: 'work/made', value: [...(job.work.made ?? []), ...made] },
      { edit: 'set', at: path, value: [...kept, ...left] },
    ],
  };
}

/** The edit that says that a part which was cut is spoiled: it is cut again. Undefined when it isn't cut. */
export function partIsSpoiled(job: JobDocument, part: string): Edit | undefined {
  const made = job.work.made ?? [];
  if (!made.some((m) => m.part === part)) return undefined;
  const left = made.filter((m) => m.part !== part);
  return left.length > 0 ? { edit: 'set', at: 'work/made', value: left } : { edit: 'set', at: 'work/made' };
}

/** What of the sheet's flaws lies on a leftover, to the next millimetre or sixteenth of an inch around it. */
function flawsOf({ flaws }: Leftover, strip: boolean, shop: Shop): Pick<Stock, 'flaws'> {
  if (flaws.length === 0) return {};
  const step = shop.units === 'in' ? TICKS_PER_INCH / 16 : TICKS_PER_MM;
  const words = (t: number) => printSetting(ticks(t), formatOf(shop));
  const span = (from: number, size: number) => {
    const low = Math.floor(from / step) * step;
    return [words(low), words(Math.ceil((from + size) / step) * step - low)] as const;
  };
  return {
    flaws: flaws.map((f, i) => {
      const [x, length] = span(f.x, f.length);
      const [y, width] = span(f.y, f.width);
      return { id: `flaw-${i + 1}`, name: f.name, x, length, ...(strip ? {} : { y, width }) };
    }),
  };
}

/** Flaws belong to one sheet, and that is cut. */
function withoutFlaws({ flaws: _, ...stock }: Stock): Stock {
  return stock;
}

function partsOn(sheet: PlannedSheet): readonly Part[] {
  const walk = (node: PlannedNode): readonly Part[] =>
    node.kind === 'cut' ? node.parts.flatMap(walk) : node.kind === 'piece' ? [node.part] : [];
  return walk(sheet.root);
}

/** An id that nothing on the rack has yet; it is taken then. */
export function freeId(name: string, taken: Set<string>): string {
  let id = name;
  for (let n = 2; taken.has(id); n++) id = `${name}-${n}`;
  taken.add(id);
  return id;
}
