/** The five places of the shop, in the order of the work. */
export const PLACES = ['Draw', 'Rack', 'Saw', 'Bench', 'Book'] as const;
export type PlaceName = (typeof PLACES)[number];
