import type { JobDocument, Lot } from '../job/index.ts';
import type { Ticks, Traced } from '../measure/index.ts';
import { type Part, partsAndBoards, type SetOut } from '../setting-out/index.ts';
import type { CutPlan, Unplaced } from './cut-plan.ts';
import { judgeCuts } from './judge/judge-cuts.ts';
import type { Verdict } from './judge/verdict.ts';
import { type LotProblem, lotProblems } from './lot-problem.ts';
import { oneByOne } from './one-by-one.ts';
import { type PlannedNode, type PlannedSheet, planSheet } from './planned-sheet.ts';
import { hasRules } from './planner/by-rules/plan-by-rules.ts';
import { type CutOptions, type CutProgress, planCuts } from './planner/plan-cuts.ts';
import { type Spare, sparesOf } from './spares.ts';
import { type TestPiece, testPiecesOf } from './test-pieces.ts';

/** A leftover worth keeping, under the name it gets on the rack. */
export interface Leftover {
  readonly name: string;
  readonly sheet: string;
  readonly lot: string;
  readonly length: Traced;
  readonly width: Traced;
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
  for (const problem of lotProblems(job, setOut)) {
    const { last: before, ...asked } = options;
    const last = before?.lots.find((l) => l.lot.id === problem.lot.id && l.lot.form === 'sheet')?.plan;
    const effort = asked.effort ?? (hasRules(problem.problem) ? ENOUGH_UNDER_RULES : ENOUGH);
    const search = planCuts(problem.problem, { ...asked, effort, ...(last ? { last } : {}) });
    let step = search.next();
    while (!step.done) {
      yield { ...step.value, lot: problem.lot.id, share: Math.min(1, step.value.work / effort) };
      step = search.next();
    }
    const plan = problem.lot.form === 'strip' ? inOrder(step.value, problem.problem.kerf) : step.value;
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
  const leftovers = leftoversOf(lots);
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

/** The last of the sheets (or strips) that parts were cut from: names go on behind it, so that no two are called alike. */
function lastCut(job: JobDocument, letter: 'S' | 'L'): number {
  const numbers = (job.work.made ?? []).map(({ from = '' }) =>
    from.startsWith(letter) && /^\d+$/.test(from.slice(1)) ? Number(from.slice(1)) : 0,
  );
  return Math.max(0, ...numbers);
}

/** Strips cut one piece after the other; what counts of the cuts as they were is no longer so. */
function inOrder({ worth: _, ...plan }: CutPlan, kerf: Ticks): CutPlan {
  return { ...plan, sheets: plan.sheets.map((s) => ({ ...s, root: oneByOne(s.root, kerf) })) };
}

function purchasesOf(lots: readonly LotBreakdown[]): readonly Purchase[] {
  return lots.flatMap(({ lot, sheets }) =>
    lot.stock.flatMap((stock) => {
      const count = sheets.filter((s) => !s.source.onRack && s.source.stock === stock).length;
      return count > 0 ? [{ lot: lot.id, stock: stock.id, count, price: stock.price! }] : [];
    }),
  );
}

function leftoversOf(lots: readonly LotBreakdown[]): readonly Leftover[] {
  const kept: Leftover[] = [];
  for (const { lot, sheets } of lots)
    for (const sheet of sheets) {
      const walk = (node: PlannedNode): void => {
        if (node.kind === 'cut') for (const part of node.parts) walk(part);
        else if (node.kind === 'left' && node.name !== undefined)
          kept.push({
            name: node.name,
            sheet: sheet.name,
            lot: lot.id,
            length: node.length,
            width: node.width,
          });
      };
      walk(sheet.root);
    }
  return kept;
}
