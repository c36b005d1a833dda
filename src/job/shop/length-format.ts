import type { LengthFormat } from '../../measure/index.ts';
import type { Shop } from './shop.ts';

const FINEST = {
  '1/16': { unit: 'in', denominator: 16 },
  '1/32': { unit: 'in', denominator: 32 },
  '1/64': { unit: 'in', denominator: 64 },
  '0.5': { unit: 'mm', step: 0.5 },
  '0.1': { unit: 'mm', step: 0.1 },
} as const satisfies Record<Shop['precision'], LengthFormat>;

/**
 * How lengths are printed in a shop. Its units decide; a precision that belongs to the other system counts as not
 * stated, and then it is 1/32 of an inch or half a millimetre.
 */
export function formatOf({ units, precision }: Pick<Shop, 'units' | 'precision'>): LengthFormat {
  const asked = FINEST[precision];
  return asked.unit === units ? asked : FINEST[units === 'in' ? '1/32' : '0.5'];
}
