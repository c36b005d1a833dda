import { fromMm, type LengthRow } from '../measure/index.ts';

function length(id: string, mm: number, says: string): LengthRow {
  return { id, value: fromMm(mm), says, source: 'common practice' };
}

/** How deep blades and bits are set, beyond what a part itself asks for. */
export const MACHINE_RULES = {
  intoBoard: length(
    'saw.into-board',
    3,
    'a blade is set to cut this deep into the sacrificial board under a sheet',
  ),
  plungeStep: length('router.plunge-step', 3, 'a straight bit goes this much deeper with every pass'),
  aboutInches: length('about.inches', 6.35, 'in inches, what is only about so long is told in quarters'),
} as const;
