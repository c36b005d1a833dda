import { readFileSync } from 'node:fs';
import { breakDown } from '../../src/breakdown/index.ts';
import { planBuild } from '../../src/build/index.ts';
import type { CheckInput } from '../../src/checks/index.ts';
import {
  applyEdit,
  checkJob,
  type Edit,
  editOfCure,
  type JobDocument,
  readJob,
} from '../../src/job/index.ts';
import { density } from '../../src/materials/index.ts';
import { toMm } from '../../src/measure/index.ts';
import {
  boxTicks,
  type Part,
  placeTicks,
  type SetOut,
  setOut,
  toPiece,
} from '../../src/setting-out/index.ts';
import type { CureEdit, Snag } from '../../src/snag/index.ts';

const EXAMPLE = new URL('../../examples/glaze-cabinet.json', import.meta.url);

/** The glaze cabinet of the examples. */
export function glazeCabinet(): JobDocument {
  const read = readJob(readFileSync(EXAMPLE, 'utf8'));
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return read.job;
}

/** A document of a given shape, checked. */
export function jobOf(value: unknown): JobDocument {
  const read = checkJob(value);
  if (!read.ok) throw new Error(read.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return read.job;
}

/** The job with places of the document set anew; `undefined` takes a field away. */
export function withPlaces(job: JobDocument, places: Readonly<Record<string, unknown>>): JobDocument {
  const of = Object.entries(places).map(([at, value]): Edit => ({ edit: 'set', at, value }));
  return edited(job, { edit: 'all', of });
}

/** The job after a cure's edits, by the same way as any other edit. */
export function cured(job: JobDocument, edits: readonly CureEdit[]): JobDocument {
  return edited(job, editOfCure(edits));
}

function edited(job: JobDocument, edit: Edit): JobDocument {
  const done = applyEdit(job, edit);
  if (!done.ok) throw new Error(done.snags.map((s) => `${s.where.path}: ${s.sentence}`).join('\n'));
  return done.job;
}

/** Weighs parts as plain boxes of their lot's material; a lot in no table weighs nothing. */
export function boxWeights(job: JobDocument, out: SetOut): CheckInput['weigh'] {
  const byId = new Map(out.parts.map((p) => [p.id, p]));
  return (id) => {
    const box = boxOf(out, byId.get(id)!);
    const lot = job.shop.rack.lots.find((l) => l.id === byId.get(id)!.lot)!;
    const size = ([0, 1, 2] as const).map((a) => box.max[a]! - box.min[a]!);
    const kg = (size[0]! * size[1]! * size[2]! * (density(lot.material)?.kgM3 ?? 0)) / 1e9;
    const centre = ([0, 1, 2] as const).map((a) => (box.min[a]! + box.max[a]!) / 2);
    return { kg, centreMm: [centre[0]!, centre[1]!, centre[2]!] };
  };
}

function boxOf(
  out: SetOut,
  part: Part,
): { readonly min: readonly number[]; readonly max: readonly number[] } {
  const l = out.ledger;
  const zero = boxTicks(l, { min: part.place.origin, max: part.place.origin }).min;
  const own = {
    min: zero.map(() => 0) as never,
    max: [l.ticks(part.length), l.ticks(part.width), l.ticks(part.thickness)] as const,
  };
  const box = toPiece(placeTicks(l, part.place), own);
  return { min: box.min.map(toMm), max: box.max.map(toMm) };
}

/** What a check of the drawing alone looks at. */
export function setOutInput(job: JobDocument): Pick<CheckInput, 'job' | 'setOut' | 'weigh'> {
  const out = setOut(job);
  return { job, setOut: out, weigh: boxWeights(job, out) };
}

/** Everything the checks look at; the cut plan is a quick one. */
export function checkInput(job: JobDocument): CheckInput {
  const drawn = setOutInput(job);
  const planning = breakDown(job, drawn.setOut, { effort: 200_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  const breakdown = step.value;
  return { ...drawn, breakdown, build: planBuild(job, drawn.setOut, breakdown) };
}

/** The codes of snags, in order, each once. */
export function codes(snags: readonly Snag[]): readonly string[] {
  return [...new Set(snags.map((s) => s.code))].sort();
}
