import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { PlannedNode } from '../src/breakdown/index.ts';
import { applyEdit, checkJob, type Edit, type JobDocument } from '../src/job/index.ts';
import { type Plan, partIsSpoiled, planJob, sheetIsCut } from '../src/plan/index.ts';
import type { Solids } from '../src/solid/index.ts';
import { demoDocument, shelvesAlone } from './build/built.ts';

let solids: Solids;
beforeAll(async () => {
  solids = await openSolids();
});

function planned(job: JobDocument): Plan {
  const planning = planJob(job, { solids }, { effort: 300_000 });
  let step = planning.next();
  while (!step.done) step = planning.next();
  return step.value;
}

function jobOf(document: unknown): JobDocument {
  const read = checkJob(document);
  if (!read.ok) throw new Error(read.snags.map((s) => s.sentence).join('\n'));
  return read.job;
}

function edited(job: JobDocument, edit: Edit | undefined): JobDocument {
  const done = applyEdit(job, edit!);
  if (!done.ok) throw new Error(done.snags.map((s) => s.sentence).join('\n'));
  return done.job;
}

/** Marks of the parts on a sheet, or on all of them. */
function marksOn(plan: Plan, sheet?: string): string[] {
  const walk = (n: PlannedNode): string[] =>
    n.kind === 'cut' ? n.parts.flatMap(walk) : n.kind === 'piece' ? [n.part.mark] : [];
  return plan.breakdown.lots.flatMap((l) =>
    l.sheets.filter((s) => sheet === undefined || s.name === sheet).flatMap((s) => walk(s.root)),
  );
}

describe('a plan that is fixed in part', () => {
  test('a sheet that is cut stays cut: its parts are not cut again, its leftovers serve, the cards go on from there', () => {
    const whole = planned(jobOf(shelvesAlone()));
    const first = whole.breakdown.lots[0]!.sheets[0]!.name;
    const made = marksOn(whole, first);
    const job = edited(whole.job, sheetIsCut(whole, first));
    const rest = planned(job);
    expect(rest.breakdown.missing).toEqual([]);
    expect(rest.breakdown.lots.flatMap((l) => l.verdict.findings)).toEqual([]);
    expect(rest.dryFit.faults).toEqual([]);
    expect([...marksOn(rest), ...made].sort()).toEqual(marksOn(whole).sort());
    const saws = rest.build.operations.flatMap((o) => (o.does.act === 'saw' ? o.does.yields : []));
    for (const mark of made) expect(saws.some((y) => y?.name === mark)).toBe(false);
    // No sheet is called what one that is cut was called.
    expect(rest.breakdown.lots.flatMap((l) => l.sheets.map((s) => s.name))).not.toContain(first);
    expect(rest.costs.material).toBeLessThanOrEqual(whole.costs.material);
  });

  test('a spoiled part is cut again, alone, from what is left', () => {
    const whole = planned(jobOf(demoDocument()));
    let { job } = whole;
    for (const { name } of whole.breakdown.lots.flatMap((l) => l.sheets))
      job = edited(job, sheetIsCut({ ...whole, job }, name));
    expect(job.work.made).toHaveLength(whole.setOut.parts.length);
    const nothing = planned(job);
    expect(nothing.breakdown.lots).toEqual([]);
    expect(nothing.dryFit.faults).toEqual([]);
    const leftover = whole.breakdown.spares.find((s) => s.from === 'leftover' && s.part.form === 'sheet')!;
    const again = planned(edited(job, partIsSpoiled(job, leftover.part.id)));
    expect(marksOn(again)).toEqual([leftover.part.mark]);
    expect(again.breakdown.purchases).toEqual([]);
    expect(again.dryFit.faults).toEqual([]);
    expect(partIsSpoiled(whole.job, leftover.part.id)).toBeUndefined();
  });

  test('what is cut keeps its size when the drawing changes, and a name that is no part’s is told', () => {
    const whole = planned(jobOf(shelvesAlone()));
    const first = whole.breakdown.lots[0]!.sheets[0]!.name;
    const job = edited(whole.job, sheetIsCut(whole, first));
    const t = (plan: Plan, id: string) => {
      const { cut } = plan.setOut.parts.find((p) => p.id === id)!;
      return [plan.setOut.ledger.ticks(cut.length), plan.setOut.ledger.ticks(cut.width)];
    };
    const taller = edited(job, { edit: 'set', at: 'design/records/cabinet/height', value: '905 mm' });
    const changed = planned(taller);
    for (const { part } of job.work.made ?? []) expect(t(changed, part)).toEqual(t(whole, part));
    const wrong = edited(job, {
      edit: 'set',
      at: 'work/made',
      value: [{ part: 'case/no-such', length: '10 mm', width: '10 mm' }],
    });
    expect(planned(wrong).snags.map((s) => s.code)).toContain('work.no-such-part');
  });
});
