import type { Breakdown, LotBreakdown, PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import type { Traced } from '../measure/index.ts';
import type { Bench } from './bench.ts';
import { CAUTION } from './cautions.ts';
import type { Yield } from './operation.ts';

/** A sheet as it comes, or what the yard made of it: where it lies in the plan, and how much of its sides is raw. */
export interface RawPiece {
  readonly name: string;
  readonly node: PlannedNode;
  readonly raw: {
    /** As it comes, rough sides included. */
    readonly length: Traced;
    readonly width: Traced;
    /** What must come off its start and its near edge before anything is measured from them. */
    readonly start: Traced;
    readonly near: Traced;
  };
}

/** Has the sheets that are bought cut down where they are bought, so that they can be carried and brought home. */
export function cutAtYard(bench: Bench, breakdown: Breakdown): void {
  for (const lot of breakdown.lots)
    for (const sheet of lot.sheets) walkYard(bench, lot, sheet, (cut) => yardCard(bench, sheet, cut));
}

/** What comes home of a sheet, in the order in which it is cut, and how many names the yard's pieces took. */
export function piecesFromYard(bench: Bench, lot: LotBreakdown, sheet: PlannedSheet): FromYard {
  return walkYard(bench, lot, sheet, () => undefined);
}

interface FromYard {
  readonly pieces: readonly RawPiece[];
  readonly named: number;
}

/** A rough cut as its card tells it. */
interface YardCut {
  readonly workpiece: string;
  readonly across: 'length' | 'width';
  /** From the raw side of the workpiece. */
  readonly at: Traced;
  readonly over: Traced;
  readonly yields: readonly [Yield | undefined, Yield | undefined];
}

/** The sides of an area that are as the yard left them, by how much they must lose. */
interface Sides {
  readonly start: Traced;
  readonly end: Traced;
  readonly near: Traced;
  readonly far: Traced;
}

function walkYard(bench: Bench, lot: LotBreakdown, sheet: PlannedSheet, cut: (c: YardCut) => void): FromYard {
  const l = bench.ledger;
  const { trim } = sheet.source;
  const pieces: RawPiece[] = [];
  let names = 0;
  const walk = (node: PlannedNode, name: string, sides: Sides): void => {
    const { start, end, near, far } = sides;
    if (node.kind !== 'cut' || !node.yard) {
      const as = (size: Traced, ...raw: readonly Traced[]) => l.sum('as it comes', size, ...raw);
      const raw = { length: as(node.length, start, end), width: as(node.width, near, far), start, near };
      pieces.push({ name, node, raw });
      return;
    }
    const { over } = lot.problem.yard!;
    const lengthwise = node.across === 'length';
    const [first, second] = node.parts;
    const size = lengthwise ? first.length : first.width;
    const before = lengthwise ? start : near;
    const at = bench.set(
      'circular-saw',
      l.sum('what is needed, raw, and what the cut stays away', before, size, over),
      'up',
    );
    const named = node.parts.map((p) =>
      p.kind === 'left' || isNothing(bench, p) ? nameOfLeft(p) : `${sheet.name}.${++names}`,
    );
    cut({
      workpiece: name,
      across: node.across,
      at,
      over,
      yields: [named[0], named[1]].map((n) => (n === undefined ? undefined : { name: n, turned: false })) as [
        Yield | undefined,
        Yield | undefined,
      ],
    });
    if (named[0] !== undefined)
      walk(first, named[0], lengthwise ? { ...sides, end: over } : { ...sides, far: over });
    if (named[1] !== undefined)
      walk(second, named[1], lengthwise ? { ...sides, start: over } : { ...sides, near: over });
  };
  walk(sheet.root, sheet.name, { start: trim, end: trim, near: trim, far: trim });
  return { pieces, named: names };
}

function nameOfLeft(node: PlannedNode): string | undefined {
  return node.kind === 'left' ? node.name : undefined;
}

function isNothing(bench: Bench, node: PlannedNode): boolean {
  const l = bench.ledger;
  return l.ticks(node.length) <= 0 || l.ticks(node.width) <= 0;
}

function yardCard(bench: Bench, sheet: PlannedSheet, { workpiece, across, at, over, yields }: YardCut): void {
  const { stock } = sheet.source;
  const whole = workpiece === sheet.name;
  const named = yields.flatMap((y) => (y ? [y.name] : []));
  const id = `${workpiece}/yard-cut`;
  bench.do(
    {
      id,
      kind: 'yard-cut',
      stage: 'yard',
      title: `Have ${whole ? `sheet ${workpiece} (${stock.name ?? stock.id})` : `piece ${workpiece}`} cut ${across === 'length' ? 'across the grain' : 'along the grain'}`,
      does: { act: 'saw', workpiece, across, at, keep: 'before', yields, rough: over },
      lines: [
        `Ask for one straight rough cut, {0} from ${across === 'length' ? 'an end' : 'a long edge'}; a little more or less does no harm.`,
        `It holds {1} to spare on either side. Write ${named.join(', then ')} on the pieces, from the measured side on. Never measure from the yard’s cut: it is trued at home.`,
      ],
      lengths: [at, over],
      cautions: [CAUTION.lift, CAUTION.edges],
    },
    [workpiece],
  );
  for (const name of named) bench.comesFrom(name, id);
}
