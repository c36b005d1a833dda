import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkJob, isFormula, type JobDocument, readJob, readPlace } from '../../src/job/index.ts';
import { DOORS, SETTING_OUT } from '../../src/materials/index.ts';
import {
  inMm,
  type LeafKind,
  type Ledger,
  leavesOf,
  parseLength,
  recompute,
  type Traced,
  tracesOf,
} from '../../src/measure/index.ts';
import { partsReport, type SetOut, setOut } from '../../src/setting-out/index.ts';
import { generatedJobs } from './design.ts';
import { doorFaults } from './judge-doors.ts';
import { faultsOf } from './judge-set-out.ts';

/** `RUNS=5000 npx vitest run test/generate` looks further. */
const RUNS = Number(process.env.RUNS ?? 300);
const SEED = process.env.SEED === undefined ? 20 : Number(process.env.SEED);

function checked(document: unknown): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}

/** Every traced length of what was set out. */
function everyLength(piece: SetOut): Traced[] {
  const { joints, fasteners, openings, surfaces, overall, dimensions } = piece;
  return [
    ...tracesOf(partsReport(piece)).map((t) => t.traced),
    ...piece.parts.flatMap((p) => p.place.origin),
    ...joints.flatMap((j) => [...j.contact.min, ...j.contact.max]),
    ...fasteners.flatMap((f) => [...f.head, f.length, f.diameter, f.holds, f.spare]),
    ...openings.flatMap((o) => [...o.box.min, ...o.box.max, o.width, o.height, o.depth]),
    ...surfaces.flatMap((s) => [s.span, s.depth]),
    ...piece.doors.flatMap((d) => [d.gap, ...d.hinges, d.opening.width, d.opening.height, d.screwLength]),
    overall.width,
    overall.height,
    overall.depth,
    ...dimensions.values(),
  ];
}

const ROWS = new Map(
  [...Object.values(SETTING_OUT), ...Object.values(DOORS)].flatMap((r) =>
    'value' in r ? [[r.id, r.value] as const] : [],
  ),
);

/** What a leaf says, read again from the document and the tables. */
function leafOf(job: JobDocument): (kind: LeafKind, id: string) => number {
  return (kind, id) => {
    if (kind === 'row') return ROWS.get(id) ?? Number.NaN;
    if (kind === 'measured') {
      const read = parseLength(job.work.measured?.[id] ?? '', job.shop.units);
      if (!read.ok) throw new Error(`${id} was not measured`);
      return read.value;
    }
    const [path, inside] = id.split('@') as [string, string?];
    const whole = readPlace(job, path);
    const typed = inside === undefined ? whole : String(whole).slice(Number(inside) - 1);
    // A length inside a formula ends where a sign or a bracket follows.
    const read = parseLength(
      inside === undefined ? String(typed) : /^[^-+*,()]*/.exec(String(typed))![0].replace(/\/ *$/, ''),
      job.shop.units,
    );
    if (typeof typed !== 'string' || !read.ok) throw new Error(`no length stands at ${id}`);
    return read.value;
  };
}

function traceFaults(job: JobDocument, piece: SetOut): string[] {
  const data = piece.ledger.data();
  const leaf = leafOf(job);
  return [...new Set(everyLength(piece))].flatMap((t) => {
    const leaves = leavesOf(data, t);
    const again = recompute(data, t, leaf);
    const entry = (ledger: Ledger) => `${t}, ${ledger.entry(t).reason}`;
    return leaves.length > 0 && again === piece.ledger.ticks(t)
      ? []
      : [`${entry(piece.ledger)}: ${piece.ledger.ticks(t)}, recomputed ${again}`];
  });
}

