/** The stages of a build, in order. */
export const STAGES = [
  'yard',
  'gather',
  'sheets',
  'strips',
  'panels',
  'machine',
  'edging',
  'sand',
  'prefinish',
  'assemble',
  'fill',
  'hang',
  'finish',
  'home',
] as const;
export type StageId = (typeof STAGES)[number];
