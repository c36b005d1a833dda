import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CutPiece, CutProblem, CutStock } from '../src/breakdown/index.ts';
import { ticks } from '../src/measure/index.ts';

/** One instance of a set. The unit of the file is taken as one tick. */
export interface BenchCase {
  readonly name: string;
  readonly problem: CutProblem;
  /** Best published value, and a proven lower bound, where known. */
  readonly known?: number | undefined;
  readonly knownBound?: number | undefined;
  readonly group?: string;
}

export interface BenchRow {
  readonly of: BenchCase;
  readonly cost: number;
  readonly proven: boolean;
}

/** A set: how to load it, and what to print. */
export interface BenchSet {
  readonly title: string;
  load(folder: string): readonly BenchCase[];
  report(rows: readonly BenchRow[]): string[];
}

type Size = readonly [number, number];

function read<T>(folder: string, file: string): T {
  return JSON.parse(readFileSync(join(folder, file), 'utf8')) as T;
}

/** Equal sizes become one piece with a count. */
function pieces(items: readonly (readonly number[])[], turn: boolean): CutPiece[] {
  const known = new Map<string, { length: number; width: number; count: number }>();
  for (const [length, width, count = 1] of items as (readonly [number, number, number?])[]) {
    const id = `${length}x${width}`;
    const same = known.get(id);
    if (same) same.count += count;
    else known.set(id, { length, width, count });
  }
  return [...known].map(([id, p]) => ({
    id,
    length: ticks(p.length),
    width: ticks(p.width),
    count: p.count,
    turn,
  }));
}

function stock(id: string, [length, width]: Size, cost: number, count?: number): CutStock {
  const size = { id, length: ticks(length), width: ticks(width), cost, trim: ticks(0) };
  return count === undefined ? size : { ...size, count };
}

function problem(stocks: readonly CutStock[], of: readonly CutPiece[]): CutProblem {
  return { kerf: ticks(0), stock: stocks, pieces: of };
}

/** Sheets in all, beside the published ones of the same instances. */
function sheets(rows: readonly BenchRow[], published: string): string[] {
  const total = rows.reduce((a, r) => a + r.cost, 0);
  const known = rows.filter((r) => r.of.known !== undefined);
  const best = known.reduce((a, r) => a + r.of.known!, 0);
  const ours = known.reduce((a, r) => a + r.cost, 0);
  const met = known.filter((r) => r.cost <= r.of.known!).length;
  return [
    `total ${total} (published for the whole set: ${published})`,
    `where a best value is stored: ours ${ours}, stored ${best}, met on ${met} of ${known.length}`,
  ];
}

/** Mean share of the sheets' area that becomes pieces, by group. */
function use(rows: readonly BenchRow[], published: string): string[] {
  const groups = new Map<string, number[]>();
  for (const r of rows) {
    const area = r.of.problem.pieces.reduce((a, p) => a + p.length * (p.width ?? 1) * p.count, 0);
    for (const g of [r.of.group ?? '', 'all'])
      groups.set(g, [...(groups.get(g) ?? []), (100 * area) / r.cost]);
  }
  const mean = (x: readonly number[]) => (x.reduce((a, b) => a + b, 0) / x.length).toFixed(2);
  return [...[...groups].map(([g, x]) => `use ${g}: ${mean(x)} % (${x.length})`), `published: ${published}`];
}

function bpp(turn: boolean): BenchSet {
  interface File {
    instances: { name: string; bin: Size; items: Size[]; OG: Size; RG: Size }[];
  }
  return {
    title: turn ? '2BP|R|G, free turning' : '2BP|O|G, grain fixed',
    load: (folder) =>
      read<File>(folder, '2d/bpp500_berkey_wang_martello_vigo.json').instances.map((i) => ({
        name: i.name,
        problem: problem([stock('sheet', i.bin, 1)], pieces(i.items, turn)),
        known: (turn ? i.RG : i.OG)[1],
        knownBound: (turn ? i.RG : i.OG)[0],
      })),
    report: (rows) =>
      sheets(
        rows,
        turn ? 'GDRR 6986, HHTB 6989, CHBP 7064, CFIH 7080' : 'GDRR 7233, HHTB 7238, HHA 7275, CFIH 7325',
      ),
  };
}

