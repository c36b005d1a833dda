/**
 * Places in the document. A path is words with `/` between: `design/records/bay1/size`,
 * `shop/rack/lots/birch18/thickness`. Entries of a list are named by their id, or by their number from 0.
 */

/** What stands at a path; undefined where nothing does. */
export function readPlace(document: unknown, path: string): unknown {
  let at: unknown = document;
  for (const step of path.split('/')) {
    if (Array.isArray(at)) at = at[indexIn(at, step)];
    else if (isRecord(at) && Object.hasOwn(at, step)) at = at[step];
    else return undefined;
  }
  return at;
}

/**
 * A copy of the document with `value` at the path (undefined takes the field away). Everything off the path is
 * shared with the original. Undefined when the path leads nowhere.
 */
export function writePlace(document: unknown, path: string, value: unknown): unknown {
  const [step, ...rest] = path.split('/');
  if (step === undefined) return undefined;
  if (Array.isArray(document)) {
    const i = indexIn(document, step);
    if (i < 0 || i >= document.length) return undefined;
    const inner = rest.length ? writePlace(document[i], rest.join('/'), value) : value;
    return inner === undefined ? undefined : document.map((e, n) => (n === i ? inner : e));
  }
  if (!isRecord(document) || isForbidden(step)) return undefined;
  if (rest.length === 0) {
    const { [step]: _, ...others } = document;
    return value === undefined ? others : keepingOrder(document, step, value);
  }
  if (!Object.hasOwn(document, step)) return undefined;
  const inner = writePlace(document[step], rest.join('/'), value);
  return inner === undefined ? undefined : keepingOrder(document, step, inner);
}

function keepingOrder(o: Record<string, unknown>, key: string, value: unknown): Record<string, unknown> {
  return { ...o, [key]: value };
}

function indexIn(list: readonly unknown[], step: string): number {
  const byId = list.findIndex((e) => isRecord(e) && e.id === step);
  if (byId >= 0) return byId;
  return /^\d+$/.test(step) ? Number(step) : -1;
}

function isRecord(x: unknown): x is Record<string, unknown> {
  return typeof x === 'object' && x !== null && !Array.isArray(x);
}

function isForbidden(key: string): boolean {
  return key === '__proto__' || key === 'constructor' || key === 'prototype';
}
