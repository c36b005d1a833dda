import * as v from 'valibot';
import { Id } from '../typed.ts';
import { Cutting } from './cutting.ts';
import { Timing, WorkingHours } from './hours.ts';
import { Rack } from './rack.ts';
import { Person, Tool } from './tool.ts';
import { WayHome } from './way-home.ts';

/** The shop a piece is built in: tools, people, stock, and how numbers are written there. */
export const Shop = v.strictObject({
  /** What a number without a unit means, and what is printed. */
  units: v.picklist(['mm', 'in']),
  /** The finest that is printed: `1/16`, `1/32`, `1/64` of an inch; `0.5` or `0.1` mm. */
  precision: v.picklist(['1/16', '1/32', '1/64', '0.5', '0.1']),
  paper: v.picklist(['A4', 'Letter']),
  /** ISO 4217 code. */
  currency: v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'a currency is three capitals, such as EUR')),
  /** What an hour of work is reckoned at; nothing when absent. */
  hourly: v.optional(v.pipe(v.number(), v.finite(), v.minValue(0))),
  people: v.array(Person),
  /** When work is done; Monday to Friday, 8 to 12 and 1 to 5, when absent. */
  hours: v.optional(v.pipe(v.array(WorkingHours), v.minLength(1, 'a shop needs working hours'))),
  /** The maker’s own minutes by kind of operation: `{ "rip": { "active": 6 } }`. */
  timings: v.optional(v.record(Id, Timing)),
  tools: v.array(Tool),
  cutting: v.optional(Cutting),
  rack: Rack,
  /** How the finished piece gets to its place. */
  wayHome: v.optional(WayHome),
});
export type Shop = v.InferOutput<typeof Shop>;
