export type { Cure, CureEdit, Figures, Level, Rule, Snag, Where } from './snag.ts';
