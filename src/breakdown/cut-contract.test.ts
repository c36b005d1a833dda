import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCutProblem } from './cut-contract.ts';

const sheet = { id: 'ply', length_mm: 2440, width_mm: 1220 };
const piece = { id: 'side', length_mm: 800, width_mm: 400, count: 2, turn: false };
const good = { kerf_mm: 2.2, stock: [sheet], pieces: [piece] };

function codes(json: unknown): string[] {
  const r = readCutProblem(json);
  return r.ok ? [] : r.snags.map((s) => `${s.code} ${s.where.path}`);
}

describe('readCutProblem', () => {
  it('reads a good problem; an absent cost is the area in mm²', () => {
    const r = readCutProblem(good);
    expect(r).toMatchObject({
      ok: true,
      problem: {
        kerf: 7040,
        stock: [{ id: 'ply', length: 7808000, width: 3904000, cost: 2976800, trim: 0 }],
        pieces: [{ id: 'side', length: 2560000, width: 1280000, count: 2, turn: false }],
      },
      notes: [],
    });
  });

  it('is one-dimensional without widths; an absent cost is then the length', () => {
    const r = readCutProblem({
      kerf_mm: 3,
      stock: [{ id: 'bar', length_mm: 3000 }],
      pieces: [{ id: 'rail', length_mm: 700, count: 3 }],
    });
    expect(r).toMatchObject({ ok: true, problem: { stock: [{ cost: 3000 }], pieces: [{ turn: false }] } });
  });

  it('rounds pieces, kerf and trim up and stock down to ticks, and says so', () => {
    const r = readCutProblem({
      kerf_mm: 1.00001,
      stock: [{ id: 's', length_mm: 1000.00001, width_mm: 500, cost: 1, trim_mm: 2.00001 }],
      pieces: [{ id: 'p', length_mm: 100.00001, width_mm: 50, count: 1, turn: true }],
    });
    if (!r.ok) throw new Error('refused');
    expect(r.problem.kerf).toBe(3201);
    expect(r.problem.stock[0]).toMatchObject({ length: 3200000, trim: 6401 });
    expect(r.problem.pieces[0]).toMatchObject({ length: 320001 });
    expect(r.notes.map((n) => n.where.path)).toEqual([
      'kerf_mm',
      'stock[0].length_mm',
      'stock[0].trim_mm',
      'pieces[0].length_mm',
    ]);
  });

  it('keeps a cost with decimals exact through the scale', () => {
    const r = readCutProblem({ ...good, stock: [{ ...sheet, cost: 61.35 }] });
    expect(r).toMatchObject({ ok: true, problem: { costScale: 100, stock: [{ cost: 6135 }] } });
  });

  it('tells all faults at once, each with its path', () => {
    expect(
      codes({
        kerf_mm: -1,
        colour: 'red',
        stock: [{ id: 'ply', length_mm: 0, width_mm: Number.NaN, count: 1.5, cost: 0.00001 }, sheet],
        pieces: [
          { id: '', length_mm: 'long', width_mm: 400, count: 0, turn: 'yes' },
          { ...piece, count: 1e12 },
          { id: 'bar', length_mm: 1e9, count: 1, turn: true },
          7,
        ],
      }),
    ).toEqual([
      'cut.unknown-field colour',
      'cut.too-small kerf_mm',
      'cut.size-zero stock[0].length_mm',
      'cut.not-a-number stock[0].width_mm',
      'cut.not-whole stock[0].count',
      'cut.cost-decimals stock[0].cost',
      'cut.same-id stock[1].id',
      'cut.not-a-name pieces[0].id',
      'cut.not-a-number pieces[0].length_mm',
      'cut.too-small pieces[0].count',
      'cut.not-a-flag pieces[0].turn',
      'cut.too-large pieces[1].count',
      'cut.too-large pieces[2].length_mm',
      'cut.mixed-dimensions pieces[2].width_mm',
      'cut.not-an-object pieces[3]',
    ]);
  });

  it.each([
    ['nothing', null, 'cut.not-an-object '],
    ['a list', [], 'cut.not-an-object '],
    ['no pieces', { kerf_mm: 0, stock: [sheet] }, 'cut.missing-field pieces'],
    ['no stock', { ...good, stock: [] }, 'cut.no-stock stock'],
    ['all trim', { ...good, stock: [{ ...sheet, trim_mm: 610 }] }, 'cut.all-trim stock[0].trim_mm'],
    [
      'turn missing',
      { ...good, pieces: [{ ...piece, turn: undefined }] },
      'cut.missing-field pieces[0].turn',
    ],
    ['too many', { ...good, pieces: new Array(20_001).fill(piece) }, 'cut.too-many pieces'],
  ])('refuses %s', (_, json, code) => {
    expect(codes(json)).toContain(code);
  });

  it('never throws, whatever it is given', () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), fc.anything(), (kerf_mm, stock, one) => {
        readCutProblem(one);
        readCutProblem({ kerf_mm, stock, pieces: [one] });
        readCutProblem({
          kerf_mm: 1,
          stock: [sheet, one],
          pieces: [{ ...piece, length_mm: kerf_mm, count: stock }],
        });
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
