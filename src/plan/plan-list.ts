import { type Breakdown, breakDown, type ListRow, listParts } from '../breakdown/index.ts';
import { type BuildPlan, planSawing, stepsReport } from '../build/index.ts';
import { checkSawing } from '../checks/index.ts';
import { type JobDocument, type Shop, VERSION } from '../job/index.ts';
import type { Report } from '../measure/index.ts';
import { joinMarks, partsReport, type SetOut } from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import type { PlanProgress } from './plan.ts';
import type { PlanOptions } from './plan-job.ts';
import { breakdownReport } from './plan-report.ts';

/** How a list of pieces is cut from the shop's rack. */
export interface ListPlan {
  /** The shop, with an empty design. */
  readonly job: JobDocument;
  readonly setOut: SetOut;
  readonly breakdown: Breakdown;
  /** The cuts as cards, in order. */
  readonly build: BuildPlan;
  readonly snags: readonly Snag[];
}

/** Plans the cutting of a maker's own list. Pauses as `planJob` does. */
export function* planList(
  ownShop: Shop,
  rows: readonly ListRow[],
  options: PlanOptions = {},
): Generator<PlanProgress, ListPlan> {
  const shop = withoutFaces(ownShop);
  const job: JobDocument = { version: VERSION, design: { records: [] }, shop, work: {} };
  const setOut = listParts(rows, shop);
  const cutting = breakDown(job, setOut, {
    ...(options.effort === undefined ? {} : { effort: options.effort }),
    ...(options.stop ? { stop: options.stop } : {}),
  });
  let step = cutting.next();
  while (!step.done) {
    yield { room: 'breakdown', share: step.value.share };
    step = cutting.next();
  }
  const breakdown = step.value;
  const build = planSawing(job, setOut, breakdown);
  const checked = checkSawing({ job, setOut, breakdown, build });
  return { job, setOut, breakdown, build, snags: [...build.snags, ...rowByRow(setOut, checked)] };
}

/**
 * What is wrong with the pieces of a row, told once for all of them. It is put right in the shop or in the list: the pieces stand in
 * no design.
 */
function rowByRow({ parts }: SetOut, snags: readonly Snag[]): readonly Snag[] {
  const alike = new Map<string, Snag[]>();
  snags.forEach((s, i) => {
    const row = s.where.part === undefined ? `${i}` : `${s.code} ${s.where.record}`;
    alike.set(row, [...(alike.get(row) ?? []), s]);
  });
  return [...alike.values()].map(([first, ...others]) => {
    const { where, sentence, ...snag } = first!;
    const { path, lot } = where;
    const marks = others.map((s) => parts.find((p) => p.id === s.where.part)!.mark);
    return {
      ...snag,
      sentence: marks.length === 0 ? sentence : `${sentence} The same goes for ${joinMarks(marks)}.`,
      where: { ...(path === undefined ? {} : { path }), ...(lot === undefined ? {} : { lot }) },
    };
  });
}

/** The shop with sheets that may be seen on both faces: a list doesn't tell what of its pieces is seen. */
function withoutFaces(shop: Shop): Shop {
  const lots = shop.rack.lots.map((lot) => ({
    ...lot,
    stock: lot.stock.map(({ goodFaces: _, ...stock }) => stock),
  }));
  return { ...shop, rack: { ...shop.rack, lots } };
}

/** The plan of a list as a report, documented as `cut --list --json`. */
export function listReport(plan: ListPlan): Report {
  return {
    version: 1,
    parts: partsReport(plan.setOut).parts,
    breakdown: breakdownReport(plan.breakdown),
    steps: stepsReport(plan.build),
    snags: plan.snags,
  };
}
