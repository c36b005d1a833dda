export { SNAG_KINDS, type SnagKind, type SnagRoom } from './catalogue.ts';
export { nearestNames } from './nearest-names.ts';
export type { Cure, CureEdit, Figures, Level, Rule, Snag, Where } from './snag.ts';
export { sourceWords } from './source-words.ts';
