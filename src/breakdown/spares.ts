import type { Lot } from '../job/index.ts';
import type { Ledger, Traced } from '../measure/index.ts';
import type { CutSize, Part } from '../setting-out/index.ts';
import type { Leftover, LotBreakdown } from './break-down.ts';
import { goodFacesOf } from './lot-problem.ts';
import { type FlawThere, flawsWithin } from './where-it-lies.ts';

/** What a part would be cut from again, should it be spoiled. */
export interface Spare {
  readonly part: Part;
  /** A leftover of this plan, stock that is still on the rack, stock to buy, or nothing that is large enough. */
  readonly from: 'leftover' | 'rack' | 'buy' | 'nothing';
  /** The leftover's name, or the stock's id. */
  readonly name?: string;
}

/** Parts with one answer together, in the order of the parts. */
export interface SpareGroup {
  /** The stock or leftover as a maker would call it. */
  readonly says: string;
  /** Nothing there is would give them again. */
  readonly lastChance: boolean;
  readonly marks: readonly string[];
}

/** What could be cut from again, parts with one answer together; those with no second chance first. */
export function spareGroups(breakdown: {
  readonly spares: readonly Spare[];
  readonly lots: readonly { readonly lot: Pick<Lot, 'name' | 'stock'> }[];
}): readonly SpareGroup[] {
  const stock = new Map(
    breakdown.lots.flatMap(({ lot }) =>
      lot.stock.map((s) => [s.id, `${lot.name}, ${s.name ?? s.id}`] as const),
    ),
  );
  const says = ({ from, name = '' }: Spare) =>
    from === 'leftover'
      ? name
      : from === 'rack'
        ? `${stock.get(name) ?? name}: another from the rack`
        : from === 'buy'
          ? `${stock.get(name) ?? name}: another to buy`
          : 'nothing that is there or can be bought';
  const groups = new Map<string, { lastChance: boolean; marks: string[] }>();
  for (const spare of breakdown.spares) {
    const of = groups.get(says(spare)) ?? { lastChance: spare.from === 'nothing', marks: [] };
    of.marks.push(spare.part.mark);
    groups.set(says(spare), of);
  }
  const all = [...groups].map(([says, of]): SpareGroup => ({ says, ...of }));
  return [...all.filter((g) => g.lastChance), ...all.filter((g) => !g.lastChance)];
}

interface Source {
  readonly from: 'leftover' | 'rack' | 'buy';
  readonly name: string;
  readonly length: number;
  readonly width: number;
  /** What of it is clear of its flaws; absent: all of it. */
  readonly clear?: readonly { readonly length: number; readonly width: number }[];
  /** How many good faces it has. */
  readonly faces: number;
}

/**
 * For each part of a lot, the smallest leftover that would give it again; else the smallest stock left on the rack, else
 * the cheapest to buy. One spoiled part at a time: a leftover may stand in for several. What is kept as a test piece comes
 * only before what must be bought. Parts of a blank are cut again each by itself.
 */
export function sparesOf(
  ledger: Ledger,
  lot: LotBreakdown,
  leftovers: readonly Leftover[],
  testPieces: ReadonlySet<string>,
  joinedIn: (blank: Part) => readonly Part[],
): readonly Spare[] {
  const ticks = (t: Traced) => ledger.ticks(t);
  const area = (s: Source) => s.length * s.width;
  const left = leftovers
    .filter((l) => l.lot === lot.lot.id)
    .map(
      (l): Source => ({
        from: 'leftover',
        name: l.name,
        length: ticks(l.length),
        width: ticks(l.width),
        ...clearOf(l.flaws, { length: ticks(l.length), width: ticks(l.width) }, lot.lot.form === 'strip'),
        faces: goodFacesOf(lot.sheets.find((s) => s.name === l.sheet)!.source.stock),
      }),
    )
    .sort((a, b) => area(a) - area(b));
  const used = (id: string) => lot.sheets.filter((s) => s.source.onRack && s.source.stock.id === id).length;
  const stock = [...lot.problem.sources.values()].map(({ stock, onRack, length, width, trim, flaws }) => {
    const strip = lot.lot.form === 'strip';
    const inside = (t: Traced) => ticks(t) - 2 * ticks(trim);
    const size = { length: inside(length), width: strip ? ticks(width) : inside(width) };
    const place = { ...size, x: ticks(trim), y: strip ? 0 : ticks(trim) };
    const clear = clearOf(flawsWithin(ledger, flaws, place, strip), size, strip);
    return { stock, onRack, size: { ...size, ...clear, faces: goodFacesOf(stock) } };
  });
  const rack = stock
    .filter((s) => s.onRack && used(s.stock.id) < s.stock.have!)
    .map((s): Source => ({ from: 'rack', name: s.stock.id, ...s.size }))
    .sort((a, b) => area(a) - area(b));
  const buy = stock
    .filter((s) => !s.onRack)
    .sort((a, b) => a.stock.price! - b.stock.price!)
    .map((s): Source => ({ from: 'buy', name: s.stock.id, ...s.size }));
  const isKept = (s: Source) => testPieces.has(s.name);
  const sources = [...left.filter((s) => !isKept(s)), ...rack, ...left.filter(isKept), ...buy];
  return [...lot.problem.pieces].flatMap(([id, parts]) => {
    const size = lot.problem.sizes.get(id)!;
    const faces = lot.problem.problem.pieces.find((p) => p.id === id)!.faces ?? 0;
    const single = parts.flatMap((part) => {
      const joined = joinedIn(part);
      return joined.length > 0 ? joined.map((p) => ({ part: p, size: p.cut })) : [{ part, size }];
    });
    return single.map(({ part, size }): Spare => {
      const found = sources.find((s) => s.faces >= faces && holds(s, size, part, ticks));
      return found ? { part, from: found.from, name: found.name } : { part, from: 'nothing' };
    });
  });
}

/** What is clear on each side of all flaws together. */
function clearOf(
  flaws: readonly FlawThere[],
  { length, width }: { readonly length: number; readonly width: number },
  strip: boolean,
): Pick<Source, 'clear'> {
  if (flaws.length === 0) return {};
  const before = Math.min(...flaws.map((f) => f.x));
  const behind = length - Math.max(...flaws.map((f) => f.x + f.length));
  const ends = [before, behind].map((l) => ({ length: l, width }));
  if (strip) return { clear: ends };
  const below = Math.min(...flaws.map((f) => f.y));
  const above = width - Math.max(...flaws.map((f) => f.y + f.width));
  return { clear: [...ends, ...[below, above].map((w) => ({ length, width: w }))] };
}

function holds(s: Source, size: CutSize, part: Part, ticks: (t: Traced) => number): boolean {
  const [l, w] = [ticks(size.length), ticks(size.width)];
  const turns = part.form === 'sheet' && part.grain === 'free';
  return (s.clear ?? [s]).some(
    (a) => (l <= a.length && w <= a.width) || (turns && w <= a.length && l <= a.width),
  );
}
