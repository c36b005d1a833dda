import type { JobDocument, Lot, Shop, Stock } from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import { type Ledger, parseLength, type Ticks, type Traced, ticks } from '../measure/index.ts';
import {
  type CutSize,
  goodFaces,
  inOneStrip,
  type Part,
  partsToCut,
  type SetOut,
  sawKerf,
  sawStep,
  stillJoined,
  twoKerfs,
} from '../setting-out/index.ts';
import type { CutGroup, CutPiece, CutProblem, CutStock } from './cut-problem.ts';
import { lotRules } from './lot-rules.ts';
import { type YardWork, yardWork } from './yard-work.ts';

/** Where a stock of the cut problem comes from. */
export interface StockSource {
  readonly stock: Stock;
  readonly onRack: boolean;
  readonly length: Traced;
  readonly width: Traced;
  readonly trim: Traced;
  /** Places that no part may touch, in the sheet’s coordinates. */
  readonly flaws: readonly StockFlaw[];
}

/** A void, a patch, a dent: where it lies on the sheet, and what it is called. */
export interface StockFlaw {
  readonly name: string;
  readonly x: Traced;
  readonly y: Traced;
  readonly length: Traced;
  readonly width: Traced;
}

/** One lot's cutting problem, with the way back from its ids to stock and parts. */
export interface LotProblem {
  readonly lot: Lot;
  /**
   * What a cut takes in the plan: two kerfs, on the grid of what the saw can set. So every part is cut to its own mark
   * with a whole blade in the wood, and no part's size is what other cuts happened to leave.
   */
  readonly kerf: Traced;
  readonly problem: CutProblem;
  /** What the yard does to sheets that are bought; absent where they come as they are. */
  readonly yard?: YardWork;
  readonly sources: ReadonlyMap<string, StockSource>;
  /** Ids of stock that was left alone because the shop's rail is too short for it. */
  readonly beyondRail?: readonly string[];
  /** How far behind a flaw pieces begin in the plan; absent: at once. */
  readonly beyondFlaws?: Traced;
  /** Parts behind each piece id: all cut alike, in the order of marks. */
  readonly pieces: ReadonlyMap<string, readonly Part[]>;
  readonly sizes: ReadonlyMap<string, CutSize>;
}

/** Money is reckoned in hundredths of the currency's hundredth, so that rack stock can be nearly free. */
const UNITS_PER_MONEY = 10_000;

/** The cutting problems of a piece, one for each lot that parts are still to be cut from, in the order of the rack. */
export function lotProblems(job: JobDocument, setOut: SetOut): readonly LotProblem[] {
  const made = new Set((job.work.made ?? []).map((m) => m.part));
  // A panel that is there already needs no boards, nor strips a blank.
  const gluedPanels = setOut.gluedPanels.filter((g) => !made.has(g.panel));
  const cleats = setOut.cleats.filter((c) => !made.has(c.onCase) || !made.has(c.onWall));
  const joinedBlanks = stillJoined(setOut.joinedBlanks, made);
  const parts = partsToCut({ ...setOut, gluedPanels, cleats, joinedBlanks });
  return job.shop.rack.lots
    .map((lot) => ({ lot, parts: parts.filter((p) => p.lot === lot.id && !made.has(p.id)) }))
    .filter(({ parts }) => parts.length > 0)
    .map(({ lot, parts }) => lotProblem(job, setOut, lot, parts));
}