/** Whether a record of the design has a formula among its sizes. */
function usesFormulas(job: JobDocument): boolean {
  return job.design.records.some((r) =>
    Object.values(r).some((v) => typeof v === 'string' && isFormula(v) && /[(+*/]/.test(v)),
  );
}

describe('a generated design', () => {
  test('sets out exactly, without overlap, every screw in the wood; or says what stops it, and where', {
    timeout: 600_000,
  }, () => {
    let seen = 0;
    let fine = 0;
    let withFormulas = 0;
    let withDoors = 0;
    const stops = new Map<string, number>();
    fc.assert(
      fc.property(generatedJobs, ({ document, overall, asked }) => {
        const job = checked(document);
        const piece = setOut(job);
        seen++;
        const stopping = piece.snags.filter((s) => s.level === 'stop');
        if (stopping.length > 0) {
          for (const s of stopping) {
            expect(s.where.path, s.code).toBeDefined();
            expect(s.cures.length).toBeGreaterThan(0);
            const record = s.where.path!.split('/').slice(0, 3).join('/');
            expect(readPlace(job, record), s.where.path).toBeDefined();
          }
          for (const code of new Set(stopping.map((s) => s.code)))
            stops.set(code, (stops.get(code) ?? 0) + 1);
          return;
        }
        fine++;
        if (piece.doors.length > 0) withDoors++;
        expect(faultsOf(piece, overall)).toEqual([]);
        for (const [name, ticks] of Object.entries(asked))
          expect(piece.ledger.ticks(piece.dimensions.get(name)!), name).toBe(ticks);
        if (usesFormulas(job)) withFormulas++;
        expect(doorFaults(piece)).toEqual([]);
        expect(traceFaults(job, piece)).toEqual([]);
        expect(JSON.stringify(inMm(piece.ledger, partsReport(piece)))).not.toMatch(/null|NaN/);
      }),
      { numRuns: RUNS, seed: SEED },
    );
    const share = fine / seen;
    const list = [...stops].map(([code, n]) => `${code} ${n}`).join(', ');
    console.log(
      `${fine} of ${seen} generated designs set out without a stop; ${withDoors} with doors; stops: ${list || 'none'}`,
    );
    expect(withDoors / fine).toBeGreaterThanOrEqual(0.05);
    console.log(`formulas in ${Math.round((100 * withFormulas) / fine)} % of them`);
    expect(share).toBeGreaterThanOrEqual(0.8);
    expect(withFormulas / fine).toBeGreaterThanOrEqual(0.05);
  });

  test('follows what was measured in one of its openings, and is as sound as before', {
    timeout: 600_000,
  }, () => {
    let followed = 0;
    const pick = fc.record({ which: fc.nat(), off: fc.constantFrom(-3200, -960, 320, 960, 2240) });
    fc.assert(
      fc.property(generatedJobs, pick, ({ document }, { which, off }) => {
        const job = checked(document);
        const before = setOut(job);
        const sized = job.design.records.flatMap((r) => {
          if (r.kind !== 'opening') return [];
          const parent = job.design.records.find((p) => p.id === r.parent);
          if (parent?.kind !== 'opening') return [`${r.id}.width`, `${r.id}.height`];
          const free = job.design.records.some(
            (o) =>
              o.kind === 'opening' &&
              o.parent === parent.id &&
              o.id !== r.id &&
              !/[0-9]["m ]|gap/.test(o.size ?? ''),
          );
          return free ? [`${r.id}.${parent.split === 'across' ? 'width' : 'height'}`] : [];
        });
        if (sized.length === 0 || before.snags.length > 0) return;
        const name = sized[which % sized.length]!;
        const value = before.ledger.ticks(before.dimensions.get(name)!) + off;
        const measured = { ...document, work: { measured: { [name]: `${value / 3200} mm` } } };
        const found = checked(measured);
        const after = setOut(found);
        expect(after.snags.filter((s) => s.code.startsWith('measured.'))).toEqual([]);
        if (after.snags.some((s) => s.level === 'stop')) return;
        followed++;
        expect(after.ledger.ticks(after.dimensions.get(name)!)).toBe(value);
        const [width, height, depth] = (['width', 'height', 'depth'] as const).map((k) =>
          after.ledger.ticks(after.overall[k]),
        );
        expect(faultsOf(after, { width: width!, height: height!, depth: depth! })).toEqual([]);
        expect(traceFaults(found, after)).toEqual([]);
      }),
      { numRuns: 100, seed: SEED },
    );
    expect(followed).toBeGreaterThan(50);
  });

  test('sets out the same twice', () => {
    fc.assert(
      fc.property(generatedJobs, ({ document }) => {
        const once = setOut(checked(document));
        const again = setOut(checked(structuredClone(document)));
        expect(JSON.stringify([again.parts, again.joints, again.fasteners])).toBe(
          JSON.stringify([once.parts, once.joints, once.fasteners]),
        );
        expect(again.ledger.data()).toEqual(once.ledger.data());
      }),
      { numRuns: 20, seed: SEED },
    );
  });
});

const EXAMPLES = new URL('../../examples/', import.meta.url);

describe.each(readdirSync(EXAMPLES).filter((name) => name.endsWith('.json')))('the example %s', (name) => {
  const read = readJob(readFileSync(new URL(name, EXAMPLES), 'utf8'));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const { job } = read;
  const piece = setOut(job);

  test('passes the judge', () => {
    const { width, height, depth } = piece.overall;
    const [w, h, d] = [width, height, depth].map((t) => piece.ledger.ticks(t));
    expect(faultsOf(piece, { width: w!, height: h!, depth: d! })).toEqual([]);
    expect(doorFaults(piece)).toEqual([]);
    const asked = job.design.records.find((r) => r.kind === 'piece')!;
    const typed = [asked.width, asked.height, asked.depth].map((text) => parseLength(text, job.shop.units));
    expect(typed.map((t) => t.ok && t.value)).toEqual([w, h, d]);
  });

  test('every number rests on the document, a measured value or a table, and comes out again from those', () => {
    expect(everyLength(piece).length).toBeGreaterThan(500);
    expect(traceFaults(job, piece)).toEqual([]);
  });
});
