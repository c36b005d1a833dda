import { writeFile } from 'node:fs/promises';
import { applyEdit, type Edit, type JobDocument } from '../../job/index.ts';
import { partIsSpoiled, sheetIsCut } from '../../plan/index.ts';
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
  const plan = await runPlan(await jobOf(given));
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
