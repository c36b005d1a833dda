import type { Cure } from '../../snag/index.ts';

/** The cure for a top whose buttons find no place: the screws through a panel under it stand in slots, and there are none. */
export function slotsInstead(top: string): Cure {
  return {
    says: 'Let the screws of the top stand in slots.',
    edits: [
      { record: top, field: 'moves', value: 'slots' },
      { record: top, field: 'buttons' },
    ],
  };
}
