import { toJsonSchema } from '@valibot/to-json-schema';
import { JobDocument } from './document.ts';

/** The job file's JSON Schema, for editors that help while typing. What only code can check is left out. */
export function jobJsonSchema(): object {
  return { ...toJsonSchema(JobDocument, { errorMode: 'ignore' }), title: 'A casewright job, version 1' };
}
