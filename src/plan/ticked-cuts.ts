import type { PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import { cutsOfAct, type Operation, type Yield } from '../build/index.ts';
import { type Edit, formatOf, type JobDocument, type Lot, type Stock } from '../job/index.ts';
import { printSetting, type Ticks, ticks } from '../measure/index.ts';
import { partsAndBoards } from '../setting-out/index.ts';
import { freeId } from './cut-in-part.ts';
import type { Plan } from './plan.ts';

const STAGES: ReadonlySet<string> = new Set(['yard', 'sheets', 'strips']);

type Planned = Pick<Plan, 'job' | 'setOut' | 'breakdown' | 'build'>;

/** The edit that notes cuts that are ticked, or why they can’t be noted. */
export type TickedCuts = { readonly edit: Edit } | { readonly why: string };

/** A piece that lies in the shop; its sides as those of the sheet it comes from. */
interface Piece {
  readonly sheet: PlannedSheet;
  readonly lot: Lot;
  /** What a cut takes in the plan. */
  readonly kerf: Ticks;
  readonly size: { readonly length: Ticks; readonly width: Ticks };
  /** It lies across its sheet, and is no longer measured along it. */
  readonly turned: boolean;
  /** Of what has none of its sides sawn to a mark yet: what it is to be cut up to, and what its sides must lose. */
  readonly raw?: { readonly node: PlannedNode; readonly lose: Sides };
}

/** What raw sides must lose. */
type Sides = Readonly<Record<'start' | 'end' | 'near' | 'far', Ticks>>;

/**
 * Notes as made what the ticked cards have cut of the stock, and nothing else: parts that have both their sizes are made, the sheets
 * that were begun are gone from the rack, and the pieces that lie there stand on it. A plan made then goes on from these pieces,
 * whatever is measured or drawn meanwhile. `of` is the job to be edited. Undefined where no such card is ticked.
 */
export function tickedAreCut(plan: Planned, of: JobDocument = plan.job): TickedCuts | undefined {
  const done = of.work.done ?? [];
  const ticked = new Set(done.map((d) => d.id));
  const cards = plan.build.operations.filter((o) => STAGES.has(o.stage));
  const squaredLater = new Set(
    cards.flatMap((o) =>
      o.kind === 'square-end' && !ticked.has(o.id) ? cutsIn(o).map((c) => c.workpiece) : [],
    ),
  );
  const lies = wholeSheets(plan);
  const begun = new Set<PlannedSheet>();
  const cutOf = new Map<string, PlannedSheet>();
  for (const o of cards.filter((card) => ticked.has(card.id)))
    for (const cut of cutsIn(o)) {
      const piece = lies.get(cut.workpiece);
      if (!piece) return { why: `“${o.title}” is ticked, and a cut that must come before it is not.` };
      if (o.kind === 'true-edge' && squaredLater.has(cut.workpiece))
        return { why: `“${o.title}” is ticked: square its end as well, and tick that card.` };
      begun.add(piece.sheet);
      cutOf.set(o.id, piece.sheet);
      if (o.kind === 'yard-cut') sawAtYard(lies, cut, piece, plan);
      else saw(lies, cut, piece);
    }
  if (begun.size === 0) return undefined;
  const waiting = cards.filter((o) => !ticked.has(o.id)).flatMap((o) => cutsIn(o).map((c) => c.workpiece));
  return note(plan, of, begun, {
    lies: [...lies].filter(([, piece]) => begun.has(piece.sheet)),
    waiting: new Set(waiting),
    done: done.filter((d) => !begun.has(cutOf.get(d.id)!)),
  });

  function cutsIn({ does }: Operation): readonly PieceCut[] {
    if (does.act === 'name') return [{ workpiece: does.workpiece, yields: [does.as, undefined] }];
    return cutsOfAct(does).map((c) => ({ ...c, at: plan.setOut.ledger.ticks(c.at) }));
  }
}

/** A cut by its ticks; what only gets its mark is cut nowhere. */
interface PieceCut {
  readonly workpiece: string;
  readonly yields: readonly [Yield | undefined, Yield | undefined];
  readonly across?: 'length' | 'width';
  readonly at?: Ticks;
  readonly keep?: 'before' | 'behind';
}

function wholeSheets({ breakdown, setOut }: Planned): Map<string, Piece> {
  const l = setOut.ledger;
  const lies = new Map<string, Piece>();
  for (const { lot, problem, sheets } of breakdown.lots)
    for (const sheet of sheets) {
      const trim = l.ticks(sheet.source.trim);
      lies.set(sheet.name, {
        sheet,
        lot,
        kerf: l.ticks(problem.kerf),
        size: { length: l.ticks(sheet.root.length), width: l.ticks(sheet.root.width) },
        turned: false,
        raw: { node: sheet.root, lose: { start: trim, end: trim, near: trim, far: trim } },
      });
    }
  return lies;
}

/** A rough cut: both halves are raw where it went. */
function sawAtYard(
  lies: Map<string, Piece>,
  { workpiece, across, yields }: PieceCut,
  piece: Piece,
  { setOut, breakdown }: Planned,
): void {
  const { node, lose } = piece.raw!;
  const yard = breakdown.lots.find((l) => l.lot === piece.lot)?.problem.yard;
  if (node.kind !== 'cut' || !yard) throw new Error(`nothing of ${workpiece} is to be cut at the yard`);
  lies.delete(workpiece);
  const t = setOut.ledger.ticks.bind(setOut.ledger);
  const sides = across === 'length' ? (['end', 'start'] as const) : (['far', 'near'] as const);
  for (const i of [0, 1] as const) {
    const [name, half] = [yields[i]?.name, node.parts[i]];
    if (name === undefined) continue;
    const size = { length: t(half.length), width: t(half.width) };
    lies.set(name, { ...piece, size, raw: { node: half, lose: { ...lose, [sides[i]]: t(yard.over) } } });
  }
}

/** Takes a cut: its workpiece is gone, and what it yields lies there, as large as the plan reckons with. */
function saw(
  lies: Map<string, Piece>,
  { workpiece, across, at, keep, yields }: PieceCut,
  piece: Piece,
): void {
  lies.delete(workpiece);
  const [before, behind] = yields;
  const sized = (size: number): Piece['size'] =>
    across === undefined ? piece.size : { ...piece.size, [across]: ticks(Math.max(0, size)) };
  const whole = piece.size[across ?? 'length'];
  if (before) lies.set(before.name, { ...piece, size: sized(at ?? whole), turned: before.turned });
  if (!behind) return;
  // Of a sheet without its raw edge as much stays as was reckoned with before.
  const stays =
    behind.name === workpiece && keep === 'behind'
      ? whole
      : whole - at! - (keep === 'before' ? piece.kerf : 0);
  lies.set(behind.name, { ...piece, size: sized(stays), turned: behind.turned });
}

interface Lying {
  readonly lies: readonly (readonly [name: string, piece: Piece])[];
  /** What is still to be cut, by the cards that are not ticked. */
  readonly waiting: ReadonlySet<string>;
  /** Ticks that stay. */
  readonly done: NonNullable<JobDocument['work']['done']>;
}

function note(
  { setOut, breakdown }: Planned,
  of: JobDocument,
  begun: ReadonlySet<PlannedSheet>,
  { lies, waiting, done }: Lying,
): TickedCuts {
  for (const { name, source } of begun)
    if (source.flaws.length > 0)
      return {
        why: `${name} has flaws, and nobody has said on which of its pieces they lie: put the pieces on the rack by hand.`,
      };
  const size = (t: Ticks) => printSetting(t, formatOf(of.shop));
  const cut = new Map(partsAndBoards(setOut).map((p) => [p.mark, p]));
  const found = new Map((of.work.done ?? []).flatMap((d) => Object.entries(d.sizes ?? {})));
  const made: NonNullable<JobDocument['work']['made']>[number][] = [];
  const left = new Map<Lot, Stock[]>();
  const ids = new Set(of.shop.rack.lots.flatMap((l) => l.stock.map((s) => s.id)));
  for (const [name, piece] of lies) {
    const { sheet, lot } = piece;
    const part = waiting.has(name) ? undefined : cut.get(name);
    if (part) {
      const sizeOf = (side: 'length' | 'width') =>
        found.get(`${name}.${side}`) ?? size(setOut.ledger.ticks(part.cut[side]));
      const width = part.form === 'strip' ? {} : { width: sizeOf('width') };
      made.push({ part: part.id, length: sizeOf('length'), ...width, from: sheet.name });
      continue;
    }
    if (piece.turned)
      return { why: `${name} has one of its sizes and not the other: cut it, and tick its card.` };
    left.set(lot, [...(left.get(lot) ?? []), pieceAsStock(freeId(name, ids), name, piece, size)]);
  }
  const racks = breakdown.lots.flatMap(({ lot, sheets }): Edit[] => {
    const gone = sheets.filter((s) => begun.has(s) && s.source.onRack).map((s) => s.source.stock.id);
    const there = of.shop.rack.lots.find((l) => l.id === lot.id)?.stock ?? [];
    const kept = there.map((s) => {
      const n = gone.filter((id) => id === s.id).length;
      return n === 0 ? s : { ...s, have: Math.max(0, (s.have ?? 0) - n) };
    });
    const lying = left.get(lot) ?? [];
    if (gone.length === 0 && lying.length === 0) return [];
    return [{ edit: 'set', at: `shop/rack/lots/${lot.id}/stock`, value: [...kept, ...lying] }];
  });
  return {
    edit: {
      edit: 'all',
      of: [
        { edit: 'set', at: 'work/done', ...(done.length > 0 ? { value: done } : {}) },
        { edit: 'set', at: 'work/made', value: [...(of.work.made ?? []), ...made] },
        ...racks,
      ],
    },
  };
}

/** A piece as it lies on the rack. What has clean sides needs no trim; raw ones lie beyond what is reckoned with. */
function pieceAsStock(
  id: string,
  name: string,
  { lot, size, raw }: Piece,
  words: (t: Ticks) => string,
): Stock {
  const lose = raw?.lose ?? { start: ticks(0), end: ticks(0), near: ticks(0), far: ticks(0) };
  const width = lot.form === 'strip' ? {} : { width: words(ticks(size.width + lose.near + lose.far)) };
  const trim = ticks(Math.max(...Object.values(lose)));
  return {
    id,
    name: `${name}, cut so far`,
    length: words(ticks(size.length + lose.start + lose.end)),
    ...width,
    have: 1,
    ...(lot.trim === undefined ? {} : { trim: words(trim) }),
  };
}
