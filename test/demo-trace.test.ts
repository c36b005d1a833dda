import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import { cutPlanJson } from '../src/breakdown/index.ts';
import { stepsReport } from '../src/build/index.ts';
import { type JobDocument, readJob, readPlace, treeOf } from '../src/job/index.ts';
import * as materials from '../src/materials/index.ts';
import {
  inMm,
  type Leaf,
  type Ledger,
  type LedgerData,
  type LengthRow,
  leavesOf,
  parseLength,
  type RatioRow,
  type Report,
  recompute,
  tracesOf,
} from '../src/measure/index.ts';
import { type Plan, planJob, planReport } from '../src/plan/index.ts';
import { partsReport } from '../src/setting-out/index.ts';

/** Every row of every material table that is a length or a proportion, by id. */
const ROWS = rowsIn(materials);

function rowsIn(x: unknown, found = new Map<string, LengthRow | RatioRow>()): typeof found {
  if (typeof x !== 'object' || x === null) return found;
  if ('id' in x && 'says' in x && 'source' in x && ('value' in x || 'of' in x))
    found.set((x as LengthRow).id, x as LengthRow | RatioRow);
  for (const inner of Object.values(x)) rowsIn(inner, found);
  return found;
}

/** The value of a leaf, read from where it says it stands; a sentence when it can't be. */
function leafValue(job: JobDocument, { kind, id, note }: Leaf): number | string {
  if (kind === 'measured') {
    const read = parseLength(job.work.measured?.[id] ?? '', job.shop.units);
    return read.ok ? read.value : `${id} was not measured`;
  }
  if (kind === 'document') {
    const [path, inside] = id.split('@') as [string, string?];
    const whole = readPlace(job, path);
    if (typeof whole !== 'string') return `no text stands at ${path}`;
    // A length inside a formula begins at the character that stands behind its path.
    const typed =
      inside === undefined ? whole : whole.slice(Number(inside) - 1, Number(inside) - 1 + note.length);
    const read = parseLength(typed, job.shop.units);
    if (!read.ok) return `no length stands at ${id}: ${typed}`;
    return note === typed ? read.value : `at ${id} stands ${typed}, not ${note}`;
  }
  const row = ROWS.get(id);
  if (!row || !('value' in row)) return `${id} is in no table`;
  if (row.source.trim() === '' || row.says.trim() === '') return `${id} has no source`;
  return note === `${row.says} (${row.source})` ? row.value : `${id} is told as “${note}”`;
}

/** What is wrong with the proportions and counts of a ledger: each must be a row, or a count of things. */
function ratioFaults(job: JobDocument, data: LedgerData, operations: readonly string[]): string[] {
  return [...data.operation].flatMap((code, i) => {
    const note = data.words[data.note[i]!]!;
    const from = data.start[i]!;
    const numbers = [...data.pool.subarray(from + 1 + data.pool[from]!, data.start[i + 1]!)];
    if (operations[code] === 'times')
      return Number.isInteger(numbers[0]) ? [] : [`${i}: ${numbers[0]} times`];
    if (operations[code] === 'fraction') {
      const path = note.slice(0, note.indexOf(': '));
      return `${path}: ${readPlace(job, path)}` === note ? [] : [`${i}: no formula behind “${note}”`];
    }
    if (operations[code] !== 'ratio') return [];
    const id = note.slice(0, note.indexOf(': '));
    const row = ROWS.get(id) ?? movementRow(job, id);
    if (!row || !('of' in row) || row.source.trim() === '') return [`${i}: no row behind “${note}”`];
    const same =
      `${row.of}` === `${numbers}` && note === `${row.id}: ${row.says} (${row.source})` && row.of[1] !== 0;
    return same ? [] : [`${i}: ${numbers} is not what ${row.id} says`];
  });
}

/** How much a wood moves in the job’s air: a row of its table times the points of moisture, worked out here as well. */
function movementRow(job: JobDocument, id: string): RatioRow | undefined {
  const wood = materials.species(id.replace(/^movement\./, ''));
  if (!id.startsWith('movement.') || !wood?.movement) return undefined;
  const [room] = treeOf(job).all('room');
  const air = [room?.dryest ?? materials.INDOORS.dryest, room?.dampest ?? materials.INDOORS.dampest] as const;
  const row = materials.movementBetween(wood.id, ...air);
  const points =
    materials.moistureIn(air[1], materials.INDOORS.celsius) -
    materials.moistureIn(air[0], materials.INDOORS.celsius);
  const share = row ? row.of[0] / row.of[1] : Number.NaN;
  return Math.abs(share - wood.movement.tangential * points) < 1e-9 ? row : undefined;
}

/** Every number of a JSON value that stands in or under a field ending in `_mm`, by path. */
function lengthsIn(json: unknown, path = '', inside = false): [string, number][] {
  if (typeof json === 'number') return inside ? [[path, json]] : [];
  if (typeof json !== 'object' || json === null) return [];
  return Object.entries(json).flatMap(([k, v]) =>
    lengthsIn(v, path === '' ? k : `${path}/${k}`, inside || k.endsWith('_mm')),
  );
}

