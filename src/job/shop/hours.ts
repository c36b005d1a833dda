import * as v from 'valibot';

const CLOCK = /^([01]\d|2[0-3]):[0-5]\d$|^24:00$/;
const Clock = v.pipe(v.string(), v.regex(CLOCK, 'a time of day is written 08:00, or 24:00 for midnight'));

/** The days of the week in their order. */
export const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

/** A stretch of the day in which work is done, on some days of the week. */
export const WorkingHours = v.pipe(
  v.strictObject({
    days: v.pipe(v.array(v.picklist(DAYS)), v.minLength(1, 'working hours need a day')),
    from: Clock,
    to: Clock,
  }),
  v.check(({ from, to }) => from < to, 'working hours end after they begin'),
);
export type WorkingHours = v.InferOutput<typeof WorkingHours>;

const minutes = v.pipe(v.number(), v.finite(), v.minValue(0), v.maxValue(100_000));

/** The maker’s own minutes for an operation of a kind, setting up included. */
export const Timing = v.strictObject({ active: v.optional(minutes), waiting: v.optional(minutes) });
