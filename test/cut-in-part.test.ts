import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { openSolids } from '../src/adaptors/solids-manifold.ts';
import type { PlannedNode } from '../src/breakdown/index.ts';
import { cutsOfAct } from '../src/build/index.ts';
import { applyEdit, checkJob, type Edit, formatOf, type JobDocument } from '../src/job/index.ts';
import { printSetting } from '../src/measure/index.ts';
import { type Plan, partIsSpoiled, planJob, sheetIsCut, tickedAreCut } from '../src/plan/index.ts';
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

describe('a sheet that is cut in part', () => {
  const boots = () =>
    JSON.parse(readFileSync(new URL('../examples/boot-bench.json', import.meta.url), 'utf8'));

  /** Ticks the cards of a plan up to one, each with where it was cut, and has both sides come out shorter by a millimetre. */
  function tickedTo(whole: Plan, last: string): NonNullable<JobDocument['work']['done']> {
    const { operations } = whole.build;
    const format = formatOf(whole.job.shop);
    const ticked = operations.slice(0, operations.findIndex((o) => o.id === last) + 1);
    return ticked.map((o) => {
      const [cut] = cutsOfAct(o.does);
      const at = cut && printSetting(whole.setOut.ledger.ticks(cut.at), format);
      return { id: o.id, ...(at === undefined ? {} : { at }) };
    });
  }
  const SHORT = { 'A1.length': '451.2 mm', 'A2.length': '451.2 mm' };

  test('is told when what was measured since would have it cut otherwise, and not before', () => {
    const whole = planned(jobOf(boots()));
    const done = tickedTo(whole, 'S1.3/rip-S1.6');
    const told = (work: object) =>
      planned(jobOf({ ...boots(), work })).snags.filter((s) => s.code === 'work.cut-otherwise');
    expect(told({ done })).toEqual([]);
    const [snag] = told({ done, measured: SHORT });
    expect(snag?.sentence).toMatch(
      /^“Crosscut piece S1\.1 off sheet S1” is ticked, but .* elsewhere\. So it is with \d+ more/,
    );
    expect(told({ done: [{ id: 'S1.77/rip-S1.78' }] })[0]?.sentence).toMatch(
      /^The cut “S1\.77\/rip-S1\.78” is ticked, but/,
    );
  });

  test('stays as it is: the plan goes on from the pieces that lie there', () => {
    const whole = planned(jobOf(boots()));
    const done = tickedTo(whole, 'S1.3/rip-S1.6');
    const measured = jobOf({ ...boots(), work: { done, measured: SHORT } });
    const noted = tickedAreCut(whole, measured)!;
    if (!('edit' in noted)) throw new Error(noted.why);
    const job = edited(measured, noted.edit);
    expect(job.work.made!.map((m) => m.part)).toEqual(
      ['A1', 'A2', 'D1', 'D2'].map((m) => whole.setOut.parts.find((p) => p.mark === m)!.id),
    );
    expect(job.work.done!.map((d) => d.id)).toEqual(['gather/stock', 'sheets/test-cut']);
    // The dividers were cut for longer sides: they are named, and cut down they go with the rest.
    const stops = planned(job).snags.filter((s) => s.level === 'stop');
    expect(stops.map((s) => s.cures![0]!.says)).toEqual(['Cut D1 down to 353 mm.', 'Cut D2 down to 353 mm.']);
    const cutDown = { ...SHORT, 'D1.length': '353 mm', 'D2.length': '353 mm' };
    const rest = planned(jobOf({ ...job, work: { ...job.work, measured: cutDown } }));
    expect(rest.snags.filter((s) => s.level === 'stop')).toEqual([]);
    expect(rest.dryFit.faults).toEqual([]);
    // Nothing more is bought: what is still to be cut comes from the pieces of the sheet.
    expect(rest.breakdown.purchases.filter((p) => p.lot === 'ply18')).toEqual([]);
    const from = rest.breakdown.lots.flatMap((l) => l.sheets.map((s) => s.source.stock.id));
    expect(from).toEqual(expect.arrayContaining(['S1.6', 'S1.7']));
    const sawn = rest.build.operations.flatMap((o) =>
      cutsOfAct(o.does).flatMap((c) => c.yields.map((y) => y?.name)),
    );
    for (const mark of ['A1', 'A2', 'D1', 'D2']) expect(sawn).not.toContain(mark);
  });

  test('is noted only where its ticks hang together', () => {
    const whole = planned(jobOf(boots()));
    const note = (...ids: readonly string[]) =>
      tickedAreCut(whole, jobOf({ ...boots(), work: { done: ids.map((id) => ({ id })) } }));
    expect(note()).toBeUndefined();
    expect(note('S1/true-edge')).toEqual({
      why: '“True a long edge of sheet S1” is ticked: square its end as well, and tick that card.',
    });
    expect(note('S1/true-edge', 'S1/square-end')).toHaveProperty('edit');
    expect(note('S1.1/rip-S1.2')).toEqual({
      why: '“Rip piece S1.2 off piece S1.1” is ticked, and a cut that must come before it is not.',
    });
  });

  test('that came home from the yard lies there as raw as it is, and all goes on from it', () => {
    const document = JSON.parse(
      readFileSync(new URL('../examples/lamp-table.json', import.meta.url), 'utf8'),
    );
    const whole = planned(jobOf(document));
    const sheets = whole.build.operations.filter((o) => o.stage === 'yard' || o.stage === 'sheets');
    const done = sheets.slice(0, sheets.findIndex((o) => o.kind === 'rip') + 1).map(({ id }) => ({ id }));
    const noted = tickedAreCut(whole, jobOf({ ...document, work: { done } }))!;
    if (!('edit' in noted)) throw new Error(noted.why);
    const rest = planned(edited(whole.job, noted.edit));
    expect(rest.breakdown.missing).toEqual([]);
    expect(rest.dryFit.faults).toEqual([]);
    expect(rest.costs.material).toBeLessThan(whole.costs.material);
    const names = rest.breakdown.lots.flatMap((l) => l.sheets.map((s) => s.name));
    expect(names).not.toContain('S1');
  });

  test('and in which only a panel is still to be trued has the saw tried before that', () => {
    const document = JSON.parse(
      readFileSync(new URL('../examples/hall-console.json', import.meta.url), 'utf8'),
    );
    const whole = planned(jobOf(document));
    let { job } = whole;
    for (const l of whole.breakdown.lots)
      for (const { name } of l.sheets) job = edited(job, sheetIsCut({ ...whole, job }, name));
    expect(planned(job).dryFit.faults).toEqual([]);
  });

  test('of strips, what was cut off at one stop is made and the rest of each lies there', () => {
    const whole = planned(jobOf(boots()));
    const done = tickedTo(whole, 'J1/crosscut-alike').filter((d) => /^[JL]/.test(d.id));
    const noted = tickedAreCut(whole, jobOf({ ...boots(), work: { done } }))!;
    if (!('edit' in noted)) throw new Error(noted.why);
    const job = edited(whole.job, noted.edit);
    expect(job.work.made!.length).toBe(3);
    expect(job.work.made!.every((m) => m.width === undefined)).toBe(true);
    const rest = planned(job);
    expect(rest.dryFit.faults).toEqual([]);
    expect(rest.breakdown.purchases.filter((p) => p.lot === 'ash8').length).toBeLessThanOrEqual(1);
  });
});
