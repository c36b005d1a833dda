import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Built, built, builtExample } from '../../../test/build/built.ts';
import { generatedJobs } from '../../../test/generate/design.ts';
import { equipped } from '../../../test/generate/equipped.ts';
import { takesGlue } from './glued-joints.ts';

type Fields = Record<string, unknown>;
type Plain = {
  readonly design: Fields;
  readonly shop: Fields & { readonly rack: Fields; readonly tools: Fields[] };
};

/** The seed shelf, all of it in dados, with changes to its shop. */
function seedShelf(changes: {
  readonly glue?: Fields;
  readonly clamps?: number;
  readonly people?: number;
}): Built {
  const url = new URL('../../../examples/seed-shelf.json', import.meta.url);
  const plain = JSON.parse(readFileSync(url, 'utf8')) as Plain;
  const { shop } = plain;
  return built({
    ...plain,
    shop: {
      ...shop,
      people: Array.from({ length: changes.people ?? 1 }, (_, i) => ({ id: `p${i}`, lift: '30 kg' })),
      tools: shop.tools.map((t) => (t.kind === 'clamp' ? { ...t, count: changes.clamps ?? 8 } : t)),
      rack: { ...shop.rack, adhesives: [{ id: 'glue', material: 'pva', label: changes.glue ?? {} }] },
    },
  });
}

/** What a glue-up outruns that no snag tells, and glued joints that are in none or in two. */
function faultsOf({ build, drawn, job }: Built): string[] {
  const faults: string[] = [];
  const told = new Set(
    build.snags.filter((s) => s.code.startsWith('glue-up.')).map((s) => `${s.code} ${s.where.operation}`),
  );
  const clamps = job.shop.tools.reduce((sum, t) => sum + (t.kind === 'clamp' ? t.count : 0), 0);
  for (const g of build.glueUps) {
    const first = g.operations[0]!;
    if (g.minutes > g.leaves && !told.has(`glue-up.outruns-glue ${first}`))
      faults.push(`${g.id} outruns its glue`);
    if (clamps > 0 && g.clamps > clamps && !told.has(`glue-up.too-few-clamps ${first}`))
      faults.push(`${g.id} takes too many clamps`);
    // From the first card to the last without a break or anything between, within the time the glue leaves.
    const spans = build.schedule.operations.filter((_, i) => build.operations[i]!.together === g.id);
    spans.forEach((s, i) => {
      if (i > 0 && s.start !== spans[i - 1]!.end) faults.push(`${g.id} pauses before ${s.operation}`);
    });
    const before = build.operations.findIndex((o) => o.id === `${g.id}/rehearse`);
    if (before < 0 || build.operations.findIndex((o) => o.id === first) < before)
      faults.push(`${g.id} isn’t rehearsed`);
  }
  const of = new Map(build.operations.map((o) => [o.id, o]));
  const set = build.glueUps.flatMap((g) => g.operations.map((id) => of.get(id)!));
  const marks = set.flatMap((o) => (o.does.act === 'set' ? [o.does.workpiece] : []));
  if (new Set(marks).size !== marks.length) faults.push('a part is glued in twice');
  const ids = new Map(drawn.parts.map((p) => [p.id, p.mark]));
  // Edging, and what drawers run on, is glued to boards that lie loose, each by itself.
  const loose = build.operations.flatMap(({ does }) =>
    does.act === 'edge' ? does.pairs.map((p) => p.strip) : [],
  );
  for (const j of drawn.joints)
    if (takesGlue(j) && ![j.part, j.mate].some((id) => [...marks, ...loose].includes(ids.get(id)!)))
      faults.push(`${j.id} is glued in no glue-up`);
  return faults;
}

test('the seed shelf is glued in steps, none longer than its glue is open nor with more than its clamps', () => {
  const of = seedShelf({});
  expect(faultsOf(of)).toEqual([]);
  expect(of.build.glueUps.length).toBeGreaterThan(2);
});

test('a slower glue, more clamps and a second pair of hands need fewer steps', () => {
  const slow = seedShelf({ glue: { assemblyMinutes: 60 }, clamps: 40, people: 2 });
  expect(slow.build.glueUps.map((g) => g.id)).toEqual(['case/glue-1']);
  expect(slow.build.glueUps[0]!.minutes).toBeLessThan(
    seedShelf({}).build.glueUps.reduce((sum, g) => sum + g.minutes, 0),
  );
});

test('what can’t be glued in time is told, with slower glues and another pair of hands as cures', () => {
  const { build } = seedShelf({ glue: { assemblyMinutes: 4 } });
  const snag = build.snags.find((s) => s.code === 'glue-up.outruns-glue')!;
  expect(snag.sentence).toContain('leaves 4');
  const cures = snag.cures.map((c) => c.says).join(' ');
  expect(cures).toContain('liquid hide glue');
  expect(cures).toContain('another pair of hands');
});

test('too few clamps are told', () => {
  const { build } = seedShelf({ clamps: 2 });
  expect(build.snags.some((s) => s.code === 'glue-up.too-few-clamps')).toBe(true);
});

test('of generated designs as well', () => {
  fc.assert(
    fc.property(generatedJobs, ({ document }) => {
      const of = built(equipped(document));
      if (of.drawn.snags.some((s) => s.level === 'stop') || of.breakdown.missing.length > 0) return;
      expect(faultsOf(of)).toEqual([]);
    }),
    { numRuns: 25 },
  );
});

test('screws that hold a glued joint count before it is begun: no glue-up of the stool outruns its glue', () => {
  for (const g of builtExample('step-stool').build.glueUps) expect(g.minutes).toBeLessThanOrEqual(g.leaves);
});

test('whatever sets before the last panel is in has had its diagonals measured', () => {
  const sets = (name: string) =>
    builtExample(name).build.operations.filter((o) => o.kind === 'cure' && /glue-\d+\/cure$/.test(o.id));
  const shelf = sets('seed-shelf').filter((o) => o.id.startsWith('case/'));
  expect(shelf.length).toBeGreaterThan(1);
  for (const o of shelf) {
    expect(o.lines.join(' ')).toContain('Measure both diagonals of the open side of the case');
    expect(o.lengths).toHaveLength(1);
  }
  // So have drawers, while their bottom is in dry; a back that is glued on before another is no frame.
  for (const o of sets('tool-chest').filter((c) => c.id.startsWith('box')))
    expect(o.lines[1]).toMatch(/^Measure both diagonals of the box of .*, with what comes later in it dry,/);
  for (const o of sets('linen-cupboard')) expect(o.lines.join(' ')).not.toContain('square');
});
