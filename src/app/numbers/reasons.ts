import { explain, type LengthFormat, leavesOf, type Traced } from '../../measure/index.ts';
import type { SetOut } from '../../setting-out/index.ts';

/** A line of an explanation: how far it is set in, and its words with the document's places told apart. */
export interface Reason {
  readonly depth: number;
  readonly words: readonly (string | { readonly path: string })[];
}

/** Reasons are told a step finer than the shop prints, so that a measured 17.6 mm reads as what it is. */
export function reasonsOf(of: SetOut, t: Traced, format: LengthFormat): readonly Reason[] {
  const fine: LengthFormat =
    format.unit === 'mm' ? { unit: 'mm', step: 0.1 } : { ...format, denominator: 64 };
  const places = leavesOf(of.ledger.data(), t)
    .map((leaf) => leaf.id)
    .filter((id) => id.startsWith('design/') || id.startsWith('shop/'))
    // Longer ones first: a path may begin with another.
    .sort((a, b) => b.length - a.length);
  return explain(of.ledger, t, fine).map((line) => {
    const text = line.trimStart();
    return { depth: (line.length - text.length) / 2, words: apart(text, places) };
  });
}

function apart(text: string, places: readonly string[]): Reason['words'] {
  const path = places.find((p) => text.includes(p));
  if (path === undefined) return [text];
  const at = text.indexOf(path);
  return [
    text.slice(0, at),
    { path },
    ...apart(
      text.slice(at + path.length),
      places.filter((p) => p !== path),
    ),
  ].filter((w) => w !== '');
}
