import type { Breakdown } from '../breakdown/index.ts';
import type { JobDocument } from '../job/index.ts';
import { SETTING_OUT } from '../materials/index.ts';
import {
  doorsOf,
  type Part,
  partsAndBoards,
  partsToCut,
  type SetOut,
  stillJoined,
  stockThickness,
} from '../setting-out/index.ts';
import type { Snag } from '../snag/index.ts';
import { gatherAngledHead } from './angled-head.ts';
import { asInTheShop } from './as-in-the-shop.ts';
import { assemble } from './assembly.ts';
import { Bench } from './bench.ts';
import type { BuildPlan, Stage, Workpiece } from './build-plan.ts';
import { fitButtons } from './buttons.ts';
import { fitDrawers } from './drawers/fit-drawers.ts';
import { glueCentreRunners } from './drawers/on-centre-runner.ts';
import { glueEdging, stripsLater } from './edging-work.ts';
import { feetOnBottoms } from './feet-on-bottom.ts';
import { type FinishPlan, planFinish } from './finish/finish-plan.ts';
import { finishPiece, prefinishParts } from './finish/finish-work.ts';
import { gather, sandParts } from './finishing.ts';
import { planGlueUps } from './glue/plan-glue-ups.ts';
import { glueUpPanels } from './glued-panels.ts';
import { fixHandles } from './handles.ts';
import { hangDoors } from './hanging.ts';
import { bringHome } from './home.ts';
import { leftToWork, workJoinedBlanks } from './joined-blanks.ts';
import { joinCases } from './joining.ts';
import { layOut } from './lay-out.ts';
import { fitLevellers } from './levellers.ts';
import { hangLids } from './lids.ts';
import { layLooseShelves } from './loose-shelves.ts';
import { MINUTES } from './minutes.ts';
import type { Operation } from './operation.ts';
import { inOrder } from './order.ts';
import { partCleats } from './part-cleats.ts';
import { machineParts } from './part-work.ts';
import { plugScrews } from './plug-work.ts';
import { fitPulls } from './pulls.ts';
import { sawStock } from './sawing.ts';
import { scheduleBuild } from './schedule/build-schedule.ts';
import { liftInDoors } from './sliding.ts';
import { STAGES, type StageId } from './stages.ts';
import { stockWords } from './stock-words.ts';
import { makeStorySticks, marksAsSet } from './story-sticks.ts';
import { keepTestPieces } from './test-pieces.ts';
import { listWords } from './words.ts';
import { cutAtYard } from './yard-cuts.ts';

const TITLES: Record<Exclude<StageId, 'sheets'>, string> = {
  yard: 'At the yard',
  gather: 'Gather',
  strips: 'Cut the strips',
  panels: 'Glue up panels',
  machine: 'Mark and work the parts',
  edging: 'Edging',
  sand: 'Sand the parts',
  prefinish: 'Finish what can’t be reached later',
  assemble: 'Put it together',
  fill: 'Fit out the inside',
  hang: 'Hang the doors',
  finish: 'Finish',
  home: 'Home',
};

/** Writes down how a piece is built: every operation with its settings, in an order in which each can be done. */
export function planBuild(job: JobDocument, drawn: SetOut, breakdown: Breakdown): BuildPlan {
  const setOut = asInTheShop(drawn);
  const bench = new Bench(job, setOut);
  cutAtYard(bench, breakdown);
  const finishing = planFinish(bench);
  gather(bench, finishing, breakdown);
  sawStock(bench, breakdown);
  keepTestPieces(bench, breakdown);
  partCleats(bench);
  glueUpPanels(bench);
  layOut(bench);
  const sticks = makeStorySticks(bench);
  workJoinedBlanks(bench);
  const cutAtOnce = setOut.parts.filter((p) => !p.cutLater);
  const later = stripsLater(bench);
  machineParts(bench, cutAtOnce.filter((p) => !later.includes(p)).map(leftToWork(bench)), 'machine');
  glueEdging(bench, cutAtOnce, 'edging');
  glueCentreRunners(bench);
  feetOnBottoms(bench);
  sandParts(bench);
  prefinishParts(bench, finishing);
  assemble(bench);
  joinCases(bench);
  marksAsSet(bench, sticks);
  plugScrews(bench);
  fixHandles(bench, cutAtOnce, 'fill');
  fitDrawers(bench);
  layLooseShelves(bench);
  hangDoors(bench);
  liftInDoors(bench);
  hangLids(bench);
  finishPiece(bench, finishing);
  fitPulls(bench);
  fitButtons(bench);
  fitLevellers(bench);
  bringHome(bench);
  gatherAngledHead(bench);
  return planOf(bench, breakdown, finishing);
}

