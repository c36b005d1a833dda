import * as v from 'valibot';
import { Id, MassText, Name, SizeText } from '../typed.ts';

const toolFields = {
  id: Id,
  name: v.optional(Name),
  /** How far from the set size its work may fall, either way. */
  accuracy: SizeText,
};

/** A portable circular saw. */
const CircularSaw = v.strictObject({
  ...toolFields,
  kind: v.literal('circular-saw'),
  kerf: SizeText,
  /** The finest step a cut can be set to: `0.5 mm`, `1/32 in`. */
  step: SizeText,
  /** Deepest cut at 90 and at 45 degrees. */
  reach: SizeText,
  reach45: v.optional(SizeText),
});

const GuideRail = v.strictObject({
  ...toolFields,
  kind: v.literal('guide-rail'),
  length: SizeText,
  width: SizeText,
});

const MitreSaw = v.strictObject({
  ...toolFields,
  kind: v.literal('mitre-saw'),
  kerf: SizeText,
  step: SizeText,
  /** Widest and thickest piece at 45 degrees. */
  width: SizeText,
  height: SizeText,
});

const Drill = v.strictObject({ ...toolFields, kind: v.literal('drill'), step: SizeText });

/** A jig that guides a stepped bit into a face at 15 degrees. */
const PocketJig = v.strictObject({ ...toolFields, kind: v.literal('pocket-jig'), step: SizeText });

/** A jig that guides a drill into the middle of an edge, and into a face on a marked line, for dowels. */
const DowelJig = v.strictObject({ ...toolFields, kind: v.literal('dowel-jig') });

/** A small plunging saw that cuts slots for biscuits, at half the thickness of an edge or on a marked line. */
const BiscuitJoiner = v.strictObject({
  ...toolFields,
  kind: v.literal('biscuit-joiner'),
  /** How finely its depth is set. */
  step: SizeText,
  /** How wide a slot its cutter makes, and the cutter’s diameter. */
  kerf: SizeText,
  cutter: SizeText,
});

const Router = v.strictObject({
  ...toolFields,
  kind: v.literal('router'),
  step: SizeText,
  edgeGuide: v.optional(v.boolean()),
  /** Across its base plate: a straightedge is clamped half of this from the middle of the bit. */
  base: v.optional(SizeText),
});

const Sander = v.strictObject({ ...toolFields, kind: v.literal('sander') });

const Clamp = v.strictObject({
  ...toolFields,
  kind: v.literal('clamp'),
  count: v.pipe(v.number(), v.integer(), v.minValue(1)),
  reach: SizeText,
});

/** A tape, a rule, a square: what lines are marked with. */
const MarkingTool = v.strictObject({ ...toolFields, kind: v.literal('marking'), step: SizeText });

export const Tool = v.variant('kind', [
  CircularSaw,
  GuideRail,
  MitreSaw,
  Drill,
  PocketJig,
  DowelJig,
  BiscuitJoiner,
  Router,
  Sander,
  Clamp,
  MarkingTool,
]);
export type Tool = v.InferOutput<typeof Tool>;
export type ToolKind = Tool['kind'];
export type ToolOf<K extends ToolKind> = Extract<Tool, { kind: K }>;

/** Someone who works on the piece. */
export const Person = v.strictObject({
  id: Id,
  name: v.optional(Name),
  /** What they can carry alone. */
  lift: MassText,
  /** Whether they work on the piece throughout or come when two are needed. The first works throughout. */
  works: v.optional(v.picklist(['throughout', 'when-needed'])),
});
export type Person = v.InferOutput<typeof Person>;
