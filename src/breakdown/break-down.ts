import type { JobDocument, Lot } from '../job/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Part, SetOut } from '../setting-out/index.ts';
import type { CutPlan, Unplaced } from './cut-plan.ts';
import { judgeCuts } from './judge/judge-cuts.ts';
import type { Verdict } from './judge/verdict.ts';
import { type LotProblem, lotProblems } from './lot-problem.ts';
import { oneByOne } from './one-by-one.ts';
import { type PlannedNode, type PlannedSheet, planSheet } from './planned-sheet.ts';
import { type CutOptions, type CutProgress, planCuts } from './planner/plan-cuts.ts';

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
  /** Parts for which there is no stock, by id, and why. */
  readonly missing: readonly {
    readonly part: Part;
    readonly why: Unplaced['why'];
  }[];
}

/** Breaks down all lots, one after the other; yields the planner's progress. */
export function* breakDown(
  job: JobDocument,
  setOut: SetOut,
  options: CutOptions,
): Generator<CutProgress & { readonly lot: string }, Breakdown> {
  const lots: LotBreakdown[] = [];
  const missing: Breakdown['missing'][number][] = [];
  const counters = { S: 0, L: 0 };
  for (const problem of lotProblems(job, setOut)) {
    const search = planCuts(problem.problem, options);
    let step = search.next();
    while (!step.done) {
      yield { ...step.value, lot: problem.lot.id };
      step = search.next();
    }
    const found = step.value;
    const plan: CutPlan =
      problem.lot.form === 'strip'
        ? {
            ...found,
            sheets: found.sheets.map((s) => ({ ...s, root: oneByOne(s.root, problem.problem.kerf) })),
          }
        : found;
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
  return { lots, purchases: purchasesOf(lots), leftovers: leftoversOf(lots), missing };
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
