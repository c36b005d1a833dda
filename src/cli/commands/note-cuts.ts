import { writeFile } from 'node:fs/promises';
import { applyEdit, type Edit, type JobDocument } from '../../job/index.ts';
import { partIsSpoiled, sheetIsCut, tickedAreCut } from '../../plan/index.ts';
import { partsAndBoards } from '../../setting-out/index.ts';
import { nearestNames } from '../../snag/index.ts';
import type { Given } from '../command.ts';
import { faults, jobOf } from '../job-file.ts';
import { BadInput, EXIT, type Output } from '../output.ts';
import { runPlan } from '../run-plan.ts';

/**
 * `cut JOB --sawn S1,S2 --spoiled A1 --out FILE`: the job with those sheets of its plan cut, and those parts of them spoiled.
 * Planned again, it cuts only what is still missing, from what is left.
 */
export async function noteCuts(given: Given, output: Output): Promise<number> {
  const { sawn, spoiled, out } = given.options;
  const names = (text: string | boolean | undefined) =>
    typeof text === 'string' ? text.split(',').map((n) => n.trim()) : [];
  const asked = await jobOf(given);
  if (given.options.ticked === true) {
    if (sawn !== undefined || spoiled !== undefined)
      throw new BadInput('--ticked goes by itself: what is sawn or spoiled besides is noted after it.');
    return written(await ticksNoted(asked), out, output);
  }
  const plan = await runPlan(asked);
  let { job } = plan;
  const edit = (made: Edit | undefined, name: string, there: readonly string[], kind: string) => {
    if (!made)
      throw new BadInput(
        `There is no ${kind} “${name}” here. Nearest: ${nearestNames(name, there)
          .map((n) => `“${n}”`)
          .join(', ')}.`,
      );
    const edited = applyEdit(job, made);
    if (!edited.ok) throw new BadInput(faults(edited.snags));
    job = edited.job;
  };
  const sheets = plan.breakdown.lots.flatMap((l) => l.sheets.map((s) => s.name));
  for (const name of names(sawn)) edit(sheetIsCut({ ...plan, job }, name), name, sheets, 'sheet or strip');
  const made = (of: JobDocument) => new Set((of.work.made ?? []).map((m) => m.part));
  for (const name of names(spoiled)) {
    const cut = partsAndBoards(plan.setOut).filter((p) => made(job).has(p.id));
    const part = cut.find((p) => p.mark === name || p.id === name);
    const marks = cut.map((p) => p.mark);
    edit(part && partIsSpoiled(job, part.id), name, marks, 'part that is cut called');
  }
  return written(job, out, output);
}

/**
 * The job with its ticked cuts made. They were made by the plan as it was before their parts were measured: of what was measured,
 * it knew the thickness of the stock alone.
 */
async function ticksNoted(job: JobDocument): Promise<JobDocument> {
  const { measured = {}, ...work } = job.work;
  const known = Object.entries(measured).filter(([name]) => name.endsWith('.thickness'));
  const done = job.work.done?.map(({ sizes: _, ...d }) => d);
  const before = {
    ...job,
    work: {
      ...work,
      ...(known.length > 0 ? { measured: Object.fromEntries(known) } : {}),
      ...(done ? { done } : {}),
    },
  };
  const plan = await runPlan(before);
  const otherwise = plan.snags.find((s) => s.code === 'work.cut-otherwise');
  if (otherwise) throw new BadInput(otherwise.sentence);
  const noted = tickedAreCut(plan, job);
  if (!noted) throw new BadInput('No card is ticked that cuts a sheet or a strip.');
  if ('why' in noted) throw new BadInput(noted.why);
  const edited = applyEdit(job, noted.edit);
  if (!edited.ok) throw new BadInput(faults(edited.snags));
  return edited.job;
}

async function written(job: JobDocument, out: string | boolean | undefined, output: Output): Promise<number> {
  const text = `${JSON.stringify(job, null, 2)}\n`;
  if (typeof out !== 'string') output.out(text);
  else {
    await writeFile(out, text).catch((e: unknown) => {
      throw new BadInput(`“${out}” can’t be written: ${e instanceof Error ? e.message : e}`);
    });
    output.out(`Written: ${out}\n`);
  }
  return EXIT.fine;
}
