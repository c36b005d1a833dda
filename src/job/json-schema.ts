import { toJsonSchema } from '@valibot/to-json-schema';
import { JobDocument } from './document.ts';
import { DesignRecord } from './records/design-record.ts';

/** The job file's JSON Schema, for editors that help while typing. What only code can check is left out. */
export function jobJsonSchema(): object {
  const records: readonly unknown[] = DesignRecord.options;
  const schema = toJsonSchema(JobDocument, {
    errorMode: 'ignore',
    // A record without an id gets one from its place.
    overrideSchema: ({ valibotSchema, jsonSchema }) =>
      records.includes(valibotSchema)
        ? { ...jsonSchema, required: (jsonSchema.required ?? []).filter((field) => field !== 'id') }
        : undefined,
  });
  return { ...schema, title: 'A casewright job, version 1' };
}
