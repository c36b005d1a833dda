import type { Ledger, Traced } from './ledger.ts';
import { toMm } from './ticks.ts';

/**
 * Output as data. Fields whose names end in `_mm` hold traced lengths (or lists or groups of them); everything else
 * is plain JSON. Written out they become millimetres, and each keeps its way back to its reasons.
 */
export type Report = { readonly [field: string]: unknown };

/** The report with every `_mm` field in millimetres. */
export function inMm(ledger: Ledger, report: Report): unknown {
  return map(report, false, (t) => toMm(ledger.ticks(t)));
}

/** Every traced length of a report, with the path of its field. */
export function tracesOf(report: Report): readonly { readonly path: string; readonly traced: Traced }[] {
  const found: { path: string; traced: Traced }[] = [];
  const walk = (x: unknown, path: string, inside: boolean) => {
    if (typeof x === 'number' && inside) found.push({ path, traced: x as Traced });
    else if (Array.isArray(x)) for (const [i, e] of x.entries()) walk(e, `${path}/${i}`, inside);
    else if (typeof x === 'object' && x !== null)
      for (const [k, v] of Object.entries(x))
        walk(v, path === '' ? k : `${path}/${k}`, inside || k.endsWith('_mm'));
  };
  walk(report, '', false);
  return found;
}

function map(x: unknown, inside: boolean, length: (t: Traced) => number): unknown {
  if (typeof x === 'number') return inside ? length(x as Traced) : x;
  if (Array.isArray(x)) return x.map((e) => map(e, inside, length));
  if (typeof x === 'object' && x !== null)
    return Object.fromEntries(
      Object.entries(x)
        .filter(([, v]) => v !== undefined)
        .map(([k, v]) => [k, map(v, inside || k.endsWith('_mm'), length)]),
    );
  return x;
}