function orders(turn: boolean): BenchSet {
  interface File {
    instances: {
      name: string;
      sheet: Size;
      items: number[][];
      opt_O?: number;
      opt_R?: number;
      area_lb: number;
    }[];
  }
  return {
    title: turn
      ? 'Furniture orders of Macedo et al., free turning'
      : 'Furniture orders of Macedo et al., grain fixed',
    load: (folder) =>
      read<File>(folder, '2d/csp_furniture_macedo43.json').instances.map((i) => ({
        name: i.name,
        problem: problem([stock('sheet', i.sheet, 1)], pieces(i.items, turn)),
        known: turn ? i.opt_R : i.opt_O,
        knownBound: turn ? i.opt_R : i.opt_O,
      })),
    report: (rows) => sheets(rows, 'proven optima of 24 (grain fixed) and 9 (free) orders only'),
  };
}

function imahori(): BenchSet {
  interface File {
    instances: { name: string; sheet: Size; items: number[][]; best_3stage_homogenous_O?: number }[];
  }
  return {
    title: 'Imahori et al., large demands',
    load: (folder) =>
      read<File>(folder, '2d/csp_imahori60.json').instances.map((i) => ({
        name: i.name,
        problem: problem([stock('sheet', i.sheet, 1)], pieces(i.items, false)),
        group: String(i.best_3stage_homogenous_O ?? ''),
      })),
    report: (rows) => sheets(rows, '15752 with three stages, 15874 Chen et al.'),
  };
}

function ortmann(): BenchSet {
  interface File {
    instances: { name: string; bins: [number, number, number][]; items: Size[] }[];
  }
  return {
    title: 'Ortmann et al., several sizes, limited stock',
    load: (folder) =>
      read<File>(folder, '2d/vsbp_ortmann340.json').instances.map((i) => ({
        name: i.name,
        group: i.name.slice(0, 4),
        problem: problem(
          i.bins.map(([l, w, n], j) => stock(`s${j}`, [l, w], l * w, n)),
          pieces(i.items, false),
        ),
      })),
    report: (rows) => use(rows, 'GDRR 95.24 (Nice 94.04, Path 96.43), HHA 93.10, BFS 83.66'),
  };
}

function pisinger(): BenchSet {
  interface File {
    instances: { name: string; bins: [number, number, number][]; items: Size[] }[];
  }
  return {
    title: 'Pisinger & Sigurd, five sizes, area',
    load: (folder) =>
      read<File>(folder, '2d/vsbp_pisinger500.json').instances.map((i) => ({
        name: i.name,
        group: i.name.split('_')[1]!,
        problem: problem(
          i.bins.map(([l, w], j) => stock(`s${j}`, [l, w], l * w)),
          pieces(i.items, false),
        ),
      })),
    report: (rows) => use(rows, 'GDRR 90.66, HHA 87.83, BFS 81.98'),
  };
}

function bars(): BenchSet {
  interface File {
    instances: { name: string; c: number; items: Size[]; opt: number }[];
  }
  return {
    title: 'One-dimensional cutting stock',
    load: (folder) =>
      readdirSync(join(folder, '1d'))
        .filter((f) => f.endsWith('.json'))
        .sort()
        .flatMap((f) =>
          read<File>(folder, `1d/${f}`).instances.map((i) => ({
            name: i.name,
            problem: {
              kerf: ticks(0),
              stock: [{ id: 'bar', length: ticks(i.c), cost: 1, trim: ticks(0) }],
              pieces: i.items.map(([length, count]) => ({
                id: `${length}`,
                length: ticks(length),
                count,
                turn: false,
              })),
            },
            known: i.opt,
            knownBound: i.opt,
            group: f.replace('.json', ''),
          })),
        ),
    report: (rows) => {
      const groups = [...new Set(rows.map((r) => r.of.group!))];
      return [
        ...sheets(rows, '126694, all proven'),
        ...groups.map((g) => {
          const of = rows.filter((r) => r.of.group === g);
          const met = of.filter((r) => r.cost === r.of.known).length;
          return `${g}: optimal on ${met} of ${of.length}, proven ${of.filter((r) => r.proven).length}`;
        }),
      ];
    },
  };
}

/** The sets by name. */
export const SETS: Readonly<Record<string, BenchSet>> = {
  '2bp-o': bpp(false),
  '2bp-r': bpp(true),
  bars: bars(),
  orders: orders(false),
  'orders-r': orders(true),
  ortmann: ortmann(),
  pisinger: pisinger(),
  imahori: imahori(),
};
