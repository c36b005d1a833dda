import type { Lot } from '../job/index.ts';
import { isSolid } from '../materials/index.ts';

/** What a piece of stock is called: boards of solid wood are cut like sheets, and nobody calls them that. */
export function stockWord({ form, material }: Pick<Lot, 'form' | 'material'>): 'sheet' | 'board' | 'strip' {
  return form === 'sheet' && isSolid(material) ? 'board' : form;
}

/** `sheets`, `boards`, or `sheets and boards`: what is cut along a rail, of several lots. */
export function stockWords(lots: readonly Pick<Lot, 'form' | 'material'>[]): string {
  const words = new Set(lots.map(stockWord).filter((w) => w !== 'strip'));
  return ['sheet' as const, 'board' as const]
    .filter((w) => words.has(w))
    .map((w) => `${w}s`)
    .join(' and ');
}
