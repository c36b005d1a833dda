import type { JobDocument, Lot } from '../job/index.ts';
import type { Ledger, Traced } from '../measure/index.ts';
import { type Part, partsAndBoards, type SetOut } from '../setting-out/index.ts';
import type { CutPlan, Unplaced } from './cut-plan.ts';
import type { CutProblem } from './cut-problem.ts';
import { withoutIdleCuts } from './idle-cuts.ts';
import { judgeCuts } from './judge/judge-cuts.ts';
import type { Verdict } from './judge/verdict.ts';
import { type LotProblem, lotProblems, whatCutsLeave, withFlawsGrown } from './lot-problem.ts';
import { oneByOne } from './one-by-one.ts';
import { type PlannedSheet, planSheet } from './planned-sheet.ts';
import { hasRules } from './planner/by-rules/plan-by-rules.ts';
import { planWorth, worthOf } from './planner/by-rules/worth.ts';
import { type CutOptions, type CutProgress, planCuts } from './planner/plan-cuts.ts';
import { withinReach } from './rail-reach.ts';
import { type Spare, sparesOf } from './spares.ts';
import { type TestPiece, testPiecesOf } from './test-pieces.ts';
import { type FlawThere, flawsWithin, isBesideFlaws, leavesWhereTheyLie, placeOf } from './where-it-lies.ts';

/** A leftover worth keeping, under the name it gets on the rack. */
export interface Leftover {
  readonly name: string;
  readonly sheet: string;
  readonly lot: string;
  readonly length: Traced;
  readonly width: Traced;
  /** Flaws of its sheet that lie on it, in ticks from its own start and near edge. */
  readonly flaws: readonly FlawThere[];
}

/** Something to buy for the piece. */
export interface Purchase {
  readonly lot: string;
  readonly stock: string;
  readonly count: number;
  /** Of one, in the shop's currency. */
  readonly price: number;
}

/** How one lot is cut up. */
export interface LotBreakdown {
  readonly lot: Lot;
  readonly problem: LotProblem;
  readonly plan: CutPlan;
  /** What the judge, which shares no code with the planner, says of the plan. */
  readonly verdict: Verdict;
  readonly sheets: readonly PlannedSheet[];
}

/** How all parts come out of the stock. */
export interface Breakdown {
  readonly lots: readonly LotBreakdown[];
  readonly purchases: readonly Purchase[];
  readonly leftovers: readonly Leftover[];
  /** In the order of the parts: where each could be cut from again. */
  readonly spares: readonly Spare[];
  /** What is kept of each lot to prove settings and the finish on. */
  readonly testPieces: readonly TestPiece[];
  /** Parts for which there is no stock, by id, and why. */
  readonly missing: readonly {
    readonly part: Part;
    readonly why: Unplaced['why'];
  }[];
}

/** Work for a lot's plan within a blink; rules ask for more, because each cut is tried against them. */
const ENOUGH = 3_000_000;
const ENOUGH_UNDER_RULES = 30_000_000;

/** Breaks down all lots, one after the other; yields the planner's progress, and how far it is with the lot, from 0 to 1. */
export function* breakDown(
  job: JobDocument,
  setOut: SetOut,
  options: Omit<CutOptions, 'last'> & { readonly last?: Breakdown },
): Generator<CutProgress & { readonly lot: string; readonly share: number }, Breakdown> {
  const lots: LotBreakdown[] = [];
  const missing: Breakdown['missing'][number][] = [];
  const counters = { S: lastCut(job, 'S'), L: lastCut(job, 'L') };
  for (const asked of lotProblems(job, setOut)) {
    const { problem, plan } = yield* alongTheRail(job, setOut, asked, options);
    const waiting = new Map([...problem.pieces].map(([id, parts]) => [id, [...parts]]));
    const nextPart = (piece: string): Part => {
      const part = waiting.get(piece)?.shift();
      if (!part) throw new Error(`the plan cuts more of ${piece} than there are`);
      return part;
    };
    const letter = problem.lot.form === 'strip' ? 'L' : 'S';
    const sheets: PlannedSheet[] = [];
    for (const sheet of plan.sheets)
      for (let i = 0; i < sheet.count; i++) {
        const source = problem.sources.get(sheet.stock)!;
        sheets.push(
          planSheet(setOut.ledger, problem, `${letter}${++counters[letter]}`, source, sheet.root, nextPart),
        );
      }
    for (const u of plan.unplaced)
      for (let i = 0; i < u.count; i++) missing.push({ part: nextPart(u.piece), why: u.why });
    lots.push({ lot: problem.lot, problem, plan, verdict: judgeCuts(problem.problem, plan), sheets });
  }
  const leftovers = leftoversOf(job, setOut.ledger, lots);
  const testPieces = testPiecesOf(setOut.ledger, lots, leftovers);
  const kept = new Set(testPieces.flatMap((t) => t.name ?? []));
  const joinedIn = (blank: Part) =>
    setOut.joinedBlanks
      .filter((b) => b.blank.id === blank.id)
      .flatMap((b) => setOut.parts.filter((p) => b.parts.includes(p.id)));
  const spare = new Map(
    lots.flatMap((l) => sparesOf(setOut.ledger, l, leftovers, kept, joinedIn).map((s) => [s.part.id, s])),
  );
  const spares = partsAndBoards(setOut).flatMap((p) => spare.get(p.id) ?? []);
  return { lots, purchases: purchasesOf(lots), leftovers, spares, testPieces, missing };
}

