import type { FinishLot } from '../../job/index.ts';
import type { Finish } from '../../materials/index.ts';
import { timeWords } from '../duration-words.ts';

/** How long a finish dries until it may be used with care, `after` what, and who says so: its label, or what is usual. */
export function readyWords(
  { kind, lot }: { readonly kind: Finish; readonly lot: FinishLot | undefined },
  after = '',
): string {
  const told = lot?.label?.readyHours;
  if (told !== undefined)
    return `${timeWords(told * 60)}${after}, as the label of ${lot!.name ?? kind.name} says`;
  const [least, most] = kind.readyHours;
  return `${timeWords(least * 60)} to ${timeWords(most * 60)}${after}`;
}
