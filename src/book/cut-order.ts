import type { PlannedNode, PlannedSheet } from '../breakdown/index.ts';
import { cutsOfAct, type Operation } from '../build/index.ts';
import type { Traced } from '../measure/index.ts';

export type PlannedCut = PlannedNode & { readonly kind: 'cut' };
export type PlannedPiece = PlannedNode & { readonly kind: 'piece' };

/** A cut of a sheet, under the number of the card that makes it. */
export interface NumberedCut {
  readonly number: number;
  readonly node: PlannedCut;
  /** Where its card has the mark, where that is not where the first half ends: of a rough cut, and of one that takes waste off before what stays. */
  readonly marked?: Traced;
}

/**
 * The cuts of a sheet in the order in which the cards make them. The cards are followed from the sheet's name: each
 * says what its two halves are called, and so the next card finds its place in the tree; one that only trims keeps
 * the name. Cuts that no card makes follow at the end, numbered on from the last card.
 */
export function numberedCuts(sheet: PlannedSheet, cards: readonly Operation[]): NumberedCut[] {
  const places = new Map<string, PlannedNode>([[sheet.name, sheet.root]]);
  const cuts: NumberedCut[] = [];
  cards.forEach((card, i) => {
    for (const cut of cutsOfAct(card.does)) {
      // One that trims or trues divides nothing.
      if (cut.yields.every((y) => y === undefined || y.name === cut.workpiece)) continue;
      const node = places.get(cut.workpiece);
      if (node?.kind !== 'cut' || node.across !== cut.across) continue;
      places.delete(cut.workpiece);
      cuts.push({
        number: i + 1,
        node,
        ...(cut.rough === undefined && cut.keep === 'before' ? {} : { marked: cut.at }),
      });
      cut.yields.forEach((y, half) => {
        if (y) places.set(y.name, node.parts[half as 0 | 1]);
      });
    }
  });
  const known = new Set(cuts.map((c) => c.node));
  let number = cards.length;
  for (const node of cutsUnder(sheet.root)) if (!known.has(node)) cuts.push({ number: ++number, node });
  return cuts;
}

function cutsUnder(node: PlannedNode): PlannedCut[] {
  return node.kind === 'cut' ? [node, ...node.parts.flatMap(cutsUnder)] : [];
}

/** The pieces under a node, in the order in which they lie. */
export function piecesUnder(node: PlannedNode): PlannedPiece[] {
  if (node.kind === 'piece') return [node];
  return node.kind === 'cut' ? node.parts.flatMap(piecesUnder) : [];
}

/** Every piece and leftover of a tree. */
export function leavesUnder(node: PlannedNode): Exclude<PlannedNode, { readonly kind: 'cut' }>[] {
  return node.kind === 'cut' ? node.parts.flatMap(leavesUnder) : [node];
}
