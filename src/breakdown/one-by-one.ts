import { type Ticks, ticks } from '../measure/index.ts';
import type { CutNode } from './cut-plan.ts';

/** A strip's tree as a person cuts it: one piece after the other off its end, and what is left at last. */
export function oneByOne(root: CutNode, kerf: Ticks): CutNode {
  const pieces: CutNode[] = [];
  const walk = (node: CutNode): void => {
    if (node.kind === 'piece') pieces.push(node);
    else if (node.kind === 'cut') for (const part of node.parts) walk(part);
  };
  walk(root);
  const end = root.x + root.length;
  const from = (i: number, x: number): CutNode => {
    const piece = pieces[i];
    const area = { x: ticks(x), y: root.y, length: ticks(end - x), width: root.width };
    if (!piece) return { ...area, kind: 'left' };
    const at = x + piece.length;
    if (at >= end) return { ...piece, ...area };
    return {
      ...area,
      kind: 'cut',
      across: 'length',
      at: ticks(at),
      parts: [{ ...piece, x: area.x }, from(i + 1, Math.min(end, at + kerf))],
    };
  };
  return from(0, root.x);
}