/** A lot that was planned. */
interface PlannedLot {
  readonly problem: LotProblem;
  readonly plan: CutPlan;
}

type Asked = Parameters<typeof breakDown>[2];
type Planning = Generator<CutProgress & { readonly lot: string; readonly share: number }, PlannedLot>;

/** A lot's plan from stock that the rail can cut, if that is enough; else from all there is, and a check tells of the rail. */
function* alongTheRail(job: JobDocument, setOut: SetOut, lot: LotProblem, options: Asked): Planning {
  const near = withinReach(job.shop, lot);
  if (near) {
    const planned = yield* besideFlaws(job, setOut, near, options);
    if (planned.plan.unplaced.length === 0) return planned;
  }
  return yield* besideFlaws(job, setOut, lot, options);
}

/** How many cuts before a flaw are reckoned with, one number after the other until that is enough. */
const CUTS_BEFORE_A_FLAW = [1, 3, 6, 12, 25, 50, 100, 200, 400];

/** A lot's plan whose pieces come beside the flaws as they are cut, not only as they are planned. */
function* besideFlaws(job: JobDocument, setOut: SetOut, lot: LotProblem, options: Asked): Planning {
  if (lot.problem.stock.every((s) => s.flaws === undefined)) return yield* plannedLot(lot, options);
  const l = setOut.ledger;
  const left = l.ticks(whatCutsLeave(l, job.shop, lot));
  for (const cuts of CUTS_BEFORE_A_FLAW) {
    const planned = yield* plannedLot(withFlawsGrown(l, job.shop, lot, cuts), options);
    if (planned.plan.sheets.every((s) => isBesideFlaws(l, lot, s, left))) return planned;
  }
  throw new Error(`no plan of ${lot.lot.id} keeps clear of its flaws`);
}

function* plannedLot(problem: LotProblem, options: Asked): Planning {
  const { last: before, ...asked } = options;
  const last = before?.lots.find((l) => l.lot.id === problem.lot.id && l.lot.form === 'sheet')?.plan;
  const effort = asked.effort ?? (hasRules(problem.problem) ? ENOUGH_UNDER_RULES : ENOUGH);
  const search = planCuts(problem.problem, { ...asked, effort, ...(last ? { last } : {}) });
  let step = search.next();
  while (!step.done) {
    yield { ...step.value, lot: problem.lot.id, share: Math.min(1, step.value.work / effort) };
    step = search.next();
  }
  const found = step.value;
  return {
    problem,
    plan: problem.lot.form === 'strip' ? inOrder(found, problem.problem) : lean(found, problem.problem),
  };
}

/** Sheets without cuts that nobody would make. */
function lean(plan: CutPlan, problem: CutProblem): CutPlan {
  const sheets = plan.sheets.map((s) => withoutIdleCuts(problem, s));
  const worth = planWorth(sheets.map((s) => ({ ...s, stock: 0, worth: worthOf(problem, s.root) })));
  return { ...plan, sheets, worth };
}

/**
 * The last of the sheets (or strips) that parts were cut from, or that pieces on the rack are named after: names go on behind it, so
 * that no two are called alike.
 */
function lastCut(job: JobDocument, letter: 'S' | 'L'): number {
  const names = [
    ...(job.work.made ?? []).map(({ from = '' }) => from),
    ...job.shop.rack.lots.flatMap((lot) => lot.stock.map((s) => s.id)),
  ];
  return Math.max(
    0,
    ...names.map((name) => {
      const [, kind, number] = /^([SL])(\d+)(?:[.-]|$)/.exec(name) ?? [];
      return kind === letter ? Number(number) : 0;
    }),
  );
}

/**
 * Strips cut one piece after the other; what counts of the cuts as they were is no longer so. A strip with flaws keeps its cuts,
 * because its pieces lie beside them.
 */
function inOrder({ worth: _, ...plan }: CutPlan, { kerf, stock }: CutProblem): CutPlan {
  const flawed = new Set(stock.filter((s) => (s.flaws ?? []).length > 0).map((s) => s.id));
  return {
    ...plan,
    sheets: plan.sheets.map((s) => (flawed.has(s.stock) ? s : { ...s, root: oneByOne(s.root, kerf) })),
  };
}

function purchasesOf(lots: readonly LotBreakdown[]): readonly Purchase[] {
  return lots.flatMap(({ lot, sheets }) =>
    lot.stock.flatMap((stock) => {
      const count = sheets.filter((s) => !s.source.onRack && s.source.stock === stock).length;
      return count > 0 ? [{ lot: lot.id, stock: stock.id, count, price: stock.price! }] : [];
    }),
  );
}

function leftoversOf(job: JobDocument, l: Ledger, lots: readonly LotBreakdown[]): readonly Leftover[] {
  const kept: Leftover[] = [];
  for (const { lot, problem, sheets } of lots) {
    const strip = lot.form === 'strip';
    const left = l.ticks(whatCutsLeave(l, job.shop, problem));
    for (const sheet of sheets)
      for (const { leaf, place } of leavesWhereTheyLie(sheet.root, (n) => placeOf(l, n), problem, left))
        if (leaf.kind === 'left' && leaf.name !== undefined)
          kept.push({
            name: leaf.name,
            sheet: sheet.name,
            lot: lot.id,
            length: leaf.length,
            width: leaf.width,
            flaws: flawsWithin(l, sheet.source.flaws, place, strip),
          });
  }
  return kept;
}
