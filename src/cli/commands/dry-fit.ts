import { fitReport, type VirtualOutcome } from '../../dry-fit/index.ts';
import { formatOf } from '../../job/index.ts';
import { type LengthFormat, printSetting, TICKS_PER_MM, ticks } from '../../measure/index.ts';
import { toleranceOf, toleranceReport } from '../../plan/index.ts';
import type { Command } from '../command.ts';
import { jobOf } from '../job-file.ts';
import { EXIT, writeJson } from '../output.ts';
import { runPlan } from '../run-plan.ts';
import { table } from '../table.ts';

/** `dry-fit JOB`: executes the printed cards and tells what came of it. */
export const dryFit: Command = {
  options: { json: { type: 'boolean' } },
  takes: [1, 1],
  async run(given, output) {
    const plan = await runPlan(await jobOf(given));
    const { dryFit: report } = plan;
    const tolerance = toleranceOf(plan);
    if (given.options.json)
      writeJson(output, { ...fitReport(report), tolerance: toleranceReport(tolerance) });
    else {
      output.out(
        `${report.ran} of ${report.outOf} operations run. ${report.fits ? 'The piece is as drawn.' : 'The piece is not as drawn:'}\n`,
      );
      for (const f of report.faults) output.out(`  ${f.sentence}\n`);
      for (const line of inWords(tolerance)) output.out(`${line}\n`);
      output.out(rangesOf(tolerance, formatOf(plan.job.shop)));
    }
    return report.fits ? EXIT.fine : EXIT.snag;
  },
};

/** What the virtual builds say, without proud percentages: accuracies are estimates. */
function inWords(of: VirtualOutcome): readonly string[] {
  if (of.fits.length === 0) return [];
  const unsure = of.fits.filter((f) => !f.sure);
  const first = of.matters[0];
  if (unsure.length === 0)
    return [
      `Built virtually with the errors of this shop’s tools, every fit came right each time.`,
      ...(first ? [`What leaves least to spare: ${first.name}.`] : []),
    ];
  const mended = unsure.filter((f) => f.sureCutToFit === true).length;
  const last = 'Cut last, to what you measure,';
  return [
    `Built virtually with the errors of this shop’s tools, ${unsure.length} of ${of.fits.length} fits did not always come right.`,
    ...(first ? [`What mattered most: ${ranked(of.matters.map((m) => m.name))}.`] : []),
    ...(mended === unsure.length
      ? [`${last} they always did.`]
      : mended > 0
        ? [`${last} ${mended} of them always did; the others depend on more than one cut.`]
        : []),
  ];
}

/** So many are named, the first ones first. */
const NAMED = 3;

function ranked(names: readonly string[]): string {
  const [first, ...rest] = [...new Set(names)].slice(0, NAMED);
  return [first, ...rest.map((name) => `then ${name}`)].join(', ');
}

/** The fits that did not always come right: what their gaps come to, as far as is likely and at the worst. */
function rangesOf(of: VirtualOutcome, format: LengthFormat): string {
  const unsure = of.fits.filter((f) => !f.sure);
  if (unsure.length === 0) return '';
  // Tenths of a millimetre: accuracies are no better known.
  const step = format.unit === 'mm' ? TICKS_PER_MM / 10 : 1;
  const gap = (t: number) => printSetting(ticks(Math.round(t / step) * step), format);
  const range = ([least, most]: readonly [number, number]) => `${gap(least)} to ${gap(most)}`;
  const rows = unsure.map((f) => [
    f.name,
    range(f.likely),
    range(f.worst),
    f.matters[0] ?? '',
    f.sureCutToFit === undefined ? '' : f.sureCutToFit ? 'always comes right' : 'better, not always right',
  ]);
  return `\nGaps of these fits; less than nothing is too tight:\n${table(['fit', 'likely', 'at worst', 'what matters most', 'cut last, to what is measured'], rows)}`;
}