/** What is wrong with the traced lengths of a report, against what its JSON prints; and how many there are. */
function traceFaults(job: JobDocument, ledger: Ledger, report: Report) {
  const data = ledger.data();
  const printed = lengthsIn(inMm(ledger, report));
  const traces = tracesOf(report);
  const values = new Map<string, number | string>();
  const again = new Map<number, number | string>();
  const recomputed = (id: number): number | string => {
    const leaves = leavesOf(data, id);
    for (const leaf of leaves) {
      const key = `${leaf.kind} ${leaf.id}`;
      if (!values.has(key)) values.set(key, leafValue(job, leaf));
    }
    const bad = leaves.map((l) => values.get(`${l.kind} ${l.id}`)!).filter((v) => typeof v === 'string');
    if (leaves.length === 0) return 'it rests on nothing';
    if (bad.length > 0) return bad.join('; ');
    return recompute(data, id, (kind, text) => values.get(`${kind} ${text}`) as number);
  };
  const faults = traces.flatMap(({ path, traced }, i) => {
    if (!again.has(traced)) again.set(traced, recomputed(traced));
    const value = again.get(traced)!;
    const [printedPath, mm] = printed[i] ?? ['nothing', Number.NaN];
    if (path !== printedPath) return [`${path} is printed as ${printedPath}`];
    if (typeof value === 'string') return [`${path}: ${value}`];
    // A tick is a decimal of at most seven places: what JSON prints is exactly it.
    return Math.round(mm * 3200) === value && mm === value / 3200
      ? []
      : [`${path}: ${mm} printed, ${value / 3200} recomputed`];
  });
  return { faults, count: printed.length };
}

/** Lengths of the pieces in a cut tree, sorted. */
function piecesOf(node: unknown): number[] {
  const { piece, length_mm, parts } = node as { piece?: string; length_mm: number; parts?: unknown[] };
  return piece === undefined ? (parts ?? []).flatMap(piecesOf).sort((a, b) => a - b) : [length_mm];
}

const EXAMPLES = new URL('../examples/', import.meta.url);
const OPERATIONS = 'document measured row sum less times ratio share greatest least round fraction'.split(
  ' ',
);

describe.each(readdirSync(EXAMPLES).filter((n) => n.endsWith('.json')))('the example %s', (name) => {
  let plan: Plan;

  beforeAll(async () => {
    const read = readJob(readFileSync(new URL(name, EXAMPLES), 'utf8'));
    if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
    const planning = planJob(read.job, { solids: await openSolids() });
    let step = planning.next();
    while (!step.done) step = planning.next();
    plan = step.value;
  });

  // How many there are at least, for each part of the piece.
  test.each<[string, number, () => Report]>([
    ['plan', 20, () => planReport(plan)],
    ['parts', 3, () => partsReport(plan.setOut)],
    ['steps', 10, () => stepsReport(plan.build)],
  ])('every length of %s --json comes out again from its leaves', (_, atLeast, report) => {
    const { faults, count } = traceFaults(plan.job, plan.setOut.ledger, report());
    expect(faults).toEqual([]);
    expect(count).toBeGreaterThan(atLeast * plan.setOut.parts.length);
  });

  test('the check notices when a place in the document says something else', () => {
    const [lot] = plan.job.shop.rack.lots;
    const other = structuredClone(plan.job);
    other.shop.rack.lots[0]!.thickness = `${lot!.thickness} `;
    const { faults } = traceFaults(other, plan.setOut.ledger, planReport(plan));
    expect(faults.length).toBeGreaterThan(100);
    expect(faults[0]).toContain(`shop/rack/lots/${lot!.id}/thickness`);
  });

  test('every proportion in the ledger is a row with a source, every count a whole number', () => {
    const data = plan.setOut.ledger.data();
    expect(data.value.length).toBeGreaterThan(500);
    expect(ratioFaults(plan.job, data, OPERATIONS)).toEqual([]);
  });

  test('the lengths of cut --json are those of the traced cut trees', () => {
    const traced = (
      inMm(plan.setOut.ledger, planReport(plan)) as { breakdown: { lots: { sheets: unknown[] }[] } }
    ).breakdown.lots;
    plan.breakdown.lots.forEach(({ problem, plan: cutting }, i) => {
      const sheets = (
        cutPlanJson(problem.problem, cutting).sheets as { count?: number; cuts: unknown }[]
      ).flatMap((s) => new Array<unknown>(s.count ?? 1).fill(s.cuts));
      const strip = problem.lot.form === 'strip';
      sheets.forEach((cuts, n) => {
        const own = (traced[i]!.sheets[n] as { cuts: unknown }).cuts;
        // A strip is cut one piece after the other, whatever the tree of its plan; and has no width there.
        const along = (of: unknown) => (strip ? piecesOf(of) : lengthsIn(of));
        expect(along(own)).toEqual(along(cuts));
      });
      expect(traced[i]!.sheets).toHaveLength(sheets.length);
    });
  });
});
