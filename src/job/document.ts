import * as v from 'valibot';
import { dayNumber } from '../measure/index.ts';
import { DesignRecord } from './records/design-record.ts';
import { Shop } from './shop/shop.ts';
import { SizeText } from './typed.ts';

/** The document's version. It stays 1 until the first release. */
export const VERSION = 1;

/** What the maker wants, as flat records. */
export const Design = v.strictObject({ records: v.array(DesignRecord) });
export type Design = v.InferOutput<typeof Design>;

/** What was found on the bench. */
export const Work = v.strictObject({
  /** Sizes as measured, by the name of the dimension: `bay1.width`. */
  measured: v.optional(v.record(v.string(), SizeText)),
  /**
   * Cards that are ticked, by the operation they are for: their parts are made. With each the sizes that came of it, by
   * the name of the dimension; what is made stays as it is. Of a cut also where it was made, so that a plan that makes it
   * elsewhere is told.
   */
  done: v.optional(
    v.array(
      v.strictObject({
        id: v.string(),
        at: v.optional(SizeText),
        sizes: v.optional(v.record(v.string(), SizeText)),
      }),
    ),
  ),
  /**
   * Parts that are cut and good, by their ids, with the sizes that they were cut to (a strip's length alone) and the sheet or
   * strip they came from. They are not cut again, and keep their sizes.
   */
  made: v.optional(
    v.array(
      v.strictObject({
        part: v.pipe(v.string(), v.minLength(1), v.maxLength(300)),
        length: SizeText,
        width: v.optional(SizeText),
        from: v.optional(v.string()),
      }),
    ),
  ),
  /** The first day of work: `2026-03-02`. */
  start: v.optional(
    v.pipe(
      v.string(),
      v.check((date) => dayNumber(date) !== undefined, 'a day is written year, month, day: 2026-03-02'),
    ),
  ),
});
export type Work = v.InferOutput<typeof Work>;

/** One job: a design, the shop it is built in, and the work on it. Plain JSON. */
export const JobDocument = v.strictObject({
  version: v.literal(VERSION),
  design: Design,
  shop: Shop,
  work: Work,
});
export type JobDocument = v.InferOutput<typeof JobDocument>;
