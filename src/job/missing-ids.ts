/**
 * Gives records that came without an id one made from their place: the parent's id, the kind, and a number where
 * there are several. Touches nothing else, and nothing at all in a value that isn't a job.
 */
export function withMissingIds(value: unknown): unknown {
  const records = recordsOf(value);
  if (!records?.some((r) => isObject(r) && r.id === undefined)) return value;
  const taken = new Set(records.flatMap((r) => (isObject(r) && typeof r.id === 'string' ? [r.id] : [])));
  const named = records.map((r) => {
    if (!isObject(r) || r.id !== undefined) return r;
    const parent = typeof r.parent === 'string' ? `${r.parent}.` : '';
    const stem = `${parent}${String(r.kind ?? 'record')}`;
    let id = stem;
    for (let n = 2; taken.has(id); n++) id = `${stem}.${n}`;
    taken.add(id);
    return { id, ...r };
  });
  const job = value as Record<string, unknown>;
  return { ...job, design: { ...(job.design as object), records: named } };
}

function recordsOf(value: unknown): readonly unknown[] | undefined {
  if (!isObject(value) || !isObject(value.design)) return undefined;
  const records = value.design.records;
  return Array.isArray(records) ? records : undefined;
}

function isObject(x: unknown): x is Record<string, unknown> {
  return typeof x === 'object' && x !== null && !Array.isArray(x);
}
