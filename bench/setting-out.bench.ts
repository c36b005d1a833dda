import { checkJob } from '../src/job/index.ts';
import { setOut } from '../src/setting-out/index.ts';
import { sixtyParts } from './sixty-parts.ts';

const read = checkJob(sixtyParts());
if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
const { job } = read;
const { parts, snags } = setOut(job);
if (parts.length !== 60 || snags.length > 0) throw new Error(`${parts.length} parts, ${snags.length} snags`);

export default [
  { name: 'setting out: a case of 60 parts', limitMs: 5, prepare: () => () => setOut(job) },
  { name: 'job: checking the document of 60 parts', prepare: () => () => checkJob(sixtyParts()) },
];
