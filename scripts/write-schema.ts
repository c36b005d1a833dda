// node --import @oxc-node/core/register scripts/write-schema.ts: writes docs/job.schema.json from the schemas that the program itself checks with.
import { writeFileSync } from 'node:fs';
import { jobJsonSchema } from '../src/job/index.ts';

const file = new URL('../docs/job.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(jobJsonSchema(), null, 2)}\n`);
