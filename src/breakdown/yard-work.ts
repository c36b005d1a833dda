import type { Shop } from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import { type Ledger, parseLength, type Traced } from '../measure/index.ts';

/** What the yard does to sheets that are bought, and the room for them on the way home. */
export interface YardWork {
  /** Rough cuts in a sheet at most. */
  readonly cuts: number;
  /** How far beside the line a rough cut stays, on either side. */
  readonly over: Traced;
  /** What a rough cut takes in the plan: the kerf of every cut, and `over` on both sides. */
  readonly kerf: Traced;
  /** The largest piece that comes home, its rough sides still on: along and across, either way round. */
  readonly room: readonly [Traced, Traced];
}

/** The yard’s work as the shop asks for it; nothing where it says nothing. */
export function yardWork(ledger: Ledger, shop: Shop, kerf: Traced): YardWork | undefined {
  const asked = shop.cutting?.yard;
  if (!asked) return undefined;
  const typed = (path: string, text: string): Traced => {
    const read = parseLength(text, shop.units);
    if (!read.ok) throw new Error(`unchecked length: ${text}`);
    return ledger.document(path, read.value, text);
  };
  const at = 'shop/cutting/yard';
  const over = asked.over === undefined ? ledger.row(SETTING_OUT.yardOver) : typed(`${at}/over`, asked.over);
  const vehicle = typed(`${at}/vehicle/length`, asked.vehicle.length);
  const rail = shop.tools.find((t) => t.kind === 'guide-rail');
  // Whatever comes home is trued along its whole length, so it must not be longer than the rail guides.
  const length = rail
    ? ledger.least(
        'as long as the vehicle takes and the rail guides',
        vehicle,
        ledger.less(
          'what the rail guides',
          typed(`shop/tools/${rail.id}/length`, rail.length),
          ledger.row(SETTING_OUT.railBeyond),
        ),
      )
    : vehicle;
  return {
    cuts: asked.cuts ?? 0,
    over,
    kerf: ledger.sum('kerf of the plan, and what a rough cut stays away on both sides', kerf, over, over),
    room: [length, typed(`${at}/vehicle/width`, asked.vehicle.width)],
  };
}