function lotProblem(job: JobDocument, setOut: SetOut, lot: Lot, parts: readonly Part[]): LotProblem {
  const l = setOut.ledger;
  const typed = (path: string, text: string | undefined): Traced => {
    if (text === undefined) return l.row(SETTING_OUT.nothing);
    const read = parseLength(text, job.shop.units);
    if (!read.ok) throw new Error(`unchecked length at ${path}: ${read.problem}`);
    return l.document(path, read.value, text);
  };
  // Scissors take nothing away.
  const kerf = lot.tape !== undefined ? l.row(SETTING_OUT.nothing) : twoKerfs(l, job.shop);
  const t = (x: Traced): Ticks => l.ticks(x);

  const sources = new Map<string, StockSource>();
  const stock: CutStock[] = [];
  const path = `shop/rack/lots/${lot.id}`;
  const yard = lot.form === 'sheet' ? yardWork(l, job.shop, kerf) : undefined;
  for (const s of lot.stock) {
    const length = typed(`${path}/stock/${s.id}/length`, s.length);
    const width =
      lot.form === 'strip'
        ? typed(`${path}/width`, lot.width)
        : typed(`${path}/stock/${s.id}/width`, s.width);
    const trim =
      s.trim === undefined ? typed(`${path}/trim`, lot.trim) : typed(`${path}/stock/${s.id}/trim`, s.trim);
    const size = { length: t(length), ...(lot.form === 'strip' ? {} : { width: t(width) }), trim: t(trim) };
    const asItIs = {
      ...(s.grain === 'free' && lot.form === 'sheet' ? { grain: s.grain } : {}),
      ...(s.goodFaces === undefined ? {} : { faces: goodFacesOf(s) }),
    };
    if ((s.have ?? 0) > 0) {
      const flaws = (s.flaws ?? []).map((f): StockFlaw => {
        const at = `${path}/stock/${s.id}/flaws/${f.id}`;
        const wide = lot.form === 'sheet';
        return {
          name: f.name ?? f.id,
          x: typed(`${at}/x`, f.x),
          y: typed(`${at}/y`, wide ? f.y : undefined),
          length: typed(`${at}/length`, f.length),
          width: typed(`${at}/width`, wide ? f.width : undefined),
        };
      });
      sources.set(`${s.id}:rack`, { stock: s, onRack: true, length, width, trim, flaws });
      // Rack stock costs a little, by size, so that no more of it is broken into than is needed.
      const area = (t(length) / 3200 / 100) * (lot.form === 'strip' ? 1 : t(width) / 3200 / 100);
      const worth = s.value === undefined ? 1 + Math.floor(area) : Math.round(s.value * UNITS_PER_MONEY);
      const bad = flaws.map((f) => ({ x: t(f.x), y: t(f.y), length: t(f.length), width: t(f.width) }));
      stock.push({
        id: `${s.id}:rack`,
        ...size,
        ...asItIs,
        ...(bad.length > 0 ? { flaws: bad } : {}),
        count: s.have!,
        cost: worth,
      });
    }
    if (s.price !== undefined) {
      sources.set(`${s.id}:buy`, { stock: s, onRack: false, length, width, trim, flaws: [] });
      stock.push({
        id: `${s.id}:buy`,
        ...size,
        ...asItIs,
        ...(yard ? { yard: true } : {}),
        cost: Math.max(1, Math.round(s.price * UNITS_PER_MONEY)),
      });
    }
  }

  const pieces = new Map<string, Part[]>();
  const sizes = new Map<string, CutSize>();
  const cut: CutPiece[] = [];
  const alike = new Map<string, string>();
  // Where all stock is good on both sides, it doesn't matter which of them are seen.
  const faces = lot.stock.some((s) => s.goodFaces !== undefined) ? goodFaces(setOut) : () => undefined;
  for (const part of parts) {
    const { length, width } = part.cut;
    // A part of a strip has its own place in it, so it is no other part's like.
    const key = `${t(length)} ${t(width)} ${part.grain}${part.strip === undefined ? '' : ` ${part.id}`} ${faces(part) ?? ''}`;
    const id = alike.get(key) ?? part.id;
    alike.set(key, id);
    const group = pieces.get(id);
    if (group) group.push(part);
    else {
      pieces.set(id, [part]);
      sizes.set(id, { length, width });
    }
  }
  for (const [id, group] of pieces) {
    const size = sizes.get(id)!;
    const seen = faces(group[0]!);
    cut.push({
      id,
      length: t(size.length),
      ...(lot.form === 'strip' ? {} : { width: t(size.width) }),
      count: group.length,
      turn: lot.form === 'sheet' && group[0]!.grain === 'free',
      ...(seen === undefined ? {} : { faces: seen }),
    });
  }
  const groups = lot.form === 'sheet' ? stripsOf(parts) : [];
  return {
    lot,
    kerf,
    problem: {
      kerf: t(kerf),
      stock,
      pieces: cut,
      costScale: UNITS_PER_MONEY,
      ...lotRules(job.shop, lot, parts.map((p) => p.thickness).map(t)[0]!, l, yard),
      ...(groups.length > 0 ? { groups } : {}),
    },
    ...(yard ? { yard } : {}),
    sources,
    pieces,
    sizes,
  };
}

/**
 * The problem with its flaws so much longer and wider as `cuts` cuts before them take less wood than the plan reckons: a cut
 * takes one kerf, the plan takes two, and what stays lies that much nearer to the start.
 */
export function withFlawsGrown(l: Ledger, shop: Shop, lot: LotProblem, cuts: number): LotProblem {
  if (l.ticks(lot.kerf) === 0) return lot;
  const beyondFlaws = l.round(
    'as fine as the saw is set',
    l.times(
      'what the cuts before it leave on what stays, beyond the plan',
      whatCutsLeave(l, shop, lot),
      cuts,
    ),
    sawStep(l, shop),
    'up',
  );
  const more = l.ticks(beyondFlaws);
  const grown = (size: Ticks) => (size === 0 ? size : ticks(size + more));
  const stock = lot.problem.stock.map((s) =>
    s.flaws === undefined
      ? s
      : { ...s, flaws: s.flaws.map((f) => ({ ...f, length: grown(f.length), width: grown(f.width) })) },
  );
  return { ...lot, beyondFlaws, problem: { ...lot.problem, stock } };
}

/** By how much each cut, by whichever saw, leaves what stays nearer to the start than the plan has it. */
export function whatCutsLeave(l: Ledger, shop: Shop, { kerf }: LotProblem): Traced {
  if (l.ticks(kerf) === 0) return kerf;
  const [one, ...others] = shop.tools
    .filter((t) => t.kind === 'circular-saw' || t.kind === 'mitre-saw')
    .map((t) => sawKerf(l, { tools: [t], units: shop.units }));
  const narrowest = one ? l.least('the narrowest kerf', one, ...others) : sawKerf(l, shop);
  return l.less('what the plan reckons for a cut beyond its kerf', kerf, narrowest);
}

/** How many faces of a stock are good enough to be seen. */
export function goodFacesOf({ goodFaces }: Pick<Stock, 'goodFaces'>): 0 | 1 | 2 {
  return goodFaces === undefined ? 2 : goodFaces === 'one' ? 1 : 0;
}

/** Parts that are cut from one strip in their order. */
function stripsOf(parts: readonly Part[]): readonly CutGroup[] {
  return inOneStrip(parts)
    .filter((members) => members.length > 1)
    .map(([first, ...others]) => ({
      id: first.strip!.id,
      pieces: [first, ...others].map((p) => p.id),
      follow: first.strip!.follow,
      joined: false,
    }));
}
