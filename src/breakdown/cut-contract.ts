import { TICKS_PER_MM, type Ticks, ticks } from '../measure/index.ts';
import type { Snag } from '../snag/index.ts';
import type { CutPiece, CutProblem, CutStock } from './cut-problem.ts';
import {
  PIECE_FIELDS,
  RULE_FIELDS,
  readPieceRules,
  readProblemRules,
  readStockRules,
  STOCK_FIELDS,
} from './cut-rules-contract.ts';
import { Faults, type Fields } from './faults.ts';

/** What reading a cut problem gives: the problem with remarks on rounding, or everything that is wrong with it. */
export type ReadCutProblem =
  | { readonly ok: true; readonly problem: CutProblem; readonly notes: readonly Snag[] }
  | { readonly ok: false; readonly snags: readonly Snag[] };

/** The longest piece or sheet the planner takes, in mm. */
const LONGEST_MM = 500_000;
const MOST_KINDS = 20_000;
const MOST_ALIKE = 1_000_000;
const MOST_COST = 1e9;
const COST_SCALES = [1, 10, 100, 1000, 10_000];

/**
 * Reads a cut problem from parsed JSON (the format is in docs/cutting-contract.md). Lengths in mm become ticks:
 * pieces, kerf and trim round up, stock rounds down, so a plan can never promise more than there is. All faults
 * are reported at once, each with its path; nothing throws.
 */
export function readCutProblem(json: unknown): ReadCutProblem {
  const faults = new Faults();
  const notes: Snag[] = [];
  const top = faults.object(json, '', ['kerf_mm', 'stock', 'pieces', ...RULE_FIELDS]);
  if (!top) return { ok: false, snags: faults.found };

  const length = (o: Fields, path: string, key: string, most: number, least: number, up: boolean): Ticks => {
    const mm = faults.number(o, path, key, least, most);
    const exact = mm * TICKS_PER_MM;
    const near = Math.round(exact);
    if (Math.abs(exact - near) < 1e-6) return ticks(near);
    const t = ticks(up ? Math.ceil(exact) : Math.floor(exact));
    notes.push(roundedNote(`${path}${key}`, mm, t / TICKS_PER_MM));
    return t;
  };
  const size = (o: Fields, path: string, key: string, up: boolean): Ticks => {
    const t = length(o, path, key, LONGEST_MM, 0, up);
    if (t === 0 && !faults.at(path + key)) faults.add('cut.size-zero', path + key, 'must be more than 0');
    return t;
  };

  const kerf = length(top, '', 'kerf_mm', 1000, 0, true);
  const stockIn = faults.list(top, '', 'stock', MOST_KINDS);
  const piecesIn = faults.list(top, '', 'pieces', MOST_KINDS);
  if (stockIn && stockIn.length === 0)
    faults.add('cut.no-stock', 'stock', 'is empty: there is nothing to cut from');

  let flat: boolean | undefined;
  const dimension = (o: Fields, path: string) => {
    const has = 'width_mm' in o;
    flat ??= has;
    if (has !== flat)
      faults.add(
        'cut.mixed-dimensions',
        `${path}width_mm`,
        has ? 'is given here but not everywhere before' : 'is missing here but given before',
        'Give a width to all stock and all pieces (sheets), or to none (bars).',
      );
    return has;
  };

  const costs: (number | undefined)[] = [];
  const stockIds = new Set<string>();
  const stock: CutStock[] = (stockIn ?? []).flatMap((one, i) => {
    const path = `stock[${i}].`;
    const known = ['id', 'length_mm', 'width_mm', 'count', 'cost', 'trim_mm', ...STOCK_FIELDS];
    const o = faults.object(one, `stock[${i}]`, known);
    if (!o) return [];
    const id = faults.id(o, path, stockIds);
    const l = size(o, path, 'length_mm', false);
    const w = dimension(o, path) ? size(o, path, 'width_mm', false) : undefined;
    const trim = 'trim_mm' in o ? length(o, path, 'trim_mm', LONGEST_MM, 0, true) : ticks(0);
    if (!faults.under(path) && (l <= 2 * trim || (w !== undefined && w <= 2 * trim)))
      faults.add(
        'cut.all-trim',
        `${path}trim_mm`,
        'leaves nothing of the stock',
        'Trim less, or leave it out.',
      );
    const count = 'count' in o ? faults.whole(o, path, 'count', 0, MOST_ALIKE) : undefined;
    const cost = 'cost' in o ? faults.number(o, path, 'cost', 0, MOST_COST) : undefined;
    if (cost !== undefined && COST_SCALES.every((s) => !isWhole(cost * s)))
      faults.add('cut.cost-decimals', `${path}cost`, 'has more than four decimals', 'Round the cost.');
    costs.push(cost);
    return [
      {
        id,
        length: l,
        ...(w === undefined ? {} : { width: w }),
        ...(count === undefined ? {} : { count }),
        cost: 0,
        trim,
        ...readStockRules(faults, o, path, w === undefined),
      },
    ];
  });

  const pieceIds = new Set<string>();
  const pieces: CutPiece[] = (piecesIn ?? []).flatMap((one, i) => {
    const path = `pieces[${i}].`;
    const known = ['id', 'length_mm', 'width_mm', 'count', 'turn', ...PIECE_FIELDS];
    const o = faults.object(one, `pieces[${i}]`, known);
    if (!o) return [];
    const id = faults.id(o, path, pieceIds);
    const l = size(o, path, 'length_mm', true);
    const w = dimension(o, path) ? size(o, path, 'width_mm', true) : undefined;
    const count = faults.whole(o, path, 'count', 1, MOST_ALIKE);
    const turn = faults.flag(o, path, 'turn', w === undefined || 'grain' in o ? false : undefined);
    return [
      {
        id,
        length: l,
        ...(w === undefined ? {} : { width: w }),
        count,
        turn,
        ...readPieceRules(faults, length, o, path, w === undefined),
      },
    ];
  });

  const rules = readProblemRules(faults, length, top, pieces);
  if (faults.found.length > 0) return { ok: false, snags: faults.found };
  return { ok: true, problem: { kerf, pieces, ...priced(stock, costs), ...rules }, notes };
}

/** Costs as whole numbers: given ones exactly, absent ones as the area in mm² (in one dimension: the length). */
function priced(stock: readonly CutStock[], costs: readonly (number | undefined)[]) {
  const cost = stock.map(
    (s, i) => costs[i] ?? (s.length / TICKS_PER_MM) * (s.width === undefined ? 1 : s.width / TICKS_PER_MM),
  );
  const costScale = COST_SCALES.find((s) => cost.every((c) => isWhole(c * s))) ?? COST_SCALES.at(-1)!;
  const whole = stock.map((s, i) => ({ ...s, cost: Math.round(cost[i]! * costScale) }));
  return costScale === 1 ? { stock: whole } : { stock: whole, costScale };
}

function isWhole(x: number): boolean {
  return Math.abs(x - Math.round(x)) < 1e-6 * Math.max(1, Math.abs(x) * 1e-6);
}

function roundedNote(path: string, from: number, to: number): Snag {
  return {
    code: 'cut.rounded',
    level: 'note',
    where: { path },
    sentence: `${path} is ${from} mm, which is not a whole number of 1/3200 mm; it is taken as ${to} mm.`,
    cures: [],
  };
}
