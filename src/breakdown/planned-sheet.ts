import { SETTING_OUT } from '../materials/index.ts';
import type { Ledger, Traced } from '../measure/index.ts';
import type { CutSize, Part } from '../setting-out/index.ts';
import type { CutNode } from './cut-plan.ts';
import type { LotProblem, StockSource } from './lot-problem.ts';
import { otherPlace } from './other-place.ts';
import { isWanted, WANTED } from './planner/by-rules/worth.ts';

/** An area of a sheet with traced sides: x along the length, y across the width. */
export interface PlannedArea {
  readonly x: Traced;
  readonly y: Traced;
  readonly length: Traced;
  readonly width: Traced;
}

/** A node of a cut tree as it is cut: sizes traced, pieces named by their part. */
export type PlannedNode = PlannedArea & {
  /** What its contents need in each direction; absent where there are none. */
  readonly needs: { readonly length?: Traced; readonly width?: Traced };
} & (
    | {
        readonly kind: 'cut';
        readonly across: 'length' | 'width';
        readonly at: Traced;
        readonly parts: readonly [PlannedNode, PlannedNode];
        /** Cut roughly where the sheet is bought. */
        readonly yard?: true;
      }
    | { readonly kind: 'piece'; readonly part: Part; readonly size: CutSize; readonly turned: boolean }
    /** Left over; it has a name when it is worth keeping. */
    | { readonly kind: 'left'; readonly name?: string }
  );

/** One sheet, offcut or strip and how it is cut up. */
export interface PlannedSheet {
  /** `S1` for sheets, `L1` for lengths of strip: the name the cards use. */
  readonly name: string;
  readonly lot: string;
  readonly source: StockSource;
  readonly root: PlannedNode;
}

type Side = 'length' | 'width';
type Cut = CutNode & { readonly kind: 'cut' };

/** Hands out the parts behind a piece id, one after the other. */
export type NextPart = (piece: string) => Part;

/**
 * A cut tree with every number traced to the sizes it comes from: most cuts come where their contents end, so that their
 * place is a sum of part sizes and kerfs; some beside a flaw, or as far as the vehicle takes. A tree that isn't so throws.
 */
export function planSheet(
  ledger: Ledger,
  lot: LotProblem,
  name: string,
  source: StockSource,
  root: CutNode,
  nextPart: NextPart,
): PlannedSheet {
  const l = ledger;
  const { trim, length, width } = source;
  const strip = lot.lot.form === 'strip';
  const nothing = l.row(SETTING_OUT.nothing);
  const area: PlannedArea = {
    x: trim,
    y: strip ? nothing : trim,
    length: l.less('length inside the trim', length, trim, trim),
    width: strip ? width : l.less('width inside the trim', width, trim, trim),
  };

  const kerfOf = (node: CutNode) => (node.kind === 'cut' && node.yard ? lot.yard!.kerf : lot.kerf);

  /** What a node's contents need; `start` tells where the node begins, should a cut have to be placed by the sheet. */
  const natural = (node: CutNode, across: Side, start: () => Traced): Traced | undefined => {
    if (node.kind === 'left') return undefined;
    if (node.kind === 'piece') {
      const size = lot.sizes.get(node.piece)!;
      return (across === 'length') !== node.turned ? size.length : size.width;
    }
    const a = natural(node.parts[0], across, start);
    if (node.across !== across) {
      const b = natural(node.parts[1], across, start);
      if (a === undefined || b === undefined) return a ?? b;
      return l.ticks(a) >= l.ticks(b) ? a : b;
    }
    const first = firstPart(node, a, start);
    const b = natural(node.parts[1], across, () => l.sum('behind the kerf', start(), first, kerfOf(node)));
    return b === undefined ? a : l.sum('parts with the kerf between', first, kerfOf(node), b);
  };

  /** How large the first part of a cut is: what its contents need, or as far as a flaw or the vehicle says. */
  const firstPart = (node: Cut, contents: Traced | undefined, start: () => Traced): Traced => {
    const from = node.across === 'length' ? node.x : node.y;
    if (contents !== undefined && from + l.ticks(contents) === node.at) return contents;
    const place = otherPlace(l, lot, source, node, start);
    if (place === undefined) throw new Error(`nothing tells why a cut of ${name} comes at ${node.at}`);
    return l.less('up to the cut', place, start());
  };

  const needsOf = (node: CutNode, at: PlannedArea): PlannedNode['needs'] => {
    const alongIt = natural(node, 'length', () => at.x);
    const acrossIt = natural(node, 'width', () => at.y);
    return {
      ...(alongIt === undefined ? {} : { length: alongIt }),
      ...(acrossIt === undefined ? {} : { width: acrossIt }),
    };
  };

  let kept = 0;
  const plan = (node: CutNode, area: PlannedArea): PlannedNode => {
    const here = { ...area, needs: needsOf(node, area) };
    if (node.kind === 'left')
      return isWanted(lot.problem, strip, { length: l.ticks(here.length), width: l.ticks(here.width) })
        ? { ...here, kind: 'left', name: `${name}-left${++kept}` }
        : { ...here, kind: 'left' };
    if (node.kind === 'piece') {
      const part = nextPart(node.piece);
      return { ...here, kind: 'piece', part, size: lot.sizes.get(node.piece)!, turned: node.turned };
    }
    const lengthwise = node.across === 'length';
    const [low, whole] = lengthwise ? ([here.x, here.length] as const) : ([here.y, here.width] as const);
    const first = firstPart(
      node,
      natural(node.parts[0], node.across, () => low),
      () => low,
    );
    const at = l.sum('where the cut comes on the sheet', low, first);
    const kerf = kerfOf(node);
    const rest = l.less('what is left behind the cut', whole, first, kerf);
    // A cut in the last kerf's width leaves nothing.
    const second = l.ticks(rest) < 0 ? nothing : rest;
    const behind = l.ticks(rest) < 0 ? l.sum('far edge', low, whole) : l.sum('behind the kerf', at, kerf);
    const parts: [PlannedNode, PlannedNode] = lengthwise
      ? [
          plan(node.parts[0], { ...here, length: first }),
          plan(node.parts[1], { ...here, x: behind, length: second }),
        ]
      : [
          plan(node.parts[0], { ...here, width: first }),
          plan(node.parts[1], { ...here, y: behind, width: second }),
        ];
    const yard = node.yard ? ({ yard: true } as const) : {};
    return { ...here, kind: 'cut', across: node.across, at, parts, ...yard };
  };

  return { name, lot: lot.lot.id, source, root: plan(root, area) };
}

/** Smallest piece that goes back on the rack, where the maker doesn't say. */
export const [{ length: KEEP_LENGTH, width: KEEP_WIDTH }] = WANTED;
