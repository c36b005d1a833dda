import { checkJob, type JobDocument } from '../src/job/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import { kitchenRun, kitchenRuns } from './many-cases.ts';
import { sixtyParts } from './sixty-parts.ts';

/** A job of about so many parts that sets out without a stop. */
function jobOf(document: unknown, parts: number): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  const piece = setOut(read.job);
  const stops = piece.snags.filter((s) => s.level === 'stop');
  if (Math.abs(piece.parts.length - parts) > parts / 20 || stops.length > 0)
    throw new Error(`${piece.parts.length} parts, ${stops.length} stops`);
  return read.job;
}

const [sixty, run, runs] = [jobOf(sixtyParts(), 60), jobOf(kitchenRun(), 250), jobOf(kitchenRuns(5), 1050)];

export default [
  { name: 'setting out: a case of 60 parts', limitMs: 5, prepare: () => () => setOut(sixty) },
  { name: 'setting out: a run of nine cases, 250 parts', limitMs: 20, prepare: () => () => setOut(run) },
  { name: 'setting out: 45 cases, about 1,050 parts', limitMs: 80, prepare: () => () => setOut(runs) },
  { name: 'job: checking the document of 60 parts', prepare: () => () => checkJob(sixtyParts()) },
];