/** Writes down the sawing alone, for parts that belong to no piece. */
export function planSawing(job: JobDocument, setOut: SetOut, breakdown: Breakdown): BuildPlan {
  const bench = new Bench(job, setOut);
  cutAtYard(bench, breakdown);
  sawStock(bench, breakdown);
  return planOf(bench, breakdown);
}

function planOf(bench: Bench, breakdown: Breakdown, finishing?: FinishPlan): BuildPlan {
  const glued = planGlueUps(bench);
  const { operations, schedule } = scheduleBuild(bench.job, inOrder(glued.operations));
  return {
    stock: [...stockOf(bench.setOut, breakdown), ...madeParts(bench)],
    operations,
    stages: stagesOf(bench.setOut, operations, stockWords(breakdown.lots.map((b) => b.lot))),
    glueUps: glued.glueUps,
    ...(finishing ? { finishing } : {}),
    schedule,
    gauges: bench.gauges.all,
    stories: bench.stories,
    snags: [...bench.snags, ...glued.snags, ...unknownTimings(bench.job.shop.timings)],
  };
}

/** Timings of kinds of work that there are not. */
function unknownTimings(timings: JobDocument['shop']['timings'] = {}): readonly Snag[] {
  return Object.keys(timings)
    .filter((kind) => !(kind in MINUTES))
    .map((kind) => ({
      code: 'timings.no-such-kind',
      level: 'note',
      where: { path: `shop/timings/${kind}` },
      sentence: `There is no kind of work called “${kind}”, so its minutes count for nothing.`,
      rule: { says: 'own timings go by the kind of an operation', source: 'the job file', confirmed: true },
      cures: [{ says: `The kinds are ${Object.keys(MINUTES).join(', ')}.` }],
    }));
}

function stagesOf(setOut: SetOut, operations: readonly Operation[], sheets: string): readonly Stage[] {
  return STAGES.map((id) => ({
    id,
    title: id === 'sheets' ? `Cut the ${sheets}` : id === 'hang' ? hangWords(setOut) : TITLES[id],
    operations: operations.filter((o) => o.stage === id).map((o) => o.id),
  })).filter((s) => s.operations.length > 0);
}

/** What is hung, doors or lids. */
function hangWords(setOut: SetOut): string {
  const words = (n: number, one: string) => (n === 0 ? [] : [n === 1 ? `the ${one}` : `the ${one}s`]);
  const all = [...words(doorsOf(setOut).length, 'door'), ...words(setOut.lids.length, 'lid')];
  return all.length === 0 ? TITLES.hang : `Hang ${listWords(all)}`;
}

/** Parts that are cut already lie ready under their marks. */
function madeParts({ job, setOut }: Bench): readonly Workpiece[] {
  const made = new Set((job.work.made ?? []).map((m) => m.part));
  const nothing = setOut.ledger.row(SETTING_OUT.nothing);
  const joinedBlanks = stillJoined(setOut.joinedBlanks, made);
  return partsAndBoards({ ...setOut, joinedBlanks })
    .filter((p) => made.has(p.id))
    .map((p) => ({
      name: p.mark,
      lot: p.lot,
      stock: p.lot,
      length: p.cut.length,
      width: p.cut.width,
      thickness: stockThickness(p),
      raw: { ends: nothing, edges: nothing },
      ...slopeOf(setOut, p),
    }));
}

/** A strip of a cleat has its slope from the cut that parted it. */
function slopeOf({ cleats }: SetOut, { id, features }: Part): Pick<Workpiece, 'slope'> {
  if (!cleats.some((c) => c.onCase === id || c.onWall === id)) return {};
  const bevel = features.find((f) => f.kind === 'bevel');
  if (!bevel) return {};
  const { edge, angle, fullFace } = bevel;
  return { slope: { edge, angle, fullFace } };
}

function stockOf(setOut: SetOut, breakdown: Breakdown): readonly Workpiece[] {
  return breakdown.lots.flatMap(({ lot, sheets }) => {
    const thickness = stockThickness(partsToCut(setOut).find((p) => p.lot === lot.id)!);
    return sheets.map(({ name, source }) => ({
      name,
      lot: lot.id,
      stock: source.stock.id,
      length: source.length,
      width: source.width,
      thickness,
      // A strip is sold planed to its width; only its ends are cut.
      raw: {
        ends: source.trim,
        edges: lot.form === 'strip' ? setOut.ledger.row(SETTING_OUT.nothing) : source.trim,
      },
    }));
  });
}
