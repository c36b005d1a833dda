import type { Snag } from '../snag/index.ts';
import type { DesignRecord } from './records/design-record.ts';

/** A stop at a field of a record, or at the whole record where no field is named, with its one cure. */
export function wrongField(
  record: DesignRecord,
  code: string,
  field: string | undefined,
  sentence: string,
  cure: string,
): Snag {
  return {
    code,
    level: 'stop',
    where: { path: ['design/records', record.id, ...(field ? [field] : [])].join('/'), record: record.id },
    sentence,
    cures: [{ says: cure }],
  };
}
