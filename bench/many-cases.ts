import { readFileSync } from 'node:fs';

type Field = Readonly<Record<string, unknown>>;

/** The kitchen run of the examples, nine cases, as it is. */
export function kitchenRun(): { design: { records: Field[] } } {
  return JSON.parse(readFileSync(new URL('../examples/hall-kitchen.json', import.meta.url), 'utf8'));
}

/** The same run so many times, one row upon the other, without bases. */
export function kitchenRuns(rows: number): unknown {
  const job = kitchenRun();
  const { records } = job.design;
  const piece = records.find((r) => r.kind === 'piece')!;
  const inRun = records.filter((r) => r.kind !== 'piece' && r.kind !== 'group' && r.kind !== 'base');
  job.design.records = [
    { ...piece, height: `${2000 * rows} mm` },
    { id: 'all', kind: 'group', parent: piece.id, lay: 'up' },
    ...Array.from({ length: rows }, (_, i): Field[] => [
      { id: `row${i}`, kind: 'group', parent: 'all', lay: 'across' },
      ...inRun.map((r) => ({
        ...r,
        id: `row${i}.${r.id}`,
        parent: r.parent === 'run' ? `row${i}` : `row${i}.${r.parent}`,
        ...(Array.isArray(r.over) ? { over: r.over.map((id) => `row${i}.${id}`) } : {}),
      })),
    ]).flat(),
  ];
  return job;
}
